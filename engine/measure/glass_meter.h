// What may be dirt on a scanner's glass, kept of one picture so that it can be compared with others.
#pragma once

#include "engine/measure/reduced_luma.h"
#include "engine/measure/speck_filter.h"
#include "engine/measure/streak_meter.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace stoneproof {

/// A pixel of the reduced picture that stands out from its surroundings.
struct GlassMark {
  std::uint8_t skip = 0;     ///< pixels from the mark before, row after row; the first: from the start
  std::uint8_t strength = 0; ///< 1/16 of the doublings over the least; 0: no mark, only `skip` pixels more
  std::int8_t contrast = 0;  ///< levels of 255; less than 0: darker than its surroundings
};

/// One picture as the comparison needs it; at most about 0.6 MB.
struct GlassMap {
  PixelSize stored;                   ///< of the picture, before orientation
  int factor = 1;                     ///< stored pixels for one of the reduced picture, along each axis
  std::int64_t width = 0, height = 0; ///< of the reduced picture; 0: too small to tell anything
  std::vector<GlassMark> marks;       ///< those that stand out most, against how much happens around them
  StreakLines columns, rows;
};

/// The least factor that reduces a picture to at most three million pixels.
int glass_factor(PixelSize stored);

/// Looks at all of a picture, reduced by means, and keeps the twentieth of its pixels that stands out most.
/// Means, not extremes: these find as many specks but miss streaks (bench_glass, twice as fine).
/// What dust does to one pixel of a fine scan is lost, and would not be seen in print either.
/// Holds for continuous tone. Memory: about 140 reduced rows, eight times that while they are filtered, and
/// the marks twice over.
class GlassMeter {
public:
  static constexpr std::int64_t least_side = 64; ///< reduced pixels; smaller pictures give an empty map

  /// The layout must outlive this; it is of rows that are not reduced, of the whole picture.
  explicit GlassMeter(const RowLayout &layout);
  /// The next row as stored, from the first to the last.
  void add(const std::uint8_t *row);
  GlassMap take();

private:
  struct Candidate {
    std::uint32_t at; ///< row after row
    std::uint8_t strength;
    std::int8_t contrast;
  };
  void add_reduced(const std::uint8_t *row);
  void filter_band();
  void measure_activity();
  void judge_blocks(std::int64_t rows_of_blocks);
  void judge_row_of_blocks(std::int64_t block_row, const std::int16_t *residual);
  double activity_around(std::int64_t column, std::int64_t row) const;
  void keep_strongest();

  PixelSize stored_;
  int factor_;
  ReducedLuma reduced_;
  std::int64_t width_, height_, stride_, columns_;
  bool any_;                       ///< large enough
  std::vector<std::uint8_t> band_; ///< padded rows, from `reach` above the first that is not yet filtered
  std::int64_t band_y_ = 0;        ///< the first reduced row that is not yet filtered
  SpeckFilter filter_;
  std::optional<StreakMeter> streaks_;
  std::vector<std::int16_t> residual_; ///< rows that are filtered and not yet judged
  std::int64_t residual_y_ = 0;
  std::vector<float> activity_; ///< of blocks, row after row
  std::vector<Candidate> candidates_;
  std::size_t most_;
  int least_ = 1; ///< strength that is still kept
};

} // namespace stoneproof
