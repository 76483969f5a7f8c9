// Makes the small copy: rows in, area average, orientation last. Only way in: read_preview.
// Tested in tests/engine/picture/preview*.test.cpp.
#include "engine/picture/preview.h"

#include "engine/picture/area_average.h"
#include "engine/picture/faults.h"
#include "engine/picture/orientation.h"
#include "engine/picture/rows.h"
#include "engine/picture/to_rgb.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace stoneproof {

namespace {

// The part in whole pixels of the picture, or nothing where it shares none with it.
std::optional<PixelRect> whole_part(const PixelRect &part, PixelSize size) {
  const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
  const double left = std::max(0.0, std::floor(part.x)), top = std::max(0.0, std::floor(part.y));
  const double right = std::min(width, std::ceil(part.x + part.width));
  const double bottom = std::min(height, std::ceil(part.y + part.height));
  // Written so that a size that is not a number fails too.
  if (std::isnan(part.x) || std::isnan(part.y) || !(part.width > 0 && part.height > 0)) return std::nullopt;
  if (left >= right || top >= bottom) return std::nullopt;
  return PixelRect{left, top, right - left, bottom - top};
}

int at_most(int wanted, double pixels) {
  return static_cast<int>(std::clamp<double>(wanted, 1, std::min(pixels, 1e9)));
}

RowOrder order_for(const PixelRect &stored, int width, int height) {
  return {static_cast<std::int64_t>(stored.x),
          static_cast<std::int64_t>(stored.y),
          static_cast<std::int64_t>(stored.width),
          static_cast<std::int64_t>(stored.height),
          width,
          height};
}

// The part asked for, in pixels of the rows as they come.
AverageSpan span_of(double first, double count, double scale, std::int64_t offset, std::int64_t end) {
  const double begin = first * scale - static_cast<double>(offset);
  return {begin, std::min(begin + count * scale, static_cast<double>(end))};
}

Outcome<std::vector<std::uint8_t>> average(RowSource &source, const PixelRect &part, int width, int height) {
  const RowLayout &layout = source.layout();
  const ToRgb to_rgb(layout);
  AreaAverage result(span_of(part.x, part.width, layout.scale, layout.x, layout.width),
                     span_of(part.y, part.height, layout.scale, layout.y, layout.height), width, height);
  std::vector<std::uint8_t> rgb(static_cast<std::size_t>(result.column_count()) * 3);
  for (std::int64_t y = 0; y < result.first_row() + result.row_count(); ++y) {
    const auto row = source.next();
    if (!row) return row.fault();
    if (y < result.first_row()) continue;
    if (to_rgb.is_plain()) {
      result.add(row.value().data() + result.first_column() * 3);
      continue;
    }
    to_rgb.convert(row.value().data(), result.first_column(), result.column_count(), rgb.data());
    result.add(rgb.data());
  }
  return result.take();
}

std::vector<std::uint8_t> turned(const std::vector<std::uint8_t> &stored, PixelSize stored_size,
                                 Orientation orientation) {
  const PixelSize seen = orientation.seen(stored_size);
  std::vector<std::uint8_t> out(stored.size());
  auto to = out.begin();
  for (std::int64_t y = 0; y < seen.height; ++y)
    for (std::int64_t x = 0; x < seen.width; ++x) {
      const auto place = orientation.stored_place(x, y, stored_size);
      to = std::copy_n(stored.begin() + (place.y * stored_size.width + place.x) * 3, 3, to);
    }
  return out;
}

} // namespace

Outcome<Preview> read_preview(const std::filesystem::path &file, const Facts &facts,
                              const PreviewOrder &order, const PictureLimits &limits) {
  const auto part = whole_part(order.part, facts.size);
  if (!part) return faults::part_outside(file);
  const int width = at_most(order.width, part->width), height = at_most(order.height, part->height);
  const std::uint64_t bytes = static_cast<std::uint64_t>(width) * static_cast<std::uint64_t>(height) * 3;
  if (bytes > limits.most_memory / 2) return faults::too_much_memory(file, bytes * 2, limits);

  const Orientation orientation(facts.orientation);
  const PixelSize stored_size = orientation.stored(facts.size);
  const PixelRect stored = orientation.stored_part(*part, stored_size);
  const int stored_width = orientation.swaps() ? height : width,
            stored_height = orientation.swaps() ? width : height;
  auto source = open_rows(file, order_for(stored, stored_width, stored_height), limits);
  if (!source) return source.fault();
  if (source.value()->layout().stored != stored_size) return faults::changed(file);
  auto rgb = average(*source.value(), stored, stored_width, stored_height);
  if (!rgb) return rgb.fault();
  Preview preview{*part, width, height, std::move(rgb).value()};
  if (facts.orientation != 1) preview.rgb = turned(preview.rgb, {stored_width, stored_height}, orientation);
  return preview;
}

} // namespace stoneproof
