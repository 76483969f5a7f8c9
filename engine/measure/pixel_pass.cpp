// Feeds rows to the meters. Only way in: measure_pixels. Tested in tests/engine/measure/pixel_pass.test.cpp.
#include "engine/measure/pixel_pass.h"

#include "engine/measure/neutral_meter.h"
#include "engine/picture/faults.h"
#include "engine/picture/orientation.h"

#include <algorithm>
#include <cmath>
#include <deque>

namespace stoneproof {

namespace {

struct Span {
  double begin, end;
};

/// The whole pixels of an axis of `pixels` that an interval touches; at least the one that it begins in, even
/// where it is too short for arithmetic.
Span whole_pixels(double begin, double length, double pixels) {
  const double first = std::floor(begin);
  const double end = length > 0 ? std::max(std::ceil(begin + length), first + 1) : first;
  return {std::max(first, 0.0), std::min(end, pixels)};
}

/// The part in stored pixels; nothing where it shares none with the picture. Made whole before it is turned:
/// turning whole numbers is exact.
std::optional<PixelPart> stored_part(const PixelRect &seen, const Facts &facts) {
  const Span x = whole_pixels(seen.x, seen.width, static_cast<double>(facts.size.width));
  const Span y = whole_pixels(seen.y, seen.height, static_cast<double>(facts.size.height));
  if (!(x.begin < x.end && y.begin < y.end)) return std::nullopt; // also what is not a number
  const Orientation orientation(facts.orientation);
  const PixelRect part = orientation.stored_part({x.begin, y.begin, x.end - x.begin, y.end - y.begin},
                                                 orientation.stored(facts.size));
  return PixelPart{static_cast<std::int64_t>(part.x), static_cast<std::int64_t>(part.y),
                   static_cast<std::int64_t>(part.width), static_cast<std::int64_t>(part.height)};
}

PixelRect seen_part(const PixelPart &part, const Facts &facts) {
  const Orientation orientation(facts.orientation);
  return orientation.seen_part({static_cast<double>(part.x), static_cast<double>(part.y),
                                static_cast<double>(part.width), static_cast<double>(part.height)},
                               orientation.stored(facts.size));
}

RowOrder all_rows(PixelSize stored) {
  return {0, 0, stored.width, stored.height, stored.width, stored.height};
}

ProfileSpace space_of(const RowLayout &layout) {
  switch (layout.colour) {
  case ColourModel::cmyk: return ProfileSpace::cmyk;
  case ColourModel::gray:
  case ColourModel::bilevel: return ProfileSpace::gray;
  default: return ProfileSpace::rgb;
  }
}

/// All that look at the rows of one picture.
class Meters {
public:
  Meters(const Facts &facts, const PassOrder &order, const RowLayout &layout)
      : facts_(facts), detail_(order.detail), neutral_(layout), layout_(layout) {
    if (detail_) whole_.emplace(facts, layout);
    if (order.glass) glass_.emplace(layout);

    if (layout.colour != ColourModel::cmyk && order.press_table) table_ = table_of(order);
  }

  bool look(const Look &look) {
    const auto part = stored_part(look.part, facts_);
    if (!part) return false;
    tones_.emplace_back(*part, layout_);
    if (detail_) tiles_.emplace_back(*part, layout_);
    const bool inks =
        look.square_width && look.square_height && (table_ || layout_.colour == ColourModel::cmyk);
    inks_.emplace_back();
    if (!inks) return true;
    const bool swaps = Orientation(facts_.orientation).swaps();
    const double width = swaps ? *look.square_height : *look.square_width,
                 height = swaps ? *look.square_width : *look.square_height;
    inks_.back().emplace(InkOrder{*part, width, height}, layout_, table_);
    return true;
  }

  void add(std::int64_t y, const std::uint8_t *row) {
    neutral_.add(row);
    if (whole_) whole_->add(y, row);
    if (glass_) glass_->add(row);

    for (ToneMeter &tone : tones_) tone.add(y, row);
    for (TileSampler &tiles : tiles_) tiles.add(y, row);
    for (auto &ink : inks_)
      if (ink) ink->add(y, row);
  }

  PassResult take() {
    PassResult result;
    result.neutral = neutral_.is_neutral();
    if (whole_) result.whole = whole_->take();
    if (glass_) result.glass = glass_->take();

    for (std::size_t i = 0; i < tones_.size(); ++i) {
      LookResult look;
      look.tone = tone_of(tones_[i].take());
      if (detail_) look.detail = detail_of(tiles_[i].take(), facts_);
      if (inks_[i]) look.ink = inks_[i]->take();
      if (look.ink) look.ink_place = seen_part(look.ink->where, facts_);
      result.looks.push_back(std::move(look));
    }
    return result;
  }

private:
  /// Lab becomes sRGB on its way, and is no longer of the file's profile.
  const PressTable *table_of(const PassOrder &order) const {
    const bool own = layout_.colour != ColourModel::lab;
    return order.press_table(own ? layout_.icc : std::vector<std::uint8_t>(), space_of(layout_));
  }

  const Facts &facts_;
  bool detail_;
  const PressTable *table_ = nullptr;
  NeutralMeter neutral_;
  const RowLayout &layout_;
  std::optional<WholeMeter> whole_;
  std::optional<GlassMeter> glass_;

  std::deque<ToneMeter> tones_;
  std::deque<TileSampler> tiles_;
  std::deque<std::optional<InkMeter>> inks_;
};

Outcome<std::optional<PreviewPlan>> planned(const std::filesystem::path &file, const Facts &facts,
                                            const std::optional<PreviewOrder> &order,
                                            const PictureLimits &limits) {
  if (!order) return std::optional<PreviewPlan>();
  auto plan = plan_preview(file, facts, *order, limits);
  if (!plan) return plan.fault();
  return std::optional(std::move(plan).value());
}

} // namespace

Outcome<PassResult> measure_pixels(const std::filesystem::path &file, const Facts &facts,
                                   const PassOrder &order, const PictureLimits &limits) {
  const auto plan = planned(file, facts, order.copy, limits);
  if (!plan) return plan.fault();
  const auto patch_plan = planned(file, facts, order.patch, limits);
  if (!patch_plan) return patch_plan.fault();
  const PixelSize stored = Orientation(facts.orientation).stored(facts.size);
  auto opened = open_rows(file, all_rows(stored), limits);
  if (!opened) return opened.fault();
  RowSource &rows = *opened.value();
  if (rows.layout().stored != stored) return faults::changed(file);

  Meters meters(facts, order, rows.layout());
  for (const Look &look : order.looks)
    if (!meters.look(look)) return faults::part_outside(file);
  std::optional<PreviewMaker> preview, patch;
  if (plan.value()) preview.emplace(*plan.value(), rows.layout());
  if (patch_plan.value()) patch.emplace(*patch_plan.value(), rows.layout());
  for (std::int64_t y = 0; y < stored.height; ++y) {
    const auto row = rows.next();
    if (!row) return row.fault();
    meters.add(y, row.value().data());
    for (auto *maker : {&preview, &patch})
      if (*maker) (*maker)->add(row.value().data());
  }

  PassResult result = meters.take();
  for (const auto &[maker, into] : {std::pair(&preview, &result.copy), std::pair(&patch, &result.patch)}) {
    if (!*maker) continue;
    auto copy = compress((*maker)->take(facts.orientation), file);
    if (!copy) return copy.fault();
    *into = std::move(copy).value();
  }
  return result;
}

} // namespace stoneproof
