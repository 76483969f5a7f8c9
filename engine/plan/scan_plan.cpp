// From originals and frames to scanner settings. The only ways in are the functions of scan_plan.h; tested in
// tests/engine/plan/scan_plan.test.cpp.
#include "engine/plan/scan_plan.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

constexpr int highest_setting = scanner_steps[std::size(scanner_steps) - 1];

ScanWay way_of(const Picture &picture) {
  if (!picture.original) return ScanWay::flatbed;
  switch (picture.original->kind) {
  case OriginalKind::slide:
  case OriginalKind::negative: return ScanWay::film;
  case OriginalKind::object: return ScanWay::camera;
  case OriginalKind::print:
  case OriginalKind::document:
  case OriginalKind::clipping: break;
  }
  return ScanWay::flatbed;
}

/// The shape in which the picture is laid: that of its file, else of its original; where neither is known it
/// is taken to fit the frame. A tick of length stands for a pixel. None: the crop is told in pixels that
/// nobody has.
std::optional<PixelSize> shape_for(const Frame &frame, const Picture &picture,
                                   const std::optional<FileAtHand> &at_hand) {
  if (at_hand) return at_hand->size;
  if (std::holds_alternative<CropPixels>(frame.fit)) return std::nullopt;
  const auto &original = picture.original;
  const Size shape = original && original->size ? *original->size : frame.rect.size();
  return PixelSize{shape.width.ticks(), shape.height.ticks()};
}

PixelSize whole_pixels(Size original, double ppi, double (*rounded)(double)) {
  return {static_cast<std::int64_t>(rounded(original.width.in() * ppi)),
          static_cast<std::int64_t>(rounded(original.height.in() * ppi))};
}

Size as_it_lies(Size original, const std::optional<FileAtHand> &at_hand) {
  return at_hand ? upright(original, at_hand->size) : original;
}

double to_nearest(double value) { return std::max(1.0, std::floor(value + 0.5)); }
/// 1e-9: the error of a double that should be whole.
double up(double value) { return std::max(1.0, std::ceil(value - 1e-9)); }

/// The highest usual setting up to `limit`, or the limit itself where it is below all of them.
int highest_up_to(Density limit) {
  int highest = static_cast<int>(limit.ppi());
  for (const int step : scanner_steps)
    if (step <= limit.ppi()) highest = step;
  return highest;
}

/// Plans one picture.
class Planner {
public:
  Planner(const Book &book, const PressSheet &press, std::size_t picture,
          const std::optional<FileAtHand> &at_hand)
      : press_(press), picture_(book.pictures[picture]) {
    planned_.picture = picture;
    planned_.way = way_of(picture_);
    planned_.wanted = press.bar(picture_.use).wanted;
    planned_.at_hand = at_hand;
  }

  void add(std::size_t page, std::size_t index, const Frame &frame) {
    FrameNeed need{page, index, frame.rect.size(), {}, {}};
    if (const auto shape = shape_for(frame, picture_, planned_.at_hand)) {
      const Laid laid = lay_picture(frame.rect, *shape, frame.fit, frame.mirror);
      if (!laid.visible) return; // nothing of it shows
      need.printed = laid.visible->size();
      look_at_file(laid, need);
      if (picture_.original)
        if (const auto answer =
                rescan(laid, *picture_.original, *shape, planned_.wanted, press_.flatbed_limit))
          need.needed_ppi = answer->needed_ppi;
    }
    if (need.needed_ppi && (!planned_.hardest || *need.needed_ppi > needed_ppi()))
      planned_.hardest = planned_.frames.size();
    planned_.frames.push_back(need);
  }

  PlannedPicture take() {
    planned_.state = state();
    const bool planned = planned_.state == ScanState::to_scan || planned_.state == ScanState::beyond;
    if (planned) plan();
    return std::move(planned_);
  }

private:
  double needed_ppi() const { return *planned_.frames[*planned_.hardest].needed_ppi; }
  std::optional<int> setting() const { return scanner_step(needed_ppi() * (1 - press_.density_tolerance)); }

  /// Whether the file that is there has pixels enough for a frame, judged as the proof does.
  void look_at_file(const Laid &laid, FrameNeed &need) {
    if (!planned_.at_hand) return;
    const bool line_art = planned_.at_hand->bilevel && picture_.use == Use::photo;
    const Density wanted = line_art ? press_.bar(Use::line_art).wanted : planned_.wanted;
    if (!press_.falls_short(laid.effective(), wanted)) return;
    file_enough_ = false;
    if (picture_.original && picture_.original->lost) need.largest = largest_print(laid, wanted);
  }

  ScanState state() const {
    if (planned_.frames.empty()) return ScanState::not_shown;
    if (planned_.at_hand && file_enough_) return ScanState::at_hand;
    if (picture_.original && picture_.original->lost) return ScanState::lost;
    if (!picture_.original || !picture_.original->size) return ScanState::no_size;
    if (!planned_.hardest) return ScanState::no_crop;
    const bool photographed = planned_.way == ScanWay::camera;
    return photographed || setting() ? ScanState::to_scan : ScanState::beyond;
  }

  void plan() {
    const Size original = as_it_lies(*picture_.original->size, planned_.at_hand);
    Scan scan;
    scan.channels = picture_.use == Use::line_art ? 1 : 3;
    if (planned_.way == ScanWay::camera) {
      const auto flat = setting();
      if (flat && fits_glass(original) && *flat <= press_.flatbed_limit.ppi()) scan.setting = flat;
      scan.pixels = whole_pixels(original, needed_ppi(), up);
    } else {
      scan.setting = setting().value_or(highest_setting);
      scan.pixels = scanned_pixels(*picture_.original->size, planned_.at_hand, *scan.setting);
      planned_.beyond_flatbed = *scan.setting > press_.flatbed_limit.ppi();
      limit_prints();
    }
    scan.bytes = static_cast<std::uint64_t>(scan.pixels.width) *
                 static_cast<std::uint64_t>(scan.pixels.height) * static_cast<std::uint64_t>(scan.channels);
    planned_.scan = scan;
  }

  /// Where no setting is enough, what the highest one is enough for; where a flatbed is not, what it is.
  void limit_prints() {
    const bool beyond = planned_.state == ScanState::beyond;
    if (!beyond && !(planned_.beyond_flatbed && planned_.way == ScanWay::flatbed)) return;
    planned_.limit_ppi = beyond ? highest_setting : highest_up_to(press_.flatbed_limit);
    for (FrameNeed &need : planned_.frames) {
      if (!need.needed_ppi || *need.needed_ppi * (1 - press_.density_tolerance) <= planned_.limit_ppi)
        continue;
      const double factor = planned_.limit_ppi / *need.needed_ppi;
      need.largest = Size{need.printed.width * factor, need.printed.height * factor};
    }
  }

  const PressSheet &press_;
  const Picture &picture_;
  bool file_enough_ = true;
  PlannedPicture planned_;
};

} // namespace

PixelSize scanned_pixels(Size original, const std::optional<FileAtHand> &at_hand, int setting) {
  return whole_pixels(as_it_lies(original, at_hand), setting, to_nearest);
}

ScanPlan plan_scans(const Book &book, const PressSheet &press,
                    std::span<const std::optional<FileAtHand>> at_hand) {
  std::vector<Planner> planners;
  planners.reserve(book.pictures.size());
  for (std::size_t i = 0; i < book.pictures.size(); ++i) planners.emplace_back(book, press, i, at_hand[i]);
  for (std::size_t page = 0; page < book.pages.size(); ++page)
    for (std::size_t i = 0; i < book.pages[page].frames.size(); ++i)
      if (const Frame &frame = book.pages[page].frames[i]; frame.picture)
        planners[*frame.picture].add(page, i, frame);
  ScanPlan plan;
  plan.reserve(planners.size());
  for (Planner &planner : planners) plan.push_back(planner.take());
  return plan;
}

} // namespace stoneproof
