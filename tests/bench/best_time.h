// The best of several runs, in milliseconds: the run that other work on the machine disturbed least.
#pragma once

#include <algorithm>
#include <chrono>
#include <ctime>

namespace bench {

template <class Work, class Clock>
double best_of(int runs, const Work &work, const Clock &clock) {
  double best = 1e300;
  for (int i = 0; i < runs; ++i) {
    const double start = clock();
    work();
    best = std::min(best, clock() - start);
  }
  return best;
}

/// Time by the clock on the wall; for work done by another program.
template <class Work>
double best_wall_time(int runs, const Work &work) {
  return best_of(runs, work, [] {
    const auto now = std::chrono::steady_clock::now().time_since_epoch();
    return std::chrono::duration<double, std::milli>(now).count();
  });
}

/// Processor time of this program, system calls included; steady also on a busy machine.
template <class Work>
double best_time(int runs, const Work &work) {
  return best_of(runs, work, [] {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
  });
}

} // namespace bench
