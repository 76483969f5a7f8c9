// Judging the traces. The only way in is upsampling; tested in tests/engine/measure/upsampling.test.cpp,
// scored by tests/bench/detail.
#include "engine/measure/upsampling.h"

#include "engine/measure/upsampling_lines.h"
#include "engine/measure/upsampling_peaks.h"
#include "engine/measure/upsampling_rows.h"
#include "engine/measure/upsampling_steps.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// From which strength on a trace is a hint and firm: a quarter above all natives of the half that sets
/// bounds, and with few tiles chance reaches higher.
struct Bars {
  double hint, firm;
};
Bars bars_for(std::size_t tiles) {
  if (tiles >= 6) return {1.0, 1.25};
  return tiles >= 3 ? Bars{1.1, 1.4} : Bars{1.9, 2.4};
}

/// Below this factor a trace tells resampling, but not firmly an enlargement.
constexpr double firm_factor = 1.43;
/// An enlargement leaves hardly any detail beyond what was there before: the further it reaches beyond this
/// many times that, the stronger a trace must be that is no pattern's.
constexpr double most_left_over = 1.6;
/// Logarithm up to which the factor and the end of detail agree: a wrong factor is mostly half or double.
constexpr double agree = 0.5;

/// Below this factor hardly anything beyond what was there before fits below half a cycle a pixel, and detail
/// that reaches so much further makes a trace doubtful: a sharp picture that was reduced more than once.
constexpr double little_room = 2.1, most_little_room = 1.3;

/// Pixels were repeated where the steps of columns follow the factor so well and the picture is as good as
/// sharp, or so well that there need be no other trace; and it is sharper than any kernel leaves it. Between
/// them the trace is doubtful.
constexpr double repeated_seems = 0.35, repeated_sure = 0.6, repeated_proof = 0.85, nearly_sharp = 1.12,
                 left_over = 1.3;
/// A doubtful trace must be so many times as strong to be firm.
constexpr double if_doubtful = 2;

/// Less than two rows that differ are one, and what one holds is a drawing's chance.
constexpr double least_rows = 2;

/// Where the spectrum of a picture ends whose every pixel counts, cycles a pixel: the median over known blurs
/// and enlargements.
constexpr double sharp_end = 0.42;

/// What lies above frequency v of the spectrum, weighted with v squared, the camera's noise left out.
std::vector<double> weighted(const std::vector<double> &power) {
  constexpr double noise = 0.15; // of means of RowSpectrum::averaged rows, levels squared
  const std::size_t bins = power.size(), skip = std::max<std::size_t>(2, (bins - 1) / 32);
  std::vector<double> weights(bins);
  for (std::size_t i = skip; i < bins; ++i) {
    const double v = static_cast<double>(i) / static_cast<double>(2 * (bins - 1));
    weights[i] = std::max(power[i] - noise, 0.0) * v * v;
  }
  return weights;
}

/// The frequency above which a tenth of the weight lies, cycles a pixel.
double end_of_detail(const std::vector<double> &power) {
  constexpr double share = 0.1;
  const std::vector<double> weights = weighted(power);
  double sum = 0;
  for (const double weight : weights) sum += weight;
  if (sum <= 0) return 0.02;
  double above = 0;
  for (std::size_t i = weights.size(); i-- > 0;) {
    const double with = above + weights[i] / sum;
    if (with >= share) {
      const double part = (with - share) / std::max(with - above, 1e-12);
      return (static_cast<double>(i) + part) / static_cast<double>(2 * (weights.size() - 1));
    }
    above = with;
  }
  return 0.02;
}

/// A line far above what stands round it in the spectrum: a printed screen, or a pattern, that no photograph
/// of continuous tone holds.
bool has_screen(const std::vector<double> &power) {
  constexpr int reach = 8;
  constexpr double above = 15.85; // 12 dB
  const auto bins = static_cast<int>(power.size());
  for (int i = reach; i + 1 < bins; ++i) {
    std::vector<double> around;
    for (int k = std::max(2, i - reach); k <= std::min(bins - 1, i + reach); ++k)
      around.push_back(power[static_cast<std::size_t>(k)]);
    std::nth_element(around.begin(), around.begin() + static_cast<std::ptrdiff_t>(around.size() / 2),
                     around.end());
    if (power[static_cast<std::size_t>(i)] > above * around[around.size() / 2] + 1) return true;
  }
  return false;
}

/// Whether the best tiles hold shapes, sharp or soft: their lightness spreads by more than haze and noise do
/// (standard deviation in levels; our own choice).
bool has_contrast(const std::vector<Tile> &tiles) {
  constexpr double least = 12;
  const std::size_t count = std::min<std::size_t>(4, tiles.size());
  double spread = 0;
  for (std::size_t i = 0; i < count; ++i) {
    double sum = 0, squares = 0;
    for (const std::uint8_t value : tiles[i].luma) sum += value, squares += value * value;
    const auto pixels = static_cast<double>(tiles[i].luma.size());
    spread += std::sqrt(std::max(0.0, squares / pixels - (sum / pixels) * (sum / pixels)));
  }
  return spread / static_cast<double>(count) >= least;
}

double strongest(const std::vector<TracePeak> &peaks) {
  double most = 0;
  for (const TracePeak &peak : peaks) most = std::max(most, peak.strength);
  return most;
}

/// Peaks so much weaker than the strongest are not looked at.
constexpr double least_share = 0.3;

/// A JPEG that was enlarged took the lines of its blocks along: they stand at eighths of alpha.
double with_its_blocks(const TracePeak &peak, const std::vector<TracePeak> &peaks) {
  constexpr double near = 0.002, share = 0.5;
  double strength = peak.strength;
  for (const TracePeak &other : peaks) {
    const double eighth = std::round(8 * other.alpha / peak.alpha);
    if (eighth != 8 && std::abs(other.alpha - eighth * peak.alpha / 8) < near)
      strength += share * other.strength;
  }
  return strength;
}

/// The factor that the peaks and the end of detail (as a factor) together make most likely.
double likely_factor(const std::vector<TracePeak> &peaks, double by_detail) {
  constexpr double spread = 0.5, as_strong = 0.5, near = 0.01;
  const double bar = least_share * strongest(peaks);
  double most = -1e9;
  TracePeak found;
  for (const TracePeak &peak : peaks) {
    if (peak.strength <= bar) continue;
    const double off = std::log(1 / peak.alpha / by_detail) / spread;
    const double likely = std::log(with_its_blocks(peak, peaks)) - 0.5 * off * off;
    if (likely > most) most = likely, found = peak;
  }
  // Straight interpolation leaves a second line at twice alpha.
  for (const TracePeak &peak : peaks)
    if (std::abs(2 * peak.alpha / found.alpha - 1) < near && peak.strength > as_strong * found.strength)
      return 1 / peak.alpha;
  return 1 / found.alpha;
}

struct Repeated {
  double factor = 1, likeness = 0;
};

/// Repeated pixels leave lines at every multiple of alpha, mirrored at one half, too: which of them is alpha,
/// the columns tell. Factors that do not exceed `least` can prove nothing, but stand against those that do.
Repeated repeated_pixels(const std::vector<TracePeak> &peaks, const std::vector<Tile> &tiles,
                         const std::vector<Tile> &turned, double least) {
  std::vector<double> factors;
  for (const TracePeak &peak : peaks)
    if (peak.strength > least_share * strongest(peaks))
      factors.insert(factors.end(), {1 / peak.alpha, 1 / (1 - peak.alpha)});
  const auto others =
      std::stable_partition(factors.begin(), factors.end(), [=](double f) { return f > least; });
  if (others == factors.begin()) return {};
  const ColumnSteps across(tiles), down(turned);
  Repeated best;
  for (auto factor = factors.begin(); factor != factors.end(); ++factor) {
    if (factor == others && best.likeness <= repeated_seems) break;
    const double likeness = (across.likeness(*factor) + down.likeness(*factor)) / 2;
    if (likeness > best.likeness) best = {*factor, likeness};
  }
  return best;
}

/// An axis that was firmly enlarged holds no more than it did before, unless the end of detail lies clearly
/// lower still. Both need not have been: an axis counts where its trace is not far weaker than the other's.
void bound_by_factor(Upsampling &result, const UpsamplingTrace &across, const UpsamplingTrace &down) {
  constexpr double far_weaker = 0.4;
  const double factor = *result.factor;
  const double at_across = trace_near(across, 1 / factor), at_down = trace_near(down, 1 / factor);
  const double bar = far_weaker * std::max(at_across, at_down);
  const auto bound = [&](double &detail, double trace) {
    if (result.nearest || (trace >= bar && detail * factor > DetailLimit::least)) detail = 1 / factor;
  };
  bound(result.detail.across, at_across);
  bound(result.detail.down, at_down);
  result.detail.known |= result.detail.across * factor <= 1 && result.detail.down * factor <= 1;
}

/// Sets what is told of the enlargement, from the peaks and the end of detail as a factor.
void judge(Upsampling &result, const std::vector<TracePeak> &peaks, const Repeated &repeated,
           double by_detail, const Bars &bars) {
  result.strength = strongest(peaks);
  const bool sharper = repeated.factor > left_over * by_detail; // than any kernel leaves it
  const bool proven = sharper && repeated.likeness > repeated_proof;
  result.nearest = proven || (sharper && repeated.likeness > repeated_seems && by_detail < nearly_sharp);
  result.certainty = Certainty::no;
  if (peaks.empty()) return;
  const double factor = result.nearest ? repeated.factor : likely_factor(peaks, by_detail);
  const double bar = result.nearest ? 1 : std::max(1.0, factor / (most_left_over * by_detail));
  if (!proven && result.strength < bars.hint * bar) {
    result.nearest = false;
    return;
  }
  result.factor = factor;
  result.factor_sure = result.nearest || std::abs(std::log(factor / by_detail)) < agree;
  const bool doubtful = result.nearest ? repeated.likeness < repeated_sure
                                       : factor < little_room && factor > most_little_room * by_detail;
  const bool strong = result.strength >= bars.firm * bar * (doubtful ? if_doubtful : 1);
  const bool firm =
      proven || (strong && !of_reduced_blocks(peaks, 1 / factor) && !of_a_pattern(peaks, 1 / factor));
  result.certainty = firm && factor >= firm_factor ? Certainty::firm : Certainty::hint;
}

struct Axis {
  const std::vector<Tile> &tiles; ///< along it
  const UpsamplingTrace &trace;
};

/// An axis whose rows are all the same is no witness: then the other must show the trace by itself.
bool witnessed(double alpha, const Axis &across, const Axis &down, double bar) {
  const auto witness = [=](const Axis &axis) { return different_rows(axis.tiles, alpha) >= least_rows; };
  const bool by_across = witness(across), by_down = witness(down);
  if (by_across && by_down) return true;
  return (by_across && trace_near(across.trace, alpha) >= bar) ||
         (by_down && trace_near(down.trace, alpha) >= bar);
}

} // namespace

Upsampling upsampling(const std::vector<Tile> &tiles) {
  Upsampling result;
  constexpr double none = 0.05, flat = 0.5; // levels of |Laplacian|: less than any camera's noise
  if (tiles.empty() || tiles.front().detail < none) return result;
  const bool is_flat = tiles.front().detail < flat;
  std::vector<Tile> turned;
  for (const Tile &tile : tiles) turned.push_back(transposed(tile));
  const UpsamplingTrace across = upsampling_trace(tiles), down = upsampling_trace(turned);
  const double end_across = end_of_detail(across.power_of_best), end_down = end_of_detail(down.power_of_best);
  result.detail = {!is_flat && has_contrast(tiles), std::min(1.0, end_across / sharp_end),
                   std::min(1.0, end_down / sharp_end)};
  if (has_screen(across.power) || has_screen(down.power)) return result;

  const Bars bars = bars_for(tiles.size());
  const std::vector<TracePeak> peaks = trace_peaks(across, down);
  const double by_detail = std::clamp(sharp_end / std::sqrt(end_across * end_down), 1.0, 8.0);
  judge(result, peaks, repeated_pixels(peaks, tiles, turned, left_over * by_detail), by_detail, bars);
  if (result.certainty == Certainty::firm &&
      !witnessed(1 / *result.factor, {tiles, across}, {turned, down}, bars.firm))
    result.certainty = Certainty::hint;
  // What is flat holds too little to clear it, but enough for a trace.
  if (result.certainty == Certainty::firm)
    bound_by_factor(result, across, down);
  else if (is_flat)
    result.certainty = Certainty::cannot_tell, result.factor.reset();
  return result;
}

} // namespace stoneproof
