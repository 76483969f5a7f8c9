// Draws the bar. The only way in is ProgressBar; tested in tests/reports/terminal on a pseudo-terminal.
#include "reports/terminal/progress.h"

#include <cstdio>
#include <string>

namespace stoneproof::terminal {

namespace {

constexpr std::size_t bar_width = 30; // characters
constexpr std::chrono::milliseconds between_drawings{100};

} // namespace

void ProgressBar::show(std::size_t done, std::size_t total) {
  const auto now = std::chrono::steady_clock::now();
  if (total == 0 || (drawn_ && now - drawn_at_ < between_drawings)) return;
  const std::size_t filled = bar_width * done / total;
  const std::string bar = std::string(filled, '#') + std::string(bar_width - filled, '.');
  std::fprintf(stderr, "\r[%s] %zu of %zu pictures", bar.c_str(), done, total);
  drawn_at_ = now;
  drawn_ = true;
}

ProgressBar::~ProgressBar() {
  if (drawn_) std::fputs("\r\033[K", stderr);
}

} // namespace stoneproof::terminal
