// Makes the small copy: rows in, area average, orientation last. Only ways in: read_preview, and PreviewMaker
// for rows that serve others too. Tested in tests/engine/picture/preview*.test.cpp.
#include "engine/picture/preview.h"

#include "engine/picture/faults.h"
#include "engine/picture/orientation.h"

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

// The part asked for, in pixels of the rows as they come.
AverageSpan span_of(double first, double count, double scale, std::int64_t offset, std::int64_t end) {
  const double begin = first * scale - static_cast<double>(offset);
  return {begin, std::min(begin + count * scale, static_cast<double>(end))};
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

Outcome<PreviewPlan> plan_preview(const std::filesystem::path &file, const Facts &facts,
                                  const PreviewOrder &order, const PictureLimits &limits) {
  const auto part = whole_part(order.part, facts.size);
  if (!part) return faults::part_outside(file);
  const int width = at_most(order.width, part->width), height = at_most(order.height, part->height);
  const std::uint64_t bytes = static_cast<std::uint64_t>(width) * static_cast<std::uint64_t>(height) * 3;
  if (bytes > limits.most_memory / 2) return faults::too_much_memory(file, bytes * 2, limits);
  const Orientation orientation(facts.orientation);
  const bool swaps = orientation.swaps();
  return PreviewPlan{*part, orientation.stored_part(*part, orientation.stored(facts.size)),
                     swaps ? height : width, swaps ? width : height};
}

PreviewMaker::PreviewMaker(const PreviewPlan &plan, const RowLayout &layout)
    : plan_(plan), to_rgb_(layout),
      average_(span_of(plan.stored.x, plan.stored.width, layout.scale, layout.x, layout.width),
               span_of(plan.stored.y, plan.stored.height, layout.scale, layout.y, layout.height),
               plan.stored_width, plan.stored_height) {
  if (!to_rgb_.is_plain()) rgb_.resize(static_cast<std::size_t>(average_.column_count()) * 3);
}

void PreviewMaker::add(const std::uint8_t *row) {
  const std::int64_t at = row_++;
  if (at < average_.first_row() || at >= rows_wanted()) return;
  if (to_rgb_.is_plain()) {
    average_.add(row + average_.first_column() * 3);
    return;
  }
  to_rgb_.convert(row, average_.first_column(), average_.column_count(), rgb_.data());
  average_.add(rgb_.data());
}

Preview PreviewMaker::take(int orientation) {
  const PixelSize size{plan_.stored_width, plan_.stored_height};
  const PixelSize seen = Orientation(orientation).seen(size);
  Preview preview{plan_.part, static_cast<int>(seen.width), static_cast<int>(seen.height), average_.take()};
  if (orientation != 1) preview.rgb = turned(preview.rgb, size, Orientation(orientation));
  return preview;
}

Outcome<Preview> read_preview(const std::filesystem::path &file, const Facts &facts,
                              const PreviewOrder &order, const PictureLimits &limits) {
  const auto planned = plan_preview(file, facts, order, limits);
  if (!planned) return planned.fault();
  const PreviewPlan &plan = planned.value();
  const RowOrder rows{static_cast<std::int64_t>(plan.stored.x),
                      static_cast<std::int64_t>(plan.stored.y),
                      static_cast<std::int64_t>(plan.stored.width),
                      static_cast<std::int64_t>(plan.stored.height),
                      plan.stored_width,
                      plan.stored_height};
  auto source = open_rows(file, rows, limits);
  if (!source) return source.fault();
  if (source.value()->layout().stored != Orientation(facts.orientation).stored(facts.size))
    return faults::changed(file);
  PreviewMaker maker(plan, source.value()->layout());
  for (std::int64_t y = 0; y < maker.rows_wanted(); ++y) {
    const auto row = source.value()->next();
    if (!row) return row.fault();
    maker.add(row.value().data());
  }
  return maker.take(facts.orientation);
}

} // namespace stoneproof
