// The best of several runs, in milliseconds: the run that other work on the machine disturbed least.
#pragma once

#include <algorithm>
#include <chrono>

namespace bench {

template <class Work>
double best_time(int runs, const Work &work) {
  double best = 1e300;
  for (int i = 0; i < runs; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    best = std::min(
        best, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  return best;
}

} // namespace bench
