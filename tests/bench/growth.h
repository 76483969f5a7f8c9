// How a cost grows: each size in a process of its own, so that the peak of memory is that of one.
#pragma once

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmath>
#include <cstdio>
#include <type_traits>
#include <utility>
#include <vector>

namespace bench {

/// MB that the process held at most.
inline double peak_memory() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// What work gives when it is done by a child; all zero, and a word of it, when that fails.
template <class Work>
auto apart(const Work &work) {
  using Cost = decltype(work());
  static_assert(std::is_trivially_copyable_v<Cost>);
  Cost cost{};
  int ends[2];
  if (pipe(ends) != 0) return cost;
  const pid_t child = fork();
  if (child == 0) {
    cost = work();
    const bool told = write(ends[1], &cost, sizeof cost) == static_cast<ssize_t>(sizeof cost);
    _exit(told ? 0 : 1);
  }
  close(ends[1]);
  if (read(ends[0], &cost, sizeof cost) != static_cast<ssize_t>(sizeof cost)) {
    std::fputs("a run failed\n", stderr);
    cost = {};
  }
  close(ends[0]);
  waitpid(child, nullptr, 0);
  return cost;
}

/// The exponent of growth: the slope of the least-squares line through the logarithms of sizes and costs.
inline double exponent(const std::vector<std::pair<double, double>> &points) {
  double x = 0, y = 0, xx = 0, xy = 0;
  for (const auto &[size, cost] : points) {
    const double a = std::log(size), b = std::log(cost);
    x += a, y += b, xx += a * a, xy += a * b;
  }
  const auto n = static_cast<double>(points.size());
  return (n * xy - x * y) / (n * xx - x * x);
}

} // namespace bench
