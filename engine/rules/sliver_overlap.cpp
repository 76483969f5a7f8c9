// Two frames overlap by a narrow strip. The only way in is sliver_overlap_rule; tested by
// tests/rules/sliver-overlap.
#include "engine/rules/layout.h"

namespace stoneproof {

namespace {

/// Our own choice: who lays pictures over each other on purpose lets them overlap further.
constexpr Length sliver = Length::of_ticks(Length::ticks_per_mm * 3);

/// Nothing of the strip is seen after the cut, or it lies over a fold, where one picture may be drawn a
/// little under the other so that no white shows.
bool has_reason(const Rect &strip, const Page &page, const Evidence &evidence, const PageSpace &space) {
  if (!shared_part(strip, space.trim)) return true;
  const auto holds = [&](Length fold) {
    return strip.left() <= fold + layout_rounding && strip.right() >= fold - layout_rounding;
  };
  if (space.fold) return holds(*space.fold);
  if (page.kind != PageKind::cover || !evidence.book.cover) return false;
  const auto folds = cover_folds(*evidence.book.cover);
  return std::any_of(folds.begin(), folds.end(), holds);
}

/// Narrow, but not because one of the two is: it must go on beyond the strip by at least as much again.
bool is_narrow(Length strip, Length one, Length other) {
  return strip > layout_rounding && strip < sliver && strip * 2 <= std::min(one, other);
}

/// How wide the strip is by which two boxes overlap; none where it is no sliver, or one lies inside the
/// other.
std::optional<Length> sliver_of(const Rect &one, const Rect &other, const Rect &strip) {
  if (strip == one || strip == other || std::min(strip.width, strip.height) <= layout_rounding)
    return std::nullopt;
  std::optional<Length> width;
  if (is_narrow(strip.width, one.width, other.width)) width = strip.width;
  if (is_narrow(strip.height, one.height, other.height) && (!width || strip.height < *width))
    width = strip.height;
  return width;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_page(evidence, [&](std::size_t at, const Page &page, std::span<const PlacedFrame> frames) {
    if (frames.size() < 2) return;
    const std::vector<Rect> boxes = printed_boxes(evidence, frames);
    std::vector<std::pair<std::pair<std::size_t, std::size_t>, Length>> found;
    each_overlap(boxes, [&](std::size_t one, std::size_t other) {
      if (!is_upright(page.frames[one]) || !is_upright(page.frames[other])) return;
      const Rect strip = *shared_part(boxes[one], boxes[other]);
      const auto width = sliver_of(boxes[one], boxes[other], strip);
      if (width && !has_reason(strip, page, evidence, evidence.spaces[at]))
        found.push_back({{one, other}, *width});
    });
    std::sort(found.begin(), found.end());
    for (const auto &[pair, width] : found) {
      const bool first_on_top = page.frames[pair.first].order > page.frames[pair.second].order;
      Finding finding = about_frame(Grade::query, evidence, frames[first_on_top ? pair.first : pair.second]);
      finding.with_frame = first_on_top ? pair.second : pair.first;
      finding.area = shared_part(boxes[pair.first], boxes[pair.second]);
      finding.measured = width;
      finding.wanted = Length{};
      findings.push_back(std::move(finding));
    }
  });
}

} // namespace

extern const Rule sliver_overlap_rule = {
    "sliver-overlap",
    Grade::query,
    "Two frames overlap by a sliver",
    "A narrow strip of one picture lies on the other: it looks like a mistake, and most often is one.",
    "Width of the strip that two upright frames share, where it is wider than the rounding of layout "
    "programs (0.05 mm) and narrower than 3 mm (our own choice). Left alone: a frame inside another, one "
    "that is itself hardly wider than the strip, strips beyond the trim, and strips over a fold, where "
    "one picture may lie a little under the other so that no white shows.",
    "Move or trim one of the frames until they stand clear, or let them overlap so far that it is seen to "
    "be meant.",
    check,
};

} // namespace stoneproof
