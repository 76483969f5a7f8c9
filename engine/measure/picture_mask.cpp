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

/// Each pixel becomes the least, or the largest, of the five round it along one axis.
PictureMask of_five(const PictureMask &mask, int dx, int dy, bool largest) {
  PictureMask out(mask.width, mask.height);
  for (int y = 0; y < mask.height; ++y)
    for (int x = 0; x < mask.width; ++x) {
      std::uint8_t value = mask.at(x, y);
      for (int i = -2; i <= 2; ++i) {
        const std::uint8_t other =
            mask.at(std::clamp(x + i * dx, 0, mask.width - 1), std::clamp(y + i * dy, 0, mask.height - 1));
        value = largest ? std::max(value, other) : std::min(value, other);
      }
      out.at(x, y) = value;
    }
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
  return of_five(of_five(of_five(of_five(mask, 1, 0, false), 0, 1, false), 1, 0, true), 0, 1, true);
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
