// The verb `measure`: picture files without a book.
#pragma once

#include "reports/terminal/commands.h"
#include "reports/terminal/exit_status.h"

namespace stoneproof::terminal {

/// Measures the pictures and prints what they are good for. A file that cannot be used is told of in its
/// place, and at the end on standard error with its remedy; the others are measured all the same.
ExitStatus run_measure(const MeasureCommand &command);

} // namespace stoneproof::terminal
