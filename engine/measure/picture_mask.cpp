// Following areas of a mask. The only ways in are those of picture_mask.h; tested in
// tests/engine/measure/bed_border.test.cpp.
#include "engine/measure/picture_mask.h"

#include <algorithm>

namespace stoneproof {

namespace {

struct Place {
  int x, y;
};

/// Takes everything that hangs together with the places on the stack out of `left` and into `to`.
std::size_t move_joined(std::vector<Place> &stack, PictureMask &left, PictureMask &to) {
  std::size_t count = 0;
  while (!stack.empty()) {
    const Place p = stack.back();
    stack.pop_back();
    if (p.x < 0 || p.y < 0 || p.x >= left.width || p.y >= left.height || !left.at(p.x, p.y)) continue;
    left.at(p.x, p.y) = 0, to.at(p.x, p.y) = 1, ++count;
    for (const Place step : {Place{1, 0}, Place{-1, 0}, Place{0, 1}, Place{0, -1}})
      stack.push_back({p.x + step.x, p.y + step.y});
  }
  return count;
}

/// One bit for each of five pixels: the least is their AND, the largest their OR.
template <class Join>
void join_five(const std::uint8_t *in, std::uint8_t *out, std::ptrdiff_t apart, std::ptrdiff_t count,
               Join join) {
  for (std::ptrdiff_t i = 0; i < count; ++i)
    out[i] =
        join(join(join(in[i - 2 * apart], in[i - apart]), in[i]), join(in[i + apart], in[i + 2 * apart]));
}

/// Each pixel becomes the least, or the largest, of the 5 x 5 round it; those at the edge go on beyond it.
template <class Join>
PictureMask of_square(const PictureMask &mask, Join join) {
  constexpr int reach = 2;
  const auto width = static_cast<std::ptrdiff_t>(mask.width), padded = width + 2 * reach;
  PictureMask out(mask.width, mask.height);
  std::vector<std::uint8_t> row(static_cast<std::size_t>(padded));
  std::vector<std::uint8_t> across(static_cast<std::size_t>(width) *
                                   static_cast<std::size_t>(mask.height + 2 * reach));
  for (int y = -reach; y < mask.height + reach; ++y) {
    const std::uint8_t *from = mask.set.data() + std::clamp(y, 0, mask.height - 1) * width;
    std::fill_n(row.begin(), reach, from[0]);
    std::copy_n(from, width, row.begin() + reach);
    std::fill_n(row.end() - reach, reach, from[width - 1]);
    join_five(row.data() + reach, across.data() + (y + reach) * width, 1, width, join);
  }
  join_five(across.data() + reach * width, out.set.data(), width, width * mask.height, join);
  return out;
}

} // namespace

PictureMask joined_to_edge(const PictureMask &mask, int strip) {
  PictureMask left = mask, joined(mask.width, mask.height);
  std::vector<Place> stack;
  for (int y = 0; y < mask.height; ++y)
    for (int x = 0; x < mask.width; ++x)
      if (std::min({x, y, mask.width - 1 - x, mask.height - 1 - y}) < strip) stack.push_back({x, y});
  move_joined(stack, left, joined);
  return joined;
}

PictureMask opened(const PictureMask &mask) {
  const auto both = [](std::uint8_t a, std::uint8_t b) { return static_cast<std::uint8_t>(a & b); };
  const auto either = [](std::uint8_t a, std::uint8_t b) { return static_cast<std::uint8_t>(a | b); };
  return of_square(of_square(mask, both), either);
}

PictureMask largest_piece(const PictureMask &mask) {
  PictureMask left = mask, seen(mask.width, mask.height), best(mask.width, mask.height);
  std::size_t most = 0;
  std::vector<Place> stack;
  Place inside{0, 0};
  for (int y = 0; y < mask.height; ++y)
    for (int x = 0; x < mask.width; ++x) {
      if (!left.at(x, y)) continue;
      stack.push_back({x, y});
      if (const std::size_t count = move_joined(stack, left, seen); count > most)
        most = count, inside = {x, y};
    }
  left = mask;
  if (most > 0) stack.push_back(inside);
  move_joined(stack, left, best);
  return best;
}

} // namespace stoneproof
