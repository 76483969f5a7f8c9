// The command line to a command.
#pragma once

#include "engine/outcome.h"
#include "reports/terminal/commands.h"

#include <string>
#include <vector>

namespace stoneproof::terminal {

/// `arguments` without the program's name. A Fault says what is wrong with the command line.
Outcome<Command> parse_arguments(std::vector<std::string> arguments);

/// A fault of the command line; its remedy sends to the help of `verb`, or to the general help where that is
/// empty.
Fault command_fault(std::string what, std::string verb);

} // namespace stoneproof::terminal
