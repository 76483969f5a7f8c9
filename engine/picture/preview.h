// A small copy of a picture, made for the proof: decoded in rows, averaged down, never held whole.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/area_average.h"
#include "engine/picture/facts.h"
#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <cstdint>
#include <filesystem>
#include <vector>

namespace stoneproof {

/// 8-bit RGB rows, top to bottom, as the picture is seen (orientation applied), showing `part` of it.
struct Preview {
  PixelRect part; ///< the part of the full picture that the preview covers, in whole pixels
  int width = 0, height = 0;
  std::vector<std::uint8_t> rgb; ///< width * height * 3 bytes
};

struct PreviewOrder {
  PixelRect part; ///< wanted part of the picture as it is seen; widened to whole pixels, cut to the picture
  int width = 0,
      height = 0; ///< wanted size of that part in preview pixels; never enlarged beyond the picture's own
};

/// An order fitted to a picture.
struct PreviewPlan {
  PixelRect part;                          ///< as seen, in whole pixels of the picture
  PixelRect stored;                        ///< the same part as it is stored
  int stored_width = 0, stored_height = 0; ///< of the preview before it is turned
};

/// Faults: the part lies outside the picture; the preview would pass limits.most_memory.
Outcome<PreviewPlan> plan_preview(const std::filesystem::path &file, const Facts &facts,
                                  const PreviewOrder &order, const PictureLimits &limits);

/// Makes a preview of rows that may serve others too.
class PreviewMaker {
public:
  /// The layout, which must outlive this, is of a source whose rows hold `plan.stored`.
  PreviewMaker(const PreviewPlan &plan, const RowLayout &layout);
  /// The next row of the source, from its first on; rows below rows_wanted() are not looked at.
  void add(const std::uint8_t *row);
  std::int64_t rows_wanted() const { return average_.first_row() + average_.row_count(); }
  /// After rows_wanted() rows. `orientation` as in Facts.
  Preview take(int orientation);

private:
  PreviewPlan plan_;
  ToRgb to_rgb_;
  AreaAverage average_;
  std::vector<std::uint8_t> rgb_;
  std::int64_t row_ = 0;
};

/// Decodes the part asked for. Memory is bounded by the picture's width, the preview's size and `limits`.
/// A JPEG is decoded at the smallest eighth that is still no smaller than the order. CMYK and Lab become RGB
/// by a plain conversion, good enough to recognise a picture by. Faults: as read_facts, and damage met while
/// decoding; damage that leaves a picture to look at (a cut-off JPEG) is a Fault too: nobody should print it.
Outcome<Preview> read_preview(const std::filesystem::path &file, const Facts &facts,
                              const PreviewOrder &order, const PictureLimits &limits = {});

} // namespace stoneproof
