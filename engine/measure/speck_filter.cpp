// Smoothing by squares. Only way in: SpeckFilter. Tested in tests/engine/measure/speck_filter.test.cpp.
#include "engine/measure/speck_filter.h"

#include <algorithm>
#include <utility>

namespace stoneproof {

namespace {

using Bytes = std::vector<std::uint8_t>;

struct Least {
  std::uint8_t operator()(std::uint8_t a, std::uint8_t b) const { return a < b ? a : b; }
};
struct Most {
  std::uint8_t operator()(std::uint8_t a, std::uint8_t b) const { return a > b ? a : b; }
};

template <class Pick>
void pick_pairs(const std::uint8_t *from, std::size_t step, std::size_t count, std::uint8_t *to, Pick pick) {
  for (std::size_t i = 0; i < count; ++i) to[i] = pick(from[i], from[i + step]);
}

/// Replaces each value of `here` by the pick of itself and the window - 1 that follow at `stride`, in as many
/// steps as the window has binary digits. The last values are left as they may be: they lie in the padding.
template <class Pick>
void pick_windows(Bytes &here, Bytes &there, std::size_t stride, std::size_t window, Pick pick) {
  std::size_t covered = 1, valid = here.size();
  while (covered < window) {
    const std::size_t step = std::min(covered, window - covered) * stride;
    valid -= step;
    pick_pairs(here.data(), step, valid, there.data(), pick);
    here.swap(there);
    covered += std::min(covered, window - covered);
  }
}

template <class Pick>
void pick_squares(Bytes &here, Bytes &there, int width, int side, Pick pick) {
  pick_windows(here, there, 1, static_cast<std::size_t>(side), pick);
  pick_windows(here, there, static_cast<std::size_t>(width), static_cast<std::size_t>(side), pick);
}

} // namespace

// Each window begins at its pixel, not around it, so that the whole result has moved by 2 * (square - 1) up
// and to the left. The second of the three passes does the two that follow each other in one.
const Bytes &SpeckFilter::smooth(const Bytes &padded, int width, bool open_last) {
  one_ = padded;
  other_.resize(padded.size());
  const int twice = 2 * square - 1;
  if (open_last) {
    pick_squares(one_, other_, width, square, Most{});
    pick_squares(one_, other_, width, twice, Least{});
    pick_squares(one_, other_, width, square, Most{});
  } else {
    pick_squares(one_, other_, width, square, Least{});
    pick_squares(one_, other_, width, twice, Most{});
    pick_squares(one_, other_, width, square, Least{});
  }
  return one_;
}

const std::vector<std::int16_t> &SpeckFilter::apply(const Bytes &padded, int width, int rows) {
  closed_ = smooth(padded, width, true);
  const Bytes &opened = smooth(padded, width, false);

  const auto stride = static_cast<std::size_t>(width);
  const std::size_t moved = 2 * (square - 1) * (stride + 1); // from the smoothed copy's place to the pixel's
  const std::size_t count = padded.size() - 2 * moved;
  raw_.assign(padded.size(), 0);
  const std::uint8_t *pixels = padded.data() + moved, *a = closed_.data(), *b = opened.data();
  std::int16_t *raw = raw_.data() + moved;
  for (std::size_t i = 0; i < count; ++i) raw[i] = static_cast<std::int16_t>(2 * pixels[i] - a[i] - b[i]);

  blurred_.assign(padded.size(), 0);
  const std::int16_t *from = raw_.data();
  std::int16_t *to = blurred_.data();
  for (std::size_t i = stride; i + stride < padded.size(); ++i)
    to[i] = static_cast<std::int16_t>(from[i - stride] + 2 * from[i] + from[i + stride]);

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
