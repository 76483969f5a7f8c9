// The verb `proof`: the main job.
#pragma once

#include "reports/terminal/commands.h"
#include "reports/terminal/exit_status.h"

namespace stoneproof::terminal {

/// Checks the book, writes proof and record, prints the summary. Nothing is written unless all inputs could
/// be read and the outputs have a place to go.
ExitStatus run_proof(const ProofCommand &command);

} // namespace stoneproof::terminal
