// A caption stands far from every picture, or partly on one. The only way in is stray_caption_rule; tested by
// tests/rules/stray-caption.
#include "engine/rules/layout.h"

#include <array>

namespace stoneproof {

namespace {

/// Our own choice: several lines of text. A caption that far off needs words such as "opposite".
constexpr Length reach = Length::of_ticks(Length::ticks_per_mm * 15);

constexpr Length no_page = Length::of_ticks(Length::ticks_per_mm * 50'000); ///< no page is as large

/// So many captions on a page without pictures are a list of captions. Our own choice.
constexpr std::size_t list_from = 3;

/// What one page holds, or one half of a spread.
struct Leaf {
  std::size_t frames = 0, captions = 0;
};
using Leaves = std::array<Leaf, 2>; ///< left, right; a cover is all left

bool is_caption(const TextBlock &text) { return text.kind == TextKind::caption && !text.text.empty(); }

bool lies_right(const Page &page, const PageSpace &space, const Rect &box) {
  if (page.kind == PageKind::page) return space.bound == PageSide::left;
  return space.fold && box.centre().x > *space.fold;
}

Leaves leaves_of(const Evidence &evidence, const Page &page, std::span<const PlacedFrame> frames,
                 const PageSpace &space) {
  Leaves leaves;
  for (const PlacedFrame &placed : frames) {
    const Rect &box = printed_box(evidence, placed);
    if (off_page(box, space)) continue;
    const bool both = space.fold && box.left() < *space.fold && box.right() > *space.fold;
    const bool right = lies_right(page, space, box);
    if (both || !right) ++leaves[0].frames;
    if (both || right) ++leaves[1].frames;
  }
  for (const TextBlock &text : page.texts)
    if (is_caption(text)) ++leaves[lies_right(page, space, text.rect)].captions;
  return leaves;
}

/// The captions of one page with what is known of them so far.
struct Caption {
  std::size_t text = 0;
  std::optional<std::pair<Length, std::size_t>> nearest; ///< how far off, and its place on the page
  std::optional<std::pair<Length, std::size_t>> under;   ///< how deep it lies on it, likewise

  bool near() const { return nearest && nearest->first <= reach + layout_rounding; }
};

class PageCheck {
public:
  PageCheck(const Evidence &evidence, const Page &page, std::span<const PlacedFrame> frames)
      : evidence_(evidence), page_(page), frames_(frames), boxes_(printed_boxes(evidence, frames)) {
    for (std::size_t text = 0; text < page.texts.size(); ++text)
      if (is_caption(page.texts[text])) captions.push_back({text, {}, {}});
    each_within(reach, [&](Caption &caption, std::size_t frame) {
      look_at_distance(caption, frame);
      look_under(caption, frame);
    });
    // Wider and wider, so that no caption is held against every frame of a crowded page.
    for (Length within = reach * 2; within < no_page && !boxes_.empty() && any_alone(); within = within * 2)
      each_within(within, [&](Caption &caption, std::size_t frame) { look_at_distance(caption, frame); });
  }

  std::vector<Caption> captions;

private:
  bool any_alone() const {
    return std::any_of(captions.begin(), captions.end(),
                       [](const Caption &caption) { return !caption.nearest; });
  }

  /// Of the captions that have no frame yet.
  template <class Call>
  void each_within(Length distance, Call call) {
    std::vector<Rect> grown;
    std::vector<std::size_t> alone;
    for (std::size_t i = 0; i < captions.size(); ++i) {
      if (captions[i].nearest) continue;
      alone.push_back(i);
      grown.push_back(page_.texts[captions[i].text].rect.grown(distance + layout_rounding));
    }
    each_overlap(grown, boxes_,
                 [&](std::size_t caption, std::size_t frame) { call(captions[alone[caption]], frame); });
  }

  void look_at_distance(Caption &caption, std::size_t frame) const {
    if (off_page(boxes_[frame], evidence_.space_of(frames_[frame]))) return;
    const std::pair found = {distance_between(page_.texts[caption.text].rect, boxes_[frame]), frame};
    if (!caption.nearest || found < *caption.nearest) caption.nearest = found;
  }

  /// The frame that it lies deepest on.
  void look_under(Caption &caption, std::size_t frame) const {
    const TextBlock &text = page_.texts[caption.text];
    if (evidence_.frame_of(frames_[frame]).order >= text.order) return;
    const auto cover = covering(evidence_, frames_[frame], text);
    if (!cover || cover->whole || only_empty_foot(text, cover->box)) return;
    const Rect part = shared_part(printed_shape(evidence_, frames_[frame]), text.rect).box;
    const Length depth = std::min(part.width, part.height);
    const bool deeper = !caption.under || depth > caption.under->first;
    if (deeper || (depth == caption.under->first && frame < caption.under->second))
      caption.under = {depth, frame};
  }

  const Evidence &evidence_;
  const Page &page_;
  std::span<const PlacedFrame> frames_;
  std::vector<Rect> boxes_;
};

bool offers_pictures(const Leaf &leaf) { return leaf.frames > 0 && leaf.captions == 0; }
bool offers_pictures(const Leaves &leaves) {
  return offers_pictures(leaves[0]) || offers_pictures(leaves[1]);
}

/// Whether a far caption has its place all the same: its own page has more captions than pictures, and beside
/// it, before or after it are pictures without any; or it is one of a list of captions.
bool has_its_place(const std::vector<Leaves> &all, std::size_t at, bool right) {
  const Leaf &own = all[at][right], &other = all[at][!right];
  if (own.frames + other.frames == 0 && own.captions + other.captions >= list_from) return true;
  return own.captions > own.frames && (offers_pictures(other) || (at > 0 && offers_pictures(all[at - 1])) ||
                                       (at + 1 < all.size() && offers_pictures(all[at + 1])));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  std::vector<Leaves> leaves;
  each_page(evidence, [&](std::size_t at, const Page &page, std::span<const PlacedFrame> frames) {
    leaves.push_back(leaves_of(evidence, page, frames, evidence.spaces[at]));
  });
  each_page(evidence, [&](std::size_t at, const Page &page, std::span<const PlacedFrame> frames) {
    const PageCheck done(evidence, page, frames);
    for (const Caption &caption : done.captions) {
      Finding finding = about_text(Grade::query, evidence, at, caption.text);
      if (caption.under) {
        finding.measured = caption.under->first;
        finding.with_frame = caption.under->second;
        finding.wanted = Length{};
        findings.push_back(std::move(finding));
        continue;
      }
      if (caption.near()) continue;
      const bool right = lies_right(page, evidence.spaces[at], page.texts[caption.text].rect);
      if (has_its_place(leaves, at, right)) continue;
      if (caption.nearest) {
        finding.measured = caption.nearest->first;
        finding.with_frame = caption.nearest->second;
        finding.wanted = reach;
      } else {
        finding.grade = Grade::note; // it may be no caption at all
      }
      findings.push_back(std::move(finding));
    }
  });
}

} // namespace

extern const Rule stray_caption_rule = {
    "stray-caption",
    Grade::query,
    "Caption has lost its picture",
    "Readers take a caption for that of the nearest picture, and one that begins on a picture and ends "
    "beside it cannot be read all along. Either comes from moving a picture without its caption.",
    "Distance from the caption to the nearest frame of its page or spread: more than 15 mm is far. A far "
    "caption has its place where its page has more captions than pictures, and the page beside, before or "
    "after it has pictures and no caption. On a page without pictures one or two captions are a note, "
    "more are a list. A caption that lies partly on a frame drawn before it, by more than a quarter of "
    "the type size, is told by how deep it lies in it; one that lies wholly on a picture was put there. "
    "The empty foot of a block, below twice the lines that overfull-text estimates, does not count. The "
    "figures are our own choice.",
    "Bring caption and picture together, or say in the caption where its picture is.",
    check,
};

} // namespace stoneproof
