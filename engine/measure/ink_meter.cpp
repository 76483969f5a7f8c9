// Sums ink in cells. Only way in: InkMeter. Tested in tests/engine/measure/ink_meter.test.cpp.
#include "engine/measure/ink_meter.h"

#include <algorithm>
#include <cmath>
#include <cstring>

namespace stoneproof {

// A square that is larger than the part is cut to it, so that a small part is not left with a few samples.
InkMeter::Axis InkMeter::axis_of(double side, std::int64_t length) {
  const bool whole = side >= static_cast<double>(length);
  const auto cell = std::max<std::int64_t>(1, whole ? length / 8 : static_cast<std::int64_t>(side / 8));
  const auto window = whole ? (length + cell - 1) / cell
                            : std::max<std::int64_t>(1, std::llround(side / static_cast<double>(cell)));
  return {cell, std::max<std::int64_t>(1, cell / 8), window};
}

InkMeter::InkMeter(const InkOrder &order, const RowLayout &layout, const PressTable *table)
    : part_(order.part), layout_(layout), table_(table), x_(axis_of(order.square_width, part_.width)),
      y_(axis_of(order.square_height, part_.height)), to_rgb_(layout),
      squares_((part_.width + x_.cell - 1) / x_.cell, x_.window,
               std::min(y_.window, (part_.height + y_.cell - 1) / y_.cell)),
      cells_(static_cast<std::size_t>((part_.width + x_.cell - 1) / x_.cell)) {
  if (layout_.colour != ColourModel::cmyk && !to_rgb_.is_plain())
    rgb_.resize(static_cast<std::size_t>(part_.width) * 3);
}

void InkMeter::add(std::int64_t y, const std::uint8_t *row) {
  if (!part_.has_row(y)) return;
  const std::int64_t at = rows_++;
  if (at % y_.cell % y_.step == 0)
    layout_.colour == ColourModel::cmyk ? measure_inks(row) : measure_colours(row);
  if (rows_ % y_.cell == 0 || rows_ == part_.height) finish_cells();
}

/// `ink_of(i)` is the ink of pixel `i` of the part, 0 to 4.
template <class InkOf>
void InkMeter::add_samples(InkOf ink_of) {
  std::int64_t i = 0;
  for (SquareMaximum::Cell &cell : cells_) {
    const std::int64_t end = std::min(i + x_.cell, part_.width);
    for (std::int64_t sample = i; sample < end; sample += x_.step) {
      cell.sum += ink_of(sample);
      ++cell.count;
    }
    i = end;
  }
}

void InkMeter::measure_inks(const std::uint8_t *row) {
  const std::int64_t first = part_.x - layout_.x;
  const double most = (1u << layout_.bits) - 1;
  const bool inverted = layout_.inverted;
  add_samples([&](std::int64_t i) {
    double sum = 0;
    for (int c = 0; c < 4; ++c) {
      const std::int64_t at = (first + i) * layout_.channels + c;
      if (layout_.bits <= 8) {
        sum += row[at];
      } else {
        std::uint16_t value;
        std::memcpy(&value, row + at * 2, sizeof value);
        sum += value;
      }
    }
    return inverted ? 4 - sum / most : sum / most;
  });
}

void InkMeter::measure_colours(const std::uint8_t *row) {
  const std::int64_t first = part_.x - layout_.x;
  const std::uint8_t *rgb = row + first * 3;
  if (!to_rgb_.is_plain()) {
    to_rgb_.convert(row, first, part_.width, rgb_.data());
    rgb = rgb_.data();
  }
  const bool gray = table_->space() == ProfileSpace::gray;
  add_samples([&](std::int64_t i) {
    const std::uint8_t *pixel = rgb + i * 3;
    const Printed printed = gray ? table_->at(pixel[0]) : table_->at(pixel[0], pixel[1], pixel[2]);
    ++samples_;
    out_ += printed.out_of_gamut;
    return printed.ink_tenths / 1000.0;
  });
}

void InkMeter::finish_cells() {
  squares_.add(cells_);
  std::fill(cells_.begin(), cells_.end(), SquareMaximum::Cell{});
}

std::optional<Ink> InkMeter::take() {
  const auto found = squares_.take();
  if (!found) return std::nullopt;
  Ink ink;
  ink.most = found->mean;
  const PixelPart &cells = found->cells;
  ink.where = {part_.x + cells.x * x_.cell, part_.y + cells.y * y_.cell,
               std::min(cells.width * x_.cell, part_.width - cells.x * x_.cell),
               std::min(cells.height * y_.cell, part_.height - cells.y * y_.cell)};
  if (samples_ > 0) ink.out_of_gamut = out_ / samples_;
  return ink;
}

} // namespace stoneproof
