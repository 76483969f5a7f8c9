// Thin lines that run along a whole picture, as a scanner draws them with one bad or dirty sensor.
#pragma once

#include <cstdint>
#include <vector>

namespace stoneproof {

/// How much each line of one direction stands out from its neighbours, in `segments` parts of its length: the
/// mean over the part of a pixel less the mean of those two and three beside it, cut to +-`cut` levels so
/// that the picture's own edges weigh little.
struct StreakLines {
  static constexpr int segments = 16;
  static constexpr int unit = 64; ///< of a value for one level of 255
  static constexpr int cut = 8;

  std::int64_t count = 0;           ///< of lines
  std::vector<std::int16_t> values; ///< segment after segment, `count` in each
};

/// Looks at a picture of at least 64 pixels a side as its rows come, along columns and along rows. Memory:
/// one value for each line and segment.
class StreakMeter {
public:
  StreakMeter(std::int64_t width, std::int64_t height);
  /// Row `y`; `row` has at least 3 valid pixels before and behind it. `near` are the rows 3 and 2 above, 2
  /// and 3 below, the last row repeated where there is none.
  void add(std::int64_t y, const std::uint8_t *row, const std::uint8_t *const near[4]);
  StreakLines take_columns();
  StreakLines take_rows();

private:
  void finish_segment();

  std::int64_t width_, height_, segment_ = 0, segment_rows_ = 0;
  std::vector<std::int32_t> sums_;
  StreakLines columns_, rows_;
};

/// A line that stands out in nearly all of its segments.
struct StreakLine {
  std::int64_t at = 0; ///< the line's number
  double strength =
      0; ///< levels of 255, more than 0: lighter than its neighbours; the median of its segments
  double deviation = 0; ///< how many times the usual deviation of the picture's lines, all segments together
  double agreeing = 0;  ///< share of the segments in which it stands out the same way
};

/// For each line how it stands out; `at` is the index.
std::vector<StreakLine> judge_lines(const StreakLines &lines);

} // namespace stoneproof
