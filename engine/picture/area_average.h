// Reduces RGB rows to a smaller picture: each new pixel is the mean of the area it stands for.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace stoneproof {

/// An interval of pixels along one axis, ends inside pixels allowed.
struct AverageSpan {
  double begin = 0, end = 0;
};

/// Takes rows one by one and keeps one row of sums and the new picture. The mean is of the values as coded,
/// not of linear light, and exact to rounding.
class AreaAverage {
public:
  /// `columns` and `rows` is the area to show; `width` and `height` are the new size, at least 1 and at most
  /// one pixel more than the area has.
  AreaAverage(AverageSpan columns, AverageSpan rows, int width, int height);

  std::int64_t first_column() const { return first_column_; }
  std::int64_t column_count() const { return column_count_; }
  std::int64_t first_row() const { return first_row_; }
  std::int64_t row_count() const { return row_count_; }

  /// The next row: column_count() RGB pixels from first_column() on; to be called row_count() times from
  /// first_row().
  void add(const std::uint8_t *rgb);
  /// width x height RGB, after the last row.
  std::vector<std::uint8_t> take() { return std::move(out_); }

private:
  struct Column {
    std::int64_t first, last;      ///< the outermost pixels, counted from first_column_
    float first_share, last_share; ///< how much of each lies inside; last 0 where both are one
  };
  void add_whole(const std::uint8_t *rgb);
  void add_share(const std::uint8_t *rgb, float share_inside);
  void flush();
  void finish_row();
  template <class Value>
  void finish_row(std::vector<Value> &sums);

  AverageSpan rows_;
  double row_step_ = 1;
  int height_;
  float area_ = 1; ///< of one new pixel
  std::int64_t first_column_ = 0, column_count_ = 0, first_row_ = 0, row_count_ = 0;
  std::int64_t row_ = 0; ///< the old row that comes next
  int done_ = 0;         ///< new rows that are finished
  std::vector<Column> columns_;
  std::vector<float> total_;         ///< the old rows of the new row so far, column by column
  std::vector<std::uint16_t> whole_; ///< of them up to 257 that lie wholly inside, not yet in `total_`
  int whole_rows_ = 0;
  bool has_total_ = false; ///< anything in `total_`
  std::vector<std::uint8_t> out_;
};

} // namespace stoneproof
