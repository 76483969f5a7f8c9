// Finding the original on the scanner's bed. The only way in is bed_border; tested in
// tests/engine/measure/bed_border.test.cpp, scored by tests/bench/detail/copies.sh.
#include "engine/measure/bed_border.h"

#include "engine/measure/picture_mask.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stoneproof {

namespace {

/// Common practice, tried out: a lid or paper is that bright, a lid of black that dark, and even (of 255).
constexpr double white_from = 225, black_to = 28, even_below = 8, tone_off = 14;
constexpr int colour_off = 24;
/// Set on the half of the photographs that scores nothing (tests/bench/detail).
constexpr double least_share = 0.03, least_fill = 0.93, least_margin = 0.012;

double gray(const std::uint8_t *p) { return 0.299 * p[0] + 0.587 * p[1] + 0.114 * p[2]; } // ITU-T T.871

struct Corner {
  double middle = 0, spread = 0; ///< median and standard deviation
};

Corner corner(const SmallPicture &picture, int left, int top, int side) {
  std::vector<double> values;
  double sum = 0, squares = 0;
  for (int y = top; y < top + side; ++y)
    for (int x = left; x < left + side; ++x) {
      const double value = gray(picture.at(x, y));
      values.push_back(value), sum += value, squares += value * value;
    }
  const double count = static_cast<double>(values.size()), mean = sum / count;
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2),
                   values.end());
  return {values[values.size() / 2], std::sqrt(std::max(0.0, squares / count - mean * mean))};
}

/// The tone of the bed, where at least two corners show it.
std::optional<double> bed_tone(const SmallPicture &picture, int strip, bool white) {
  const int side = 2 * strip, right = picture.width - side, bottom = picture.height - side;
  std::vector<double> tones;
  for (const Corner &c : {corner(picture, 0, 0, side), corner(picture, right, 0, side),
                          corner(picture, 0, bottom, side), corner(picture, right, bottom, side)})
    if (c.spread < even_below && (white ? c.middle >= white_from : c.middle <= black_to))
      tones.push_back(c.middle);
  if (tones.size() < 2) return std::nullopt;
  std::ranges::sort(tones);
  return (tones[(tones.size() - 1) / 2] + tones[tones.size() / 2]) / 2;
}

/// Brightness of every pixel, and of one more round the picture, which goes on beyond its edges.
std::vector<float> padded_gray(const SmallPicture &picture) {
  const auto stride = static_cast<std::size_t>(picture.width + 2);
  std::vector<float> values(stride * static_cast<std::size_t>(picture.height + 2));
  float *to = values.data();
  for (int y = -1; y <= picture.height; ++y, to += stride) {
    const std::uint8_t *p = picture.at(0, std::clamp(y, 0, picture.height - 1));
    for (std::size_t x = 1; x + 1 < stride; ++x, p += 3) to[x] = static_cast<float>(gray(p));
    to[0] = to[1], to[stride - 1] = to[stride - 2];
  }
  return values;
}

/// Pixels of that tone, on the mean of the nine round each, and without colour.
PictureMask of_tone(const SmallPicture &picture, double tone) {
  PictureMask mask(picture.width, picture.height);
  const std::vector<float> padded = padded_gray(picture);
  const auto stride = static_cast<std::size_t>(picture.width + 2);
  std::vector<float> sums(stride); // of three rows
  const auto wanted = static_cast<float>(9 * tone), off = static_cast<float>(9 * tone_off);
  const std::uint8_t *p = picture.rgb.data();
  std::uint8_t *to = mask.set.data();
  for (int y = 0; y < picture.height; ++y) {
    const float *above = padded.data() + static_cast<std::size_t>(y) * stride;
    for (std::size_t x = 0; x < stride; ++x) sums[x] = above[x] + above[x + stride] + above[x + 2 * stride];
    for (std::size_t x = 0; x + 2 < stride; ++x, p += 3) {
      const int colour = std::max({p[0], p[1], p[2]}) - std::min({p[0], p[1], p[2]});
      const bool toned = std::abs(sums[x] + sums[x + 1] + sums[x + 2] - wanted) < off;
      *to++ = static_cast<std::uint8_t>(toned & (colour < colour_off));
    }
  }
  return mask;
}

struct Box {
  int left = 0, top = 0, right = 0, bottom = 0; ///< ends behind the last pixel
  double area = 0;
};

Box box_of(const PictureMask &mask) {
  Box box{mask.width, mask.height, 0, 0, 0};
  for (int y = 0; y < mask.height; ++y) {
    const std::uint8_t *begin = mask.set.data() + static_cast<std::ptrdiff_t>(y) * mask.width;
    const std::uint8_t *end = begin + mask.width;
    const auto count = std::count(begin, end, 1);
    if (count == 0) continue;
    while (!end[-1]) --end;
    const std::uint8_t *first = std::find(begin, end, 1);
    box.left = std::min(box.left, static_cast<int>(first - begin));
    box.right = std::max(box.right, static_cast<int>(end - begin));
    box.top = std::min(box.top, y), box.bottom = y + 1;
    box.area += static_cast<double>(count);
  }
  return box;
}

double median(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// The slope of places along an edge, as the median of the slopes between pairs (Theil and Sen); none where
/// half of them lie more than 1.2 pixels off the line.
std::optional<double> slope_of(const std::vector<double> &edge) {
  constexpr std::size_t samples = 60, apart = 12;
  if (edge.size() < 40) return std::nullopt;
  const auto at = [&](std::size_t i) { return i * (edge.size() - 1) / (samples - 1); };
  std::vector<double> slopes;
  for (std::size_t i = 0; i < samples; ++i)
    for (std::size_t k = i + apart; k < samples; ++k)
      if (at(k) > at(i)) slopes.push_back((edge[at(k)] - edge[at(i)]) / static_cast<double>(at(k) - at(i)));
  const double slope = median(slopes);
  std::vector<double> starts, off;
  for (std::size_t i = 0; i < edge.size(); ++i) starts.push_back(edge[i] - slope * static_cast<double>(i));
  const double start = median(starts);
  for (const double value : starts) off.push_back(std::abs(value - start));
  return median(off) < 1.2 ? std::optional(slope) : std::nullopt;
}

/// Where an edge lies in each column (or row) of the middle two thirds of it; from outside, to the first
/// pixel.
std::vector<double> edge_places(const PictureMask &mask, const Box &box, bool horizontal, bool from_end) {
  const int begin = horizontal ? box.left : box.top, length = (horizontal ? box.right : box.bottom) - begin;
  const int depth = horizontal ? mask.height : mask.width;
  std::vector<double> places;
  for (int i = begin + length / 6; i < begin + length * 5 / 6; ++i) {
    int from = 0;
    const auto is_set = [&](int k) {
      const int across = from_end ? depth - 1 - k : k;
      return horizontal ? mask.at(i, across) : mask.at(across, i);
    };
    while (from < depth && !is_set(from)) ++from;
    places.push_back(from_end ? depth - 1 - from : from);
  }
  return places;
}

std::optional<double> tilt_of(const PictureMask &mask, const Box &box) {
  std::vector<double> angles;
  const auto take = [&](bool horizontal, bool from_end) {
    if (const auto slope = slope_of(edge_places(mask, box, horizontal, from_end)))
      angles.push_back(std::atan(*slope) * 180 / std::numbers::pi * (horizontal ? 1 : -1));
  };
  if (box.top > 1) take(true, false);
  if (box.bottom < mask.height - 1) take(true, true);
  if (box.left > 1) take(false, false);
  if (box.right < mask.width - 1) take(false, true);
  double best = 0;
  std::size_t most = 1;
  for (const double angle : angles) {
    double sum = 0;
    std::size_t count = 0;
    for (const double other : angles)
      if (std::abs(other - angle) < 0.6) sum += other, ++count;
    if (count > most) most = count, best = sum / static_cast<double>(count);
  }
  return most >= 2 ? std::optional(best) : std::nullopt;
}

/// How much of the least rectangle of that tilt round the mask is set.
double fill_of(const PictureMask &mask, const Box &box, double tilt) {
  const double c = std::cos(tilt * std::numbers::pi / 180), s = std::sin(tilt * std::numbers::pi / 180);
  std::vector<double> u, v;
  for (int y = box.top; y < box.bottom; ++y)
    for (int x = box.left; x < box.right; ++x)
      if (mask.at(x, y)) u.push_back(x * c + y * s), v.push_back(y * c - x * s);
  // A few pixels may stick out.
  const auto extent = [](std::vector<double> &values) {
    const auto skip = static_cast<std::ptrdiff_t>(values.size() / 1000);
    std::nth_element(values.begin(), values.begin() + skip, values.end());
    const double low = values[static_cast<std::size_t>(skip)];
    std::nth_element(values.begin(), values.end() - 1 - skip, values.end());
    return *(values.end() - 1 - skip) - low + 1;
  };
  return box.area / (extent(u) * extent(v));
}

BedBorder of_kind(const SmallPicture &picture, int strip, bool white) {
  BedBorder found{Certainty::no, white};
  const auto tone = bed_tone(picture, strip, white);
  if (!tone) return found;
  PictureMask original = joined_to_edge(of_tone(picture, *tone), strip);
  // Two margins that count take more than this, whatever else is cut off.
  const auto bed = static_cast<double>(std::ranges::count(original.set, 1));
  if (bed < least_margin * static_cast<double>(original.set.size())) return found;
  for (std::uint8_t &pixel : original.set) pixel = pixel ? 0 : 1;
  original = largest_piece(opened(original));
  const Box box = box_of(original);
  if (box.area < 1) return found;
  found.share = 1 - box.area / (static_cast<double>(picture.width) * picture.height);
  found.left = static_cast<double>(box.left) / picture.width,
  found.right = static_cast<double>(box.right) / picture.width;
  found.top = static_cast<double>(box.top) / picture.height,
  found.bottom = static_cast<double>(box.bottom) / picture.height;
  const double margins[] = {found.left, found.top, 1 - found.right, 1 - found.bottom};
  const auto clear = std::ranges::count_if(margins, [](double margin) { return margin > least_margin; });
  if (found.share < least_share || clear < 2) return found;
  found.tilt = tilt_of(original, box);
  if (found.tilt && fill_of(original, box, *found.tilt) > least_fill) found.certainty = Certainty::firm;
  return found;
}

} // namespace

BedBorder bed_border(const SmallPicture &picture) {
  constexpr int least_side = 150;
  if (std::min(picture.width, picture.height) < least_side) return {};
  const int strip = std::max(3, std::max(picture.width, picture.height) * 6 / 1000);
  const BedBorder white = of_kind(picture, strip, true), black = of_kind(picture, strip, false);
  if (white.certainty == Certainty::firm &&
      (black.certainty != Certainty::firm || white.share >= black.share))
    return white;
  if (black.certainty == Certainty::firm) return black;
  BedBorder none;
  none.certainty = Certainty::no;
  return none;
}

} // namespace stoneproof
