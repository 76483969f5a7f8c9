// Runs work on a file that nobody trusts in a process of its own, with bounds on time and memory.
#pragma once

#include "engine/outcome.h"

#include <chrono>
#include <cstdint>
#include <functional>
#include <string>

namespace stoneproof::finished {

struct Bounds {
  std::chrono::milliseconds time{60'000}; ///< by the clock on the wall
  std::uint64_t memory = 1ull << 30;      ///< bytes beyond those that the program holds already
};

/// What the work gives, or its fault; where the process ends in another way, a fault that says how. `file` is
/// what faults name. The process must have no other threads that hold locks. Under the address sanitizer
/// memory is not bounded.
Outcome<std::string> run_apart(const std::function<Outcome<std::string>()> &work, const Bounds &bounds,
                               const std::string &file);

} // namespace stoneproof::finished
