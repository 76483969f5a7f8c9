// A progress bar on standard error.
#pragma once

#include <chrono>
#include <cstddef>

namespace stoneproof::terminal {

/// One line that is drawn over again, at most ten times a second, and is gone afterwards. Not for several
/// threads at a time.
class ProgressBar {
public:
  ProgressBar() = default;
  ProgressBar(const ProgressBar &) = delete;
  ProgressBar &operator=(const ProgressBar &) = delete;
  ~ProgressBar();

  void show(std::size_t done, std::size_t total);

private:
  std::chrono::steady_clock::time_point drawn_at_;
  bool drawn_ = false;
};

} // namespace stoneproof::terminal
