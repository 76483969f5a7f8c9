// Turns what was measured in a small copy to how the picture is seen. The only way in is WholeMeter; tested
// through tests/engine/measure/pixel_pass.test.cpp.
#include "engine/measure/whole_picture.h"

#include "engine/picture/orientation.h"

#include <utility>

namespace stoneproof {

namespace {

Bed bed_of(const BedBorder &border, const Facts &facts) {
  Bed bed{border.certainty, border.white, border.share, {}, border.tilt};
  const Orientation orientation(facts.orientation);
  const PixelSize stored = orientation.stored(facts.size);
  const auto width = static_cast<double>(stored.width), height = static_cast<double>(stored.height);
  bed.original =
      orientation.seen_part({border.left * width, border.top * height, (border.right - border.left) * width,
                             (border.bottom - border.top) * height},
                            stored);
  if (bed.tilt && orientation.mirrors()) bed.tilt = -*bed.tilt;
  return bed;
}

} // namespace

WholePicture WholeMeter::take() {
  SmallPicture small = maker_.take();
  const BedBorder border = bed_border(small);
  CopyFingerprint print = copy_fingerprint(small);
  return {bed_of(border, facts_), print, std::move(small)};
}

} // namespace stoneproof
