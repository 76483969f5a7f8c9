// Finding copies among many pictures. The only ways in are those of near_copy.h; tested in
// tests/engine/measure/near_copy.test.cpp, scored by tests/bench/detail/copies.sh.
#include "engine/measure/near_copy.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <optional>

namespace stoneproof {

namespace {

/// Set on the half of the photographs that scores nothing (tests/bench/detail).
constexpr int restless_from = 14;
constexpr int alike_hashes = 13;     ///< of 63 signs, that may differ
constexpr double alike_cells = 0.60; ///< correlation of 32 x 32 means before alignment
/// Shapes of a part and a picture that may show the same differ by no more than this, in logarithms.
constexpr double shape_off = 0.09;

constexpr int orientations = 8;

struct Part {
  GrayPart part;
  double log_aspect = 0; ///< against the whole
  CopyHash hash = 0;
};

/// Every combination of these cuts at the four edges.
std::vector<GrayPart> parts(const std::vector<double> &cuts) {
  std::vector<GrayPart> all;
  for (const double left : cuts)
    for (const double top : cuts)
      for (const double right : cuts)
        for (const double bottom : cuts) all.push_back({left, top, 1 - right, 1 - bottom});
  return all;
}

/// How many signs of its hash a picture changes when a twentieth is cut off at one edge, at most. Where it is
/// full of small shapes that are all alike, finer steps are needed to come upon the right part.
int restlessness(const GrayCells &cells) {
  const CopyHash whole = copy_hash(cells.of({}));
  int most = 0;
  for (const GrayPart &part :
       {GrayPart{0.05, 0, 1, 1}, GrayPart{0, 0.05, 1, 1}, GrayPart{0, 0, 0.95, 1}, GrayPart{0, 0, 1, 0.95}})
    most = std::max(most, std::popcount(whole ^ copy_hash(cells.of(part))));
  return most;
}

struct Known {
  const CopyFingerprint *print = nullptr;
  double log_aspect = 0;
  std::vector<Part> parts; ///< by log_aspect
  std::array<CopyHash, orientations> turned{};
  GrayCells::Cells cells{};
};

Known known(const CopyFingerprint &print) {
  static const std::vector<GrayPart> coarse = parts({0, 0.05, 0.10}),
                                     fine = parts({0, 0.02, 0.04, 0.06, 0.08, 0.10});
  Known result;
  result.print = &print;
  result.log_aspect = std::log(print.aspect);
  if (print.blank) return result;
  const GrayCells cells(print.gray);
  for (const GrayPart &part : restlessness(cells) > restless_from ? fine : coarse)
    result.parts.push_back({part, std::log(part.aspect()), copy_hash(cells.of(part))});
  std::ranges::sort(result.parts, {}, &Part::log_aspect);
  result.cells = cells.of({});
  for (int o = 1; o <= orientations; ++o)
    result.turned[static_cast<std::size_t>(o - 1)] = copy_hash(turned(result.cells, o));
  return result;
}

/// The part of the whole that looks most like the other, turned, among those whose hashes come nearest to it.
std::optional<GrayPart> likeliest_part(const Known &whole, const Known &other, int orientation) {
  constexpr std::size_t most_compared = 8;
  const auto o = static_cast<std::size_t>(orientation - 1);
  const double shape = (orientation > 4 ? -other.log_aspect : other.log_aspect) - whole.log_aspect;
  struct Near {
    int distance;
    const Part *part;
  };
  std::vector<Near> near;
  const auto first = std::ranges::lower_bound(whole.parts, shape - shape_off, {}, &Part::log_aspect);
  for (auto part = first; part != whole.parts.end() && part->log_aspect <= shape + shape_off; ++part)
    if (const int distance = std::popcount(part->hash ^ other.turned[o]); distance <= alike_hashes)
      near.push_back({distance, &*part});
  std::ranges::sort(near, {}, &Near::distance);
  if (near.size() > most_compared) near.resize(most_compared);
  if (near.empty()) return std::nullopt;
  const GrayCells cells(whole.print->gray);
  const GrayCells::Cells wanted = turned(other.cells, orientation);
  std::optional<GrayPart> best;
  double most = alike_cells;
  for (const auto &[distance, part] : near) {
    const double alike = correlation(cells.of(part->part), wanted);
    if (alike >= most) most = alike, best = part->part;
  }
  return best;
}

std::optional<NearCopy> compared(const Known &whole, const Known &other) {
  std::optional<NearCopy> found;
  for (int orientation = 1; orientation <= orientations; ++orientation) {
    const auto part = likeliest_part(whole, other, orientation);
    if (!part) continue;
    const auto aligned = align_copies(whole.print->gray, other.print->gray.turned(orientation), *part);
    if (!aligned || aligned->likeness < found_likeness || aligned->detail < found_detail) continue;
    if (found && found->likeness >= aligned->likeness) continue;
    found = NearCopy{0, 0, aligned->part, orientation, aligned->likeness, aligned->detail};
  }
  return found;
}

double shown(const NearCopy &pair) {
  return (pair.part.right - pair.part.left) * (pair.part.bottom - pair.part.top);
}

} // namespace

std::vector<NearCopy> near_copies(const std::vector<CopyFingerprint> &prints) {
  std::vector<Known> all;
  for (const CopyFingerprint &print : prints) all.push_back(known(print));
  std::vector<NearCopy> pairs;
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t k = i + 1; k < all.size(); ++k) {
      if (all[i].print->blank || all[k].print->blank) continue;
      auto forth = compared(all[i], all[k]), back = compared(all[k], all[i]);
      if (forth) forth->whole = i, forth->other = k;
      if (back) back->whole = k, back->other = i;
      // Of two ways to see it, the one in which a picture shows a part of the other.
      const bool take_back = back && (!forth || shown(*forth) > std::max(1.0, shown(*back)));
      if (take_back)
        pairs.push_back(*back);
      else if (forth)
        pairs.push_back(*forth);
    }
  return pairs;
}

BetterCopy better_copy(const NearCopy &pair, const CopyWorth &whole, const CopyWorth &other) {
  constexpr double as_many = 1.05, as_fine = 1.1, as_large = 0.97;
  const auto factor = [](const Upsampling &upsampling) {
    return upsampling.certainty == Certainty::firm ? upsampling.factor.value_or(1) : 1.0;
  };
  const double of_whole = std::sqrt(whole.width * whole.height * shown(pair)) / factor(whole.upsampling);
  const double of_other = std::sqrt(other.width * other.height) / factor(other.upsampling);
  if (of_whole > as_many * of_other) return BetterCopy::whole;
  if (of_other > as_many * of_whole) return BetterCopy::other;
  const auto detail = [](const Upsampling &e) { return std::sqrt(e.detail.across * e.detail.down); };
  if (whole.upsampling.detail.known && other.upsampling.detail.known) {
    if (detail(whole.upsampling) > as_fine * detail(other.upsampling)) return BetterCopy::whole;
    if (detail(other.upsampling) > as_fine * detail(whole.upsampling)) return BetterCopy::other;
  }
  return shown(pair) < as_large ? BetterCopy::whole : BetterCopy::alike;
}

} // namespace stoneproof
