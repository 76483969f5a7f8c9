// The verb `plan`: how to scan each original.
#pragma once

#include "reports/terminal/commands.h"
#include "reports/terminal/exit_status.h"

namespace stoneproof::terminal {

/// Plans the scans, writes plan and table, prints the summary. Nothing is written unless all inputs could be
/// read and the outputs have a place to go. A plan that cannot satisfy every frame is a plan all the same.
ExitStatus run_plan(const PlanCommand &command);

} // namespace stoneproof::terminal
