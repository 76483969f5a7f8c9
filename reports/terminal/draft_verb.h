// The verb draft: a finished PDF -> a description to go on with, and its pictures.
#pragma once

#include "reports/terminal/commands.h"
#include "reports/terminal/exit_status.h"

namespace stoneproof::terminal {

ExitStatus run_draft(const DraftCommand &command);

} // namespace stoneproof::terminal
