// What a picture tells as a whole, whatever its frames show of it: what lies round it, and what it looks
// like.
#pragma once

#include "engine/measure/bed_border.h"
#include "engine/measure/copy_fingerprint.h"
#include "engine/picture/facts.h"
#include "engine/units/geometry.h"

#include <optional>

namespace stoneproof {

/// A BedBorder as the picture is seen.
struct Bed {
  Certainty certainty = Certainty::cannot_tell;
  bool white = false;         ///< lid or paper; else black
  double share = 0;           ///< of the picture that is not the original
  PixelRect original;         ///< the least upright rectangle round it; where certainty is hint or firm
  std::optional<double> tilt; ///< degrees that it is turned clockwise
};

struct WholePicture {
  Bed bed;
  CopyFingerprint print; ///< of the picture as it is stored
  SmallPicture small;
};

/// Takes the rows of a decoding pass. Memory: that of a SmallPictureMaker.
class WholeMeter {
public:
  /// Both must outlive this; the layout is of whole rows that are not reduced.
  WholeMeter(const Facts &facts, const RowLayout &layout) : facts_(facts), maker_(layout) {}
  /// Row `y` of the picture as stored; all of them, in order.
  void add(std::int64_t y, const std::uint8_t *row) { maker_.add(y, row); }
  WholePicture take();

private:
  const Facts &facts_;
  SmallPictureMaker maker_;
};

} // namespace stoneproof
