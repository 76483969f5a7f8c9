// The verb that sets two rounds side by side.
#pragma once

#include "reports/terminal/commands.h"
#include "reports/terminal/exit_status.h"

namespace stoneproof::terminal {

/// Prints what is new, standing and mended. Gives clear or held by the later record.
ExitStatus run_compare(const CompareCommand &command);

} // namespace stoneproof::terminal
