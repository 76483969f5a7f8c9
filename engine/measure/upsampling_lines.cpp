// Rows of lines. The only ways in are those of upsampling_lines.h; tested in
// tests/engine/measure/upsampling.test.cpp, scored by tests/bench/detail.
#include "engine/measure/upsampling_lines.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// A line beside it counts from this share of the strongest on, and from this strength on: set on the half of
/// the photographs that scores nothing, and on what lookalikes.sh makes of it.
constexpr double counts_beside = 0.3, least_strength = 0.5;
/// And one that nothing explains from this share on.
constexpr double nearly_as_strong = 0.6;
/// How far from its place a line may stand, in cycles a pixel: half a bin of a tile of 256 pixels; and
/// further by so much with every multiple.
constexpr double near = 0.002, slack = 0.0002;

double folded(double alpha) { return std::abs(alpha - std::round(alpha)); }

bool same_place(double a, double b) { return std::abs(folded(a) - folded(b)) < near; }

/// Whether alpha is one of the first `most` multiples of a step, folded; `slack` is what the step may be off.
bool is_multiple(double alpha, double step, int most, double off = 0) {
  for (int k = 1; k <= most; ++k)
    if (std::abs(folded(k * step) - folded(alpha)) < near + k * off) return true;
  return false;
}

bool is_eighth(double alpha) { return same_place(alpha, std::round(8 * alpha) / 8); }

/// Repeated pixels leave multiples, straight interpolation the second.
bool is_own_multiple(double line, double alpha) { return is_multiple(line, alpha, 6, slack); }

/// The blocks of a JPEG that was enlarged.
bool is_enlarged_block(double line, double alpha) { return is_multiple(line, alpha / 8, 16); }

/// The trace against the blocks of a JPEG that was saved since.
bool is_beaten(double line, double alpha) {
  for (int k = 1; k < 8; ++k)
    if (same_place(line, alpha + k / 8.0)) return true;
  return false;
}

double strongest(const std::vector<TracePeak> &peaks) {
  double most = 0;
  for (const TracePeak &peak : peaks) most = std::max(most, peak.strength);
  return most;
}

/// The strongest that stands in the row of reduced blocks, and the strongest that only the blocks of what was
/// enlarged would leave.
struct Beside {
  double reduced = 0, enlarged = 0;
};

Beside beside(const std::vector<TracePeak> &peaks, double alpha, double step) {
  Beside found;
  for (const TracePeak &peak : peaks) {
    if (is_own_multiple(peak.alpha, alpha)) continue;
    const bool reduced = is_multiple(peak.alpha, step, static_cast<int>(1 / step));
    if (reduced && !is_eighth(peak.alpha)) // eighths come of being saved again
      found.reduced = std::max(found.reduced, peak.strength);
    else if (!reduced && is_enlarged_block(peak.alpha, alpha))
      found.enlarged = std::max(found.enlarged, peak.strength);
  }
  return found;
}

} // namespace

bool of_reduced_blocks(const std::vector<TracePeak> &peaks, double alpha) {
  constexpr double own_blocks = 0.125 + near, longest = 0.5;
  const double bar = std::max(counts_beside * strongest(peaks), least_strength);
  for (const double line : {alpha, 1 - alpha})
    for (int k = 2; line / k > own_blocks; ++k) {
      if (line / k > longest) continue;
      const Beside found = beside(peaks, alpha, line / k);
      if (found.reduced >= bar && found.reduced > 2 * found.enlarged) return true;
    }
  return false;
}

bool of_a_pattern(const std::vector<TracePeak> &peaks, double alpha) {
  const double bar = std::max(nearly_as_strong * strongest(peaks), least_strength);
  return std::ranges::any_of(peaks, [=](const TracePeak &peak) {
    return peak.strength >= bar && !is_eighth(peak.alpha) && !is_own_multiple(peak.alpha, alpha) &&
           !is_enlarged_block(peak.alpha, alpha) && !is_beaten(peak.alpha, alpha);
  });
}

} // namespace stoneproof
