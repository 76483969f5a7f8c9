// The one pass over the pixels of a picture: every row is decoded once and handed to all who measure it.
#pragma once

#include "engine/measure/detail.h"
#include "engine/measure/glass_meter.h"

#include "engine/measure/ink_meter.h"
#include "engine/measure/tone.h"
#include "engine/measure/whole_picture.h"

#include "engine/picture/small_copy.h"

#include <functional>
#include <optional>
#include <vector>

namespace stoneproof {

/// A part of a picture that is to be measured.
struct Look {
  PixelRect part; ///< as the picture is seen; widened to whole pixels, cut to the picture
  /// Side of the square over which ink is averaged, in pixels of the picture as it is seen; none: no ink is
  /// measured.
  std::optional<double> square_width, square_height;
  friend bool operator==(const Look &, const Look &) = default;
};

/// What a part of a picture holds.
struct LookResult {
  Tone tone;
  Detail detail;
  std::optional<Ink> ink; ///< none: not asked for, or there is no table for the picture's colours
  PixelRect ink_place;    ///< where most ink lies, as the picture is seen
};

struct PassOrder {
  std::optional<PreviewOrder> copy;
  std::optional<PreviewOrder> patch; ///< a second copy, of a small part
  std::vector<Look> looks;
  /// Look for detail, enlargement, an earlier saving and printed screens in every look, and at the picture as
  /// a whole.
  bool detail = true;
  bool glass = false; ///< keep what may be dirt on a scanner's glass

  /// Gives the table for a picture's profile (empty: none embedded) and space, or null: then ink is measured
  /// of CMYK only. Called at most once.
  std::function<const PressTable *(const std::vector<std::uint8_t> &icc, ProfileSpace space)> press_table;
};

struct PassResult {
  std::optional<SmallCopy> copy, patch;
  std::vector<LookResult> looks;     ///< one for each look
  std::optional<WholePicture> whole; ///< where detail was asked for
  std::optional<GlassMap> glass;     ///< where it was asked for

  bool neutral = false; ///< stored as RGB, though it holds no colour
};

/// Decodes the whole picture once, all rows to the last, so that damage anywhere in it is met. Memory: a few
/// rows, the small copy, and rows of cells. Faults: as read_preview; a look that lies outside the picture.
Outcome<PassResult> measure_pixels(const std::filesystem::path &file, const Facts &facts,
                                   const PassOrder &order, const PictureLimits &limits = {});

} // namespace stoneproof
