// The parts to measure. The only way in is picture_looks; tested in tests/engine/run.
#include "engine/run/look_order.h"

#include <algorithm>

namespace stoneproof {

namespace {

Look whole_of(PixelSize size) {
  return {
      {0, 0, static_cast<double>(size.width), static_cast<double>(size.height)}, std::nullopt, std::nullopt};
}

} // namespace

std::vector<PictureLooks> picture_looks(const Evidence &evidence) {
  std::vector<PictureLooks> all(evidence.book.pictures.size());
  for (std::size_t i = 0; i < evidence.frames.size(); ++i) {
    const auto &laid = evidence.frames[i].laid;
    if (!laid || !laid->visible) continue;
    const Length side = evidence.press.ink.square;
    const Look look{laid->shown, (laid->density_x * side).count, (laid->density_y * side).count};
    PictureLooks &of_picture = all[*evidence.frames[i].picture];
    const auto known = std::find(of_picture.looks.begin(), of_picture.looks.end(), look);
    const auto at = static_cast<std::size_t>(known - of_picture.looks.begin());
    if (known == of_picture.looks.end()) {
      of_picture.looks.push_back(look);
      of_picture.frames.emplace_back();
    }
    of_picture.frames[at].push_back(i);
  }
  for (std::size_t picture = 0; picture < all.size(); ++picture) {
    const auto &facts = evidence.pictures[picture].facts;
    if (!all[picture].looks.empty() || !facts) continue;
    all[picture] = {{whole_of(facts->size)}, {{}}};
  }
  return all;
}

} // namespace stoneproof
