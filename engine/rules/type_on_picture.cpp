// Body text or a heading lies on a picture. The only way in is type_on_picture_rule; tested by
// tests/rules/type-on-picture.
#include "engine/rules/layout.h"

namespace stoneproof {

namespace {

struct Ground {
  const PlacedFrame *frame = nullptr;
  double share = 0;
};

bool is_read(const TextBlock &text) {
  return (text.kind == TextKind::body || text.kind == TextKind::heading) && !text.text.empty();
}

/// How much of a text lies on a frame with a picture that was drawn before it.
double share_on(const Evidence &evidence, const PlacedFrame &placed, const TextBlock &text) {
  if (!placed.picture || evidence.frame_of(placed).order >= text.order) return 0;
  const auto cover = covering(evidence, placed, text);
  if (!cover || (!cover->whole && only_empty_foot(text, cover->box))) return 0;
  return cover->whole ? 1 : cover->share;
}

/// A heading that lies wholly on its picture was put there: none on the cover, where titles belong, else a
/// note.
std::optional<Grade> grade_of(const Page &page, const TextBlock &text, double share) {
  if (share < 1) return Grade::query;
  if (page.kind == PageKind::cover) return std::nullopt;
  return text.kind == TextKind::heading ? Grade::note : Grade::query;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_page(evidence, [&](std::size_t at, const Page &page, std::span<const PlacedFrame> frames) {
    std::vector<Ground> grounds(page.texts.size());
    each_text_on_frame(evidence, page, frames, [&](std::size_t text, const PlacedFrame &placed) {
      if (!is_read(page.texts[text])) return;
      const double share = share_on(evidence, placed, page.texts[text]);
      Ground &ground = grounds[text];
      const bool same_and_first = share == ground.share && ground.frame && placed.frame < ground.frame->frame;
      if (share > ground.share || same_and_first) ground = {&placed, share};
    });
    for (std::size_t text = 0; text < grounds.size(); ++text) {
      const Ground &ground = grounds[text];
      if (!ground.frame) continue;
      const auto grade = grade_of(page, page.texts[text], ground.share);
      if (!grade) continue;
      Finding finding = about_text(*grade, evidence, at, text);
      finding.with_frame = ground.frame->frame;
      finding.measured = Share{ground.share};
      finding.wanted = Share{};
      findings.push_back(std::move(finding));
    }
  });
}

} // namespace

extern const Rule type_on_picture_rule = {
    "type-on-picture",
    Grade::query,
    "Text stands on a picture",
    "Type is hard to read where the picture behind it is restless or of like tone, and a text that begins "
    "on a picture and ends beside it was most likely pushed there.",
    "The share of the letters of body text or a heading (the block without a quarter of the type size "
    "above and below) that lies on a frame with a picture drawn before it. A heading wholly on a picture "
    "is a note; on the cover what lies wholly on a picture is left alone. The empty foot of a block, "
    "below twice the lines that overfull-text estimates, does not count. Our own choice.",
    "Look at the proof at the size of print: can it be read all along? If not, move it, or set it on a "
    "calm part of the picture, or on a plain panel.",
    check,
};

} // namespace stoneproof
