// Standard output and standard error, and the terminal behind them, if there is one.
#pragma once

#include "engine/xml/source_fault.h"
#include "reports/terminal/exit_status.h"

#include <string_view>
#include <vector>

namespace stoneproof::terminal {

struct Console {
  bool progress = false; ///< standard error is a terminal
  bool bold = false;     ///< standard output is a terminal, and NO_COLOR is not set
  int width = 80;        ///< columns of standard output, 40 to 100; 80 where it is no terminal
};

Console look_at_console();

/// Writes results to standard output. Gives `status`, or unwritable_output after saying so.
ExitStatus print_result(std::string_view text, ExitStatus status);

/// Writes each fault to standard error, with its source line where it has one. Gives `status`.
ExitStatus refuse(const std::vector<SourceFault> &faults, ExitStatus status);
ExitStatus refuse(const std::vector<Fault> &faults, ExitStatus status);
ExitStatus refuse(const Fault &fault, ExitStatus status);
/// The same for what does not stop the work.
void remark(const Fault &fault);

} // namespace stoneproof::terminal
