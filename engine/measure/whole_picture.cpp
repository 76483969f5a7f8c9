// Turns what was measured in a small copy to how the picture is seen. The only way in is WholeMeter; tested
// through tests/engine/measure/pixel_pass.test.cpp.
#include "engine/measure/whole_picture.h"

#include "engine/picture/orientation.h"

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
  const SmallPicture small = maker_.take();
  return {bed_of(bed_border(small), facts_), copy_fingerprint(small)};
}

} // namespace stoneproof
