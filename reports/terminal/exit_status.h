// The exit statuses of the program.
#pragma once

namespace stoneproof::terminal {

enum class ExitStatus {
  clear = 0,             ///< the book has no hold, or what was asked for was printed
  held = 1,              ///< the book has a hold
  wrong_command = 2,     ///< the command line or the environment is wrong; an output would replace an input
  unreadable_input = 3,  ///< the description, the press sheet or a picture to measure could not be read
  unwritable_output = 4, ///< an output could not be written
};

} // namespace stoneproof::terminal
