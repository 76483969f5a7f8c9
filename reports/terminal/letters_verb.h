// The verb `letters`: what each contributor has to do.
#pragma once

#include "reports/terminal/commands.h"
#include "reports/terminal/exit_status.h"

namespace stoneproof::terminal {

/// Checks the book, writes a letter for each contributor who has something to do, prints the summary. Nothing
/// is written unless all inputs could be read and the folder takes files. The status is clear where the
/// letters were written, whatever they ask for.
ExitStatus run_letters(const LettersCommand &command);

} // namespace stoneproof::terminal
