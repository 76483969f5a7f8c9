// General-purpose programs that tests ask for their opinion.
#pragma once

#include "tests/support/catch.h"
#include "tests/support/files.h"

namespace stoneproof::test {

/// What a command prints to both outputs; the test fails when the command does.
inline std::string run_command(const std::string &command) {
  const Printed printed = print_of(command + " 2>&1");
  INFO(command << "\n" << printed.out);
  REQUIRE(printed.status == 0);
  return printed.out;
}

} // namespace stoneproof::test
