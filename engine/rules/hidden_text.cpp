// A frame that is drawn later covers a text block, wholly or partly. The only way in is hidden_text_rule;
// tested by tests/rules/hidden-text.
#include "engine/rules/layout.h"

namespace stoneproof {

namespace {

/// Whether words are lost for certain: all of the block is covered, or what is left of it cannot hold the
/// text even by the lean estimate. Of a text that runs round a picture neither is true; of one that is too
/// long for its block in any case this tells nothing.
bool surely_hides(const TextBlock &text, const Covering &cover) {
  if (cover.whole) return true;
  const double need = lean_height(text, text.rect.width) / text.rect.height;
  return need > 1 - cover.share && need <= 1;
}

bool see_through(const Evidence &evidence, const PlacedFrame &placed) {
  if (!placed.picture) return false;
  const auto &facts = evidence.pictures[*placed.picture].facts;
  return facts && facts->alpha;
}

struct Hidden {
  Grade grade;
  const PlacedFrame *frame;
  double share;

  bool graver_than(const Hidden &other) const {
    if (grade != other.grade) return grade < other.grade;
    return share != other.share ? share > other.share : frame->frame < other.frame->frame;
  }
};

std::optional<Hidden> hidden_by(const Evidence &evidence, const PlacedFrame &placed, const TextBlock &text) {
  if (evidence.frame_of(placed).order <= text.order || text.text.empty()) return std::nullopt;
  const auto cover = covering(evidence, placed, text);
  if (!cover || (!cover->whole && only_empty_foot(text, cover->box))) return std::nullopt;
  const bool sure = surely_hides(text, *cover) && !see_through(evidence, placed);
  return Hidden{sure ? Grade::hold : Grade::query, &placed, cover->share};
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_page(evidence, [&](std::size_t at, const Page &page, std::span<const PlacedFrame> frames) {
    std::vector<std::optional<Hidden>> worst(page.texts.size());
    each_text_on_frame(evidence, page, frames, [&](std::size_t text, const PlacedFrame &placed) {
      const auto hidden = hidden_by(evidence, placed, page.texts[text]);
      if (hidden && (!worst[text] || hidden->graver_than(*worst[text]))) worst[text] = hidden;
    });
    for (std::size_t text = 0; text < worst.size(); ++text) {
      if (!worst[text]) continue;
      Finding finding = about_text(worst[text]->grade, evidence, at, text);
      finding.with_frame = worst[text]->frame->frame;
      finding.measured = Share{worst[text]->share};
      finding.wanted = Share{};
      findings.push_back(std::move(finding));
    }
  });
}

} // namespace

extern const Rule hidden_text_rule = {
    "hidden-text",
    Grade::hold,
    "Frame hides text",
    "What is drawn later lies on top. Words under a picture are not in the printed book, and in the "
    "layout program they are easily overlooked.",
    "The share of a text block’s letters (the block without a quarter of the type size above and below) "
    "that a frame covers which is drawn later. A hold where all of it is covered, or what is left free "
    "cannot hold the text even by the lean estimate of overfull-text; else, and under a picture that is "
    "see-through, a query, since the text may run round the picture. The empty foot of a block, below "
    "twice the lines of that estimate, does not count. The figures are our own choice.",
    "Bring the text to the front, or move the frame or the text. If the text runs round the picture, all "
    "is well.",
    check,
};

} // namespace stoneproof
