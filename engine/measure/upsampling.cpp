// Judging the traces. The only way in is upsampling; tested in tests/engine/measure/upsampling.test.cpp,
// scored by tests/bench/detail.
#include "engine/measure/upsampling.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// Values above which a trace counts, one for each kind: coherence without and with noise allowed for, each
/// for sums up to 0.7 and beyond, and lines at eighths. Set on the half of the photographs that scores
/// nothing (tests/bench/detail).
constexpr double plain_low = 0.135, plain_high = 0.192, damped_low = 0.099, damped_high = 0.093;
constexpr double at_eighth[] = {0, 0, 0.214, 0.355, 0.273, 0.658};
constexpr double high_from = 0.70;
/// From which strength on a trace is a hint and firm: with few tiles chance reaches higher.
struct Bars {
  double hint, firm;
};
Bars bars_for(std::size_t tiles) {
  if (tiles >= 6) return {1.0, 1.15};
  if (tiles >= 3) return {1.25, 1.4};
  return {1.3, 1.65};
}

/// Repeated pixels are proof by themselves where hardly anything lies between steps, and they come regularly.
bool seems_repeated(const RepeatedColumns &columns) {
  return columns.gap < 0.3 && columns.share < 0.6 && columns.regular > 0.8;
}
bool is_repeated(const RepeatedColumns &columns) {
  return columns.gap < 0.02 && columns.share < 0.75 && columns.regular > 0.95;
}

/// Below this factor a trace tells resampling, but not firmly an enlargement.
constexpr double firm_factor = 1.43;
/// An enlargement leaves hardly any detail beyond what was there before: where it reaches so many times
/// further, the trace is that of a pattern.
constexpr double most_left_over = 1.6;

/// Where the spectrum of a picture ends whose every pixel counts, cycles a pixel: the median over known blurs
/// and enlargements.
constexpr double sharp_end = 0.422;

/// What lies above frequency v of the spectrum, weighted with v squared, the camera's noise left out.
std::vector<double> weighted(const std::vector<double> &power) {
  constexpr double noise = 0.3;
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

/// Share of the weight that lies above 1.2 times half of alpha: an enlargement leaves little there.
double beyond(const std::vector<double> &power, double alpha) {
  const std::vector<double> weights = weighted(power);
  double sum = 1e-9, above = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    sum += weights[i];
    if (static_cast<double>(i) / static_cast<double>(2 * (weights.size() - 1)) > 1.2 * alpha / 2)
      above += weights[i];
  }
  return above / sum;
}

struct Peak {
  double strength = 0; ///< over its threshold
  double alpha = 0;    ///< 1 / factor
};

/// Traces of both axes together.
class Traces {
public:
  Traces(const UpsamplingTrace &across, const UpsamplingTrace &down) : across_(across), down_(down) {
    for (std::size_t i = 0; i < across.plain.size(); ++i) {
      plain_.push_back((across.plain[i] + down.plain[i]) / 2);
      damped_.push_back((across.damped[i] + down.damped[i]) / 2);
      joint_.push_back(std::max(plain_[i] / plain_low, damped_[i] / damped_low));
    }
    for (std::size_t k = 2; k < 8; ++k) line_[k] = (line(across, k) + line(down, k)) / 2;
  }

  double score(double &alpha) const {
    Peak best;
    const auto take = [&](Peak peak) {
      if (peak.strength > best.strength) best = peak;
    };
    take(highest(plain_, false, plain_low));
    take(highest(plain_, true, plain_high));
    take(highest(damped_, false, damped_low));
    take(highest(damped_, true, damped_high));
    for (std::size_t k = 2; k <= 5; ++k) take({eighth(k) / at_eighth[k], static_cast<double>(k) / 8});
    alpha = best.alpha;
    return best.strength;
  }

  /// The factor that the peaks and the end of detail (as a factor) together make most likely.
  double factor(double alpha, double expected) const {
    constexpr double spread = 0.5, least_share = 0.3;
    const std::vector<Peak> all = peaks();
    double top = 0;
    for (const Peak &peak : all) top = std::max(top, peak.strength);
    double best = -1e9, found = 1 / alpha;
    for (const Peak &peak : all) {
      if (peak.strength <= least_share * top) continue;
      const double off = std::log(1 / peak.alpha / expected) / spread;
      const double likely = std::log(std::max(with_comb(peak), 1e-3)) - 0.5 * off * off;
      if (likely > best) best = likely, found = 1 / peak.alpha;
    }
    return found;
  }

  /// The factor of the strongest peak near one that was counted; that one where there is none.
  double factor_near(double counted) const {
    Peak best;
    for (const Peak &peak : peaks())
      if (std::abs(1 / peak.alpha / counted - 1) < 0.05 && peak.strength > best.strength) best = peak;
    return best.strength > 0 ? 1 / best.alpha : counted;
  }

private:
  /// A camera's own mosaic leaves a line at one half, too, but a real one.
  static double line(const UpsamplingTrace &trace, std::size_t k) {
    return k == 4 ? std::abs(trace.at_eighths[k].imag()) : std::abs(trace.at_eighths[k]);
  }
  /// Above its neighbours: the blocks of a JPEG leave all of them.
  double eighth(std::size_t k) const {
    return line_[k] - 0.7 * std::max(k > 2 ? line_[k - 1] : 0.0, line_[k + 1]);
  }

  /// Near an eighth, the blocks of a JPEG speak.
  bool usable(std::size_t i) const {
    const double alpha = across_.alpha(i);
    if (alpha < 0.18 || alpha > 0.82) return false;
    const double off = std::abs(alpha * 8 - std::round(alpha * 8)) / 8;
    return off >= 1.7 / across_.side;
  }

  double refined(const std::vector<double> &values, std::size_t i) const {
    if (i == 0 || i + 1 >= values.size()) return across_.alpha(i);
    const double bend = values[i - 1] - 2 * values[i] + values[i + 1];
    if (bend >= 0) return across_.alpha(i);
    return across_.alpha(i) + 0.5 * (values[i - 1] - values[i + 1]) / bend / across_.side;
  }

  Peak highest(const std::vector<double> &values, bool high, double threshold) const {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < values.size(); ++i)
      if (usable(i) && (across_.alpha(i) > high_from) == high && (!best || values[i] > values[*best]))
        best = i;
    if (!best) return {};
    const double alpha = across_.alpha(*best);
    const double tail = (beyond(across_.power, alpha) + beyond(down_.power, alpha)) / 2;
    return {values[*best] * (tail < 0.45 ? 1 : 0.5) / threshold, refined(values, *best)};
  }

  std::vector<Peak> peaks() const {
    std::vector<Peak> all;
    for (std::size_t i = 1; i + 1 < joint_.size(); ++i) {
      const auto at = [&](std::size_t j) { return usable(j) ? joint_[j] : -1.0; };
      if (at(i) > 0 && at(i) >= joint_[i - 1] && at(i) >= joint_[i + 1])
        all.push_back({at(i), refined(joint_, i)});
    }
    for (std::size_t k = 2; k <= 5; ++k)
      if (const double strength = eighth(k) / at_eighth[k]; strength > 0.3)
        all.push_back({strength, static_cast<double>(k) / 8});
    return all;
  }

  /// A JPEG that was enlarged took the lines of its blocks along: they stand at eighths of alpha.
  double with_comb(const Peak &peak) const {
    double strength = peak.strength;
    for (const int m : {3, 5, 6, 7}) {
      const auto i =
          static_cast<std::ptrdiff_t>(std::lround(m / 8.0 * peak.alpha * across_.side)) - across_.first_sum();
      if (i < 1 || i + 1 >= static_cast<std::ptrdiff_t>(joint_.size())) continue;
      const auto at = static_cast<std::size_t>(i);
      if (usable(at))
        strength += 0.5 * std::max(0.0, std::max({joint_[at - 1], joint_[at], joint_[at + 1]}) - 0.25);
    }
    return strength;
  }

  const UpsamplingTrace &across_, &down_;
  std::vector<double> plain_, damped_, joint_;
  double line_[8] = {};
};

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

/// The highest coherence of one axis near alpha.
double trace_at(const UpsamplingTrace &trace, double alpha) {
  constexpr std::ptrdiff_t near = 2;
  const auto middle = static_cast<std::ptrdiff_t>(std::lround(alpha * trace.side)) - trace.first_sum();
  double highest = 0;
  for (std::ptrdiff_t i = middle - near; i <= middle + near; ++i)
    if (i >= 0 && i < static_cast<std::ptrdiff_t>(trace.plain.size())) {
      const auto at = static_cast<std::size_t>(i);
      highest = std::max({highest, trace.plain[at] / plain_low, trace.damped[at] / damped_low});
    }
  return highest;
}

/// An axis that was firmly enlarged holds no more than it did before, unless the end of detail lies clearly
/// lower still. Both need not have been: an axis counts where its trace is not far weaker than the other's.
void bound_by_factor(Upsampling &result, const UpsamplingTrace &across, const UpsamplingTrace &down) {
  constexpr double far_weaker = 0.4;
  const double factor = *result.factor;
  const double at_across = trace_at(across, 1 / factor), at_down = trace_at(down, 1 / factor);
  const double bar = far_weaker * std::max(at_across, at_down);
  const auto bound = [&](double &detail, double trace) {
    if (result.nearest || (trace >= bar && detail * factor > DetailLimit::least)) detail = 1 / factor;
  };
  bound(result.detail.across, at_across);
  bound(result.detail.down, at_down);
}

} // namespace

Upsampling upsampling(const std::vector<Tile> &tiles) {
  Upsampling result;
  constexpr double flat = 0.5; // levels of |Laplacian|: less than any camera's noise
  if (tiles.empty() || tiles.front().detail < flat) return result;
  std::vector<Tile> turned;
  for (const Tile &tile : tiles) turned.push_back(transposed(tile));
  const UpsamplingTrace across = upsampling_trace(tiles), down = upsampling_trace(turned);
  const double end_across = end_of_detail(across.power_of_best), end_down = end_of_detail(down.power_of_best);
  result.detail = {has_contrast(tiles), std::min(1.0, end_across / sharp_end),
                   std::min(1.0, end_down / sharp_end)};
  if (has_screen(across.power) || has_screen(down.power)) return result;

  const Traces traces(across, down);
  double alpha = 0;
  result.strength = traces.score(alpha);
  const Bars bars = bars_for(tiles.size());
  const bool repeated = is_repeated(across.repeated) && is_repeated(down.repeated);
  result.certainty = Certainty::no;
  if (result.strength < bars.hint && !repeated) return result;
  result.nearest = repeated || (seems_repeated(across.repeated) && seems_repeated(down.repeated));
  const double by_detail = std::clamp(sharp_end / std::sqrt(end_across * end_down), 1.0, 8.0);
  const double steps = 2 / (across.repeated.share + down.repeated.share);
  const double factor = result.nearest ? traces.factor_near(steps) : traces.factor(alpha, by_detail);
  const bool believable = result.detail.known && factor < most_left_over * by_detail;
  if (!repeated && !believable) {
    result.nearest = false;
    return result;
  }
  result.factor = factor;
  result.factor_sure = repeated || std::abs(std::log(factor / by_detail)) < 0.25;
  const bool firm = repeated || (result.strength >= bars.firm && factor >= firm_factor);
  result.certainty = firm ? Certainty::firm : Certainty::hint;
  if (firm) bound_by_factor(result, across, down);
  return result;
}

} // namespace stoneproof
