// Peaks of the traces. The only ways in are trace_peaks and trace_near; tested in
// tests/engine/measure/upsampling.test.cpp, scored by tests/bench/detail.
#include "engine/measure/upsampling_peaks.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// Where a trace counts: set on the half of the photographs that scores nothing (tests/bench/detail), above
/// all of its natives.
constexpr double coherence_counts = 0.15;
constexpr double at_eighth[] = {0, 0, 0.45, 0.25, 0.15, 0.15};
constexpr double damped_at_eighth[] = {0, 0, 0.45, 0.18, 0.11, 0.12};

using Lines = std::array<std::complex<double>, 7>;

/// A camera's own mosaic leaves a line at one half, too, but a real one.
double line(const Lines &lines, std::size_t k) {
  return k == 4 ? std::abs(lines[k].imag()) : std::abs(lines[k]);
}

/// Above its neighbours: the blocks of a JPEG leave all of them, and where a picture is soft and its blocks
/// show, those two steps away, too.
double eighth(const Lines &across, const Lines &down, std::size_t k) {
  const auto both = [&](std::size_t at) { return (line(across, at) + line(down, at)) / 2; };
  const double beside = std::max(k > 2 ? both(k - 1) : 0.0, both(k + 1));
  return both(k) - beside - (k > 3 ? 0.5 * both(k - 2) : 0.0);
}

/// Not at an eighth, nor where refining would end there.
bool usable(const UpsamplingTrace &trace, std::size_t i) {
  const double alpha = trace.alpha(i);
  return alpha >= 0.18 && alpha <= 0.82 &&
         std::abs(alpha * 8 - std::round(alpha * 8)) / 8 >= 1.7 / trace.side;
}

/// By a parabola through its neighbours.
double refined(const UpsamplingTrace &trace, const std::vector<double> &values, std::size_t i) {
  const double bend = values[i - 1] - 2 * values[i] + values[i + 1];
  if (bend >= 0) return trace.alpha(i);
  const double part = 0.5 * (values[i - 1] - values[i + 1]) / bend;
  return trace.alpha(i) + std::clamp(part, -0.5, 0.5) / trace.side;
}

} // namespace

std::vector<TracePeak> trace_peaks(const UpsamplingTrace &across, const UpsamplingTrace &down) {
  constexpr double hardly = 0.3;
  std::vector<double> both(across.excess.size());
  for (std::size_t i = 0; i < both.size(); ++i)
    both[i] = (across.excess[i] + down.excess[i]) / 2 / coherence_counts;
  std::vector<TracePeak> peaks;
  for (std::size_t i = 1; i + 1 < both.size(); ++i) {
    const auto lower = [&](std::size_t j) { return !usable(across, j) || both[j] <= both[i]; };
    if (usable(across, i) && both[i] > hardly && lower(i - 1) && lower(i + 1))
      peaks.push_back({both[i], refined(across, both, i)});
  }
  for (std::size_t k = 2; k <= 5; ++k) {
    const double plain = eighth(across.at_eighths, down.at_eighths, k) / at_eighth[k];
    const double damped = eighth(across.damped_at_eighths, down.damped_at_eighths, k) / damped_at_eighth[k];
    if (std::max(plain, damped) > hardly)
      peaks.push_back({std::max(plain, damped), static_cast<double>(k) / 8});
  }
  return peaks;
}

double trace_near(const UpsamplingTrace &trace, double alpha) {
  constexpr std::ptrdiff_t near = 2;
  double highest = 0;
  const auto middle = static_cast<std::ptrdiff_t>(std::lround(alpha * trace.side)) - trace.first_sum();
  for (std::ptrdiff_t i = middle - near; i <= middle + near; ++i)
    if (i >= 0 && i < static_cast<std::ptrdiff_t>(trace.excess.size()))
      highest = std::max(highest, trace.excess[static_cast<std::size_t>(i)] / coherence_counts);
  const long k = std::lround(alpha * 8);
  if (k >= 2 && k <= 5 && std::abs(alpha * 8 - static_cast<double>(k)) / 8 < 1.7 / trace.side)
    highest = std::max(highest, line(trace.at_eighths, static_cast<std::size_t>(k)) /
                                    at_eighth[static_cast<std::size_t>(k)]);
  return highest;
}

} // namespace stoneproof
