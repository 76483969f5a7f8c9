// Differences from medians. Only way in: SpeckFilter. Tested in tests/engine/measure/speck_filter.test.cpp.
#include "engine/measure/speck_filter.h"

namespace stoneproof {

namespace {

inline void sort_pair(std::uint8_t &a, std::uint8_t &b) {
  const std::uint8_t least = a < b ? a : b, most = a < b ? b : a;
  a = least, b = most;
}

/// Moves the least of `count` values to the front and the largest to the back.
template <int count>
inline void part_extremes(std::uint8_t *v) {
  for (int i = 0; i < count / 2; ++i) sort_pair(v[i], v[count - 1 - i]);
  for (int i = 1; i < (count + 1) / 2; ++i) sort_pair(v[0], v[i]);
  for (int i = count / 2; i < count - 1; ++i) sort_pair(v[i], v[count - 1]);
}

/// The median of eleven values, `stride` apart around each place. Of seven, the least and the largest are
/// surely not the median of eleven and make room for the next, and so on until three are left. No branches,
/// so that many places are done at once.
void medians(const std::uint8_t *from, std::size_t stride, std::size_t count, std::uint8_t *to) {
  static_assert(SpeckFilter::window == 11);
  for (std::size_t i = 0; i < count; ++i) {
    const std::uint8_t *p = from + i;
    std::uint8_t v[7] = {p[0],          p[stride],     p[2 * stride], p[3 * stride],
                         p[4 * stride], p[5 * stride], p[6 * stride]};
    part_extremes<7>(v);
    v[0] = p[7 * stride];
    part_extremes<6>(v);
    v[0] = p[8 * stride];
    part_extremes<5>(v);
    v[0] = p[9 * stride];
    part_extremes<4>(v);
    v[0] = p[10 * stride];
    part_extremes<3>(v);
    to[i] = v[1];
  }
}

} // namespace

const std::vector<std::int16_t> &SpeckFilter::apply(const std::vector<std::uint8_t> &padded, int width,
                                                    int rows) {
  const auto stride = static_cast<std::size_t>(width), half = std::size_t{window / 2};
  const std::size_t size = padded.size();
  along_.resize(size);
  both_.resize(size);
  medians(padded.data(), 1, size - 2 * half, along_.data() + half);
  medians(along_.data(), stride, size - 2 * half * stride, both_.data() + half * stride);

  raw_.resize(size);
  for (std::size_t i = 0; i < size; ++i) raw_[i] = static_cast<std::int16_t>(padded[i] - both_[i]);
  blurred_.resize(size);
  const std::int16_t *from = raw_.data();
  for (std::size_t i = stride; i + stride < size; ++i)
    blurred_[i] = static_cast<std::int16_t>(from[i - stride] + 2 * from[i] + from[i + stride]);

  const int inner = width - 2 * reach;
  out_.resize(static_cast<std::size_t>(inner) * static_cast<std::size_t>(rows - 2 * reach));
  std::int16_t *out = out_.data();
  for (int y = reach; y < rows - reach; ++y, out += inner) {
    const std::int16_t *row = blurred_.data() + static_cast<std::size_t>(y) * stride + reach;
    for (int x = 0; x < inner; ++x) out[x] = static_cast<std::int16_t>(row[x - 1] + 2 * row[x] + row[x + 1]);
  }
  return out_;
}

} // namespace stoneproof
