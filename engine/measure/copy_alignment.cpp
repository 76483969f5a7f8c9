// Aligning small pictures. The only way in is align_copies; tested in
// tests/engine/measure/near_copy.test.cpp.
#include "engine/measure/copy_alignment.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

constexpr int side = SmallGray::side;
constexpr std::size_t unknowns = 8; ///< six of the map, gain, offset
using Vector = std::array<double, unknowns>;
using Matrix = std::array<Vector, unknowns>;

/// From the smaller's pixels, -1 to 1 along each axis, to pixels of the larger.
struct Map {
  double x = 0, x_by_x = 0, x_by_y = 0, y = 0, y_by_x = 0, y_by_y = 0;
};

double unit(int pixel) { return (2 * pixel + 1.0) / side - 1; }

struct Sample {
  bool inside = false;
  double value = 0, slope_x = 0, slope_y = 0;
};

Sample sample(const SmallGray &gray, double x, double y) {
  if (!(x >= 0 && y >= 0 && x < side - 1 && y < side - 1)) return {};
  const int left = static_cast<int>(x), top = static_cast<int>(y);
  const double u = x - left, v = y - top;
  const double a = gray.at(left, top), b = gray.at(left + 1, top), c = gray.at(left, top + 1),
               d = gray.at(left + 1, top + 1);
  return {true, (1 - v) * ((1 - u) * a + u * b) + v * ((1 - u) * c + u * d), (1 - v) * (b - a) + v * (d - c),
          (1 - u) * (c - a) + u * (d - b)};
}

Sample sample(const SmallGray &gray, const Map &map, int x, int y) {
  const double u = unit(x), v = unit(y);
  return sample(gray, map.x + map.x_by_x * u + map.x_by_y * v, map.y + map.y_by_x * u + map.y_by_y * v);
}

/// By elimination with pivots; nothing where the pictures do not tell.
std::optional<Vector> solved(Matrix m, Vector right) {
  for (std::size_t i = 0; i < unknowns; ++i) {
    std::size_t pivot = i;
    for (std::size_t k = i + 1; k < unknowns; ++k)
      if (std::abs(m[k][i]) > std::abs(m[pivot][i])) pivot = k;
    std::swap(m[i], m[pivot]), std::swap(right[i], right[pivot]);
    if (std::abs(m[i][i]) < 1e-9) return std::nullopt;
    for (std::size_t k = i + 1; k < unknowns; ++k) {
      const double share = m[k][i] / m[i][i];
      for (std::size_t l = i; l < unknowns; ++l) m[k][l] -= share * m[i][l];
      right[k] -= share * right[i];
    }
  }
  for (std::size_t i = unknowns; i-- > 0;) {
    for (std::size_t k = i + 1; k < unknowns; ++k) right[i] -= m[i][k] * right[k];
    right[i] /= m[i][i];
  }
  return right;
}

/// One step of Gauss and Newton; `step` pixels from sample to sample. smaller = gain x larger + offset.
bool improve(Map &map, double &gain, const SmallGray &larger, const SmallGray &smaller, int step) {
  Matrix m{};
  Vector right{};
  double offset_sum = 0, count = 0;
  for (int y = step / 2; y < side; y += step)
    for (int x = step / 2; x < side; x += step)
      if (const Sample s = sample(larger, map, x, y); s.inside)
        offset_sum += smaller.at(x, y) - gain * s.value, ++count;
  if (count < 200) return false;
  const double offset = offset_sum / count;
  for (int y = step / 2; y < side; y += step)
    for (int x = step / 2; x < side; x += step) {
      const Sample s = sample(larger, map, x, y);
      if (!s.inside) continue;
      const double u = unit(x), v = unit(y), gx = gain * s.slope_x, gy = gain * s.slope_y;
      const Vector slope = {gx, gx * u, gx * v, gy, gy * u, gy * v, s.value - 128, 1};
      const double off = smaller.at(x, y) - gain * s.value - offset;
      for (std::size_t i = 0; i < unknowns; ++i) {
        for (std::size_t k = i; k < unknowns; ++k) m[i][k] += slope[i] * slope[k];
        right[i] += slope[i] * off;
      }
    }
  for (std::size_t i = 0; i < unknowns; ++i) {
    for (std::size_t k = 0; k < i; ++k) m[i][k] = m[k][i];
    m[i][i] *= 1.001;
  }
  const auto by = solved(m, right);
  if (!by) return false;
  map.x += (*by)[0], map.x_by_x += (*by)[1], map.x_by_y += (*by)[2];
  map.y += (*by)[3], map.y_by_x += (*by)[4], map.y_by_y += (*by)[5];
  gain = std::clamp(gain + (*by)[6], 0.2, 5.0);
  return true;
}

/// Means of the 5 x 5 pixels round each.
SmallGray softened(const SmallGray &gray) {
  constexpr int reach = 2, count = (2 * reach + 1) * (2 * reach + 1);
  SmallGray out;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      int sum = 0;
      for (int v = y - reach; v <= y + reach; ++v)
        for (int u = x - reach; u <= x + reach; ++u)
          sum += gray.at(std::clamp(u, 0, side - 1), std::clamp(v, 0, side - 1));
      out.pixels[static_cast<std::size_t>(y * side + x)] =
          static_cast<std::uint8_t>((sum + count / 2) / count);
    }
  return out;
}

/// A picture with gaps: what both show, and what stands in it without its slow parts.
struct Overlap {
  std::vector<double> values, weights; ///< weight 1: inside
};

constexpr int edge = side / 8;

bool in_middle(std::size_t i) {
  const int x = static_cast<int>(i) % side, y = static_cast<int>(i) / side;
  return std::min({x, y, side - 1 - x, side - 1 - y}) >= edge;
}

double correlation(const Overlap &a, const Overlap &b) {
  double n = 0, sa = 0, sb = 0, saa = 0, sbb = 0, sab = 0;
  for (std::size_t i = 0; i < a.values.size(); ++i) {
    if (a.weights[i] == 0 || !in_middle(i)) continue;
    const double x = a.values[i], y = b.values[i];
    ++n, sa += x, sb += y, saa += x * x, sbb += y * y, sab += x * y;
  }
  const double of_a = saa - sa * sa / n, of_b = sbb - sb * sb / n;
  return of_a <= 1e-9 || of_b <= 1e-9 ? 0 : (sab - sa * sb / n) / std::sqrt(of_a * of_b);
}

Overlap detail_of(const Overlap &picture) {
  constexpr int reach = 4;
  Overlap out = picture;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      double sum = 0, count = 0;
      for (int v = std::max(0, y - reach); v <= std::min(side - 1, y + reach); ++v)
        for (int u = std::max(0, x - reach); u <= std::min(side - 1, x + reach); ++u) {
          const auto i = static_cast<std::size_t>(v * side + u);
          sum += picture.weights[i] * picture.values[i], count += picture.weights[i];
        }
      if (count > 0) out.values[static_cast<std::size_t>(y * side + x)] -= sum / count;
    }
  return out;
}

} // namespace

std::optional<CopyAlignment> align_copies(const SmallGray &larger, const SmallGray &smaller,
                                          const GrayPart &part) {
  Map map;
  map.x = (part.left + part.right) / 2 * side - 0.5, map.y = (part.top + part.bottom) / 2 * side - 0.5;
  map.x_by_x = (part.right - part.left) / 2 * side, map.y_by_y = (part.bottom - part.top) / 2 * side;
  double gain = 1;
  // What is fine leads astray until the rest lies nearly right.
  const SmallGray soft_larger = softened(larger), soft_smaller = softened(smaller);
  for (int i = 0; i < 8; ++i)
    if (!improve(map, gain, soft_larger, soft_smaller, 3)) return std::nullopt;
  for (int i = 0; i < 8; ++i)
    if (!improve(map, gain, larger, smaller, 2)) return std::nullopt;

  Overlap a, b;
  double inside = 0;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      const Sample s = sample(larger, map, x, y);
      a.values.push_back(s.value), b.values.push_back(smaller.at(x, y));
      a.weights.push_back(s.inside ? 1 : 0), b.weights.push_back(s.inside ? 1 : 0);
      inside += s.inside ? 1 : 0;
    }
  if (inside < 2.0 / 3 * side * side) return std::nullopt;
  CopyAlignment found;
  found.likeness = correlation(a, b);
  found.detail = correlation(detail_of(a), detail_of(b));
  found.part = {(map.x + 0.5 - std::abs(map.x_by_x)) / side, (map.y + 0.5 - std::abs(map.y_by_y)) / side,
                (map.x + 0.5 + std::abs(map.x_by_x)) / side, (map.y + 0.5 + std::abs(map.y_by_y)) / side};
  return found;
}

} // namespace stoneproof
