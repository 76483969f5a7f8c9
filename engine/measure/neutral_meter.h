// Whether a picture that is stored in three colours holds any colour.
#pragma once

#include "engine/picture/rows.h"

#include <cstdint>

namespace stoneproof {

/// A pixel is coloured where its largest and smallest channel differ by more than 8 of 255: more than a JPEG
/// or a scanner's noise makes of gray (our own choice). Looks only as long as the picture may still be gray.
class NeutralMeter {
public:
  /// The layout must outlive this; it is of rows that are not reduced.
  explicit NeutralMeter(const RowLayout &layout);
  void add(const std::uint8_t *row);
  /// RGB of which at most one pixel in a thousand is coloured. Never of other colour models.
  bool is_neutral() const { return asks_ && coloured_ <= bound_; }

private:
  const RowLayout &layout_;
  bool asks_;
  std::int64_t coloured_ = 0, bound_;
};

} // namespace stoneproof
