// Creep brings a text or a frame too near to the knife, or to the binding. The only way in is
// creep_at_trim_rule; tested by tests/rules/creep-at-trim.
#include "engine/rules/edges.h"

namespace stoneproof {

namespace {

/// Something on a page of a stapled book, before and after its creep.
struct Crept {
  PageSide side; ///< that it comes nearer to; of a spread that is moved back, the fold
  Length before, after, margin;
};

/// Whether a box lies on the right page.
bool on_right_page(const Rect &box, const PageSpace &space) {
  return space.fold ? box.centre().x >= *space.fold : space.bound == PageSide::left;
}

/// Without a shift by the printer a box comes nearer to the front edge, with it nearer to the binding.
Crept crept(const Rect &box, const PageSpace &space, Length creep, bool moved_back) {
  const bool right = on_right_page(box, space);
  const PageSide front = right ? PageSide::right : PageSide::left;
  const PageSide back = right ? PageSide::left : PageSide::right;
  Crept found{moved_back ? back : front, {}, {}, {}};
  if (moved_back && space.fold) {
    found.side = PageSide::fold;
    found.before = right ? box.left() - *space.fold : *space.fold - box.right();
    found.margin = space.fold_margin;
  } else {
    found.before = -reach_past(box, space.trim).at(found.side);
    found.margin = space.margin_wanted.at(found.side);
  }
  found.after = found.before - creep;
  return found;
}

class Check {
public:
  Check(const Evidence &evidence, std::vector<Finding> &findings)
      : evidence_(evidence), findings_(findings), moved_back_(evidence.press.creep_compensated) {}

  /// `block_page` is the place of the page, or of the left one of a spread, in the block.
  void text(std::size_t page, std::size_t index, std::size_t block_page);
  void frame(const PlacedFrame &placed, std::size_t block_page);
  void tell_worst() {
    if (worst_) findings_.push_back(*worst_);
  }

private:
  Crept shifted(const Rect &box, const PageSpace &space, std::size_t block_page) const {
    const std::size_t half = space.fold && on_right_page(box, space) ? 1 : 0;
    return crept(box, space, evidence_.bound.creep(block_page + half), moved_back_);
  }

  const Evidence &evidence_;
  std::vector<Finding> &findings_;
  bool moved_back_;
  std::optional<Finding> worst_; ///< of the texts that only lose a part of their margin
};

// What the binding swallows takes the part of the knife where the printer moves the pages back.
void Check::text(std::size_t page, std::size_t index, std::size_t block_page) {
  const PageSpace &space = evidence_.spaces[page];
  const Rect &box = evidence_.book.pages[page].texts[index].rect;
  const Crept found = shifted(box, space, block_page);
  const Length knife = moved_back_ ? space.gutter_loss : evidence_.press.cut_tolerance;
  Finding finding = about_text(Grade::query, evidence_, page, index);
  finding.sides = {found.side};
  finding.measured = found.after;
  if (found.before > knife && found.after <= knife && found.after < found.before) {
    finding.grade = Grade::hold;
    finding.wanted = knife;
    findings_.push_back(std::move(finding));
    return;
  }
  const Length kept = found.margin - layout_rounding;
  if (found.before < kept || found.after >= kept) return;
  finding.wanted = found.margin;
  if (!worst_ || found.after < std::get<Length>(worst_->measured)) worst_ = std::move(finding);
}

// At the binding nothing is cut, so that only the front edge counts.
void Check::frame(const PlacedFrame &placed, std::size_t block_page) {
  if (moved_back_) return;
  const Rect &box = printed_box(evidence_, placed);
  const PageSpace &space = evidence_.space_of(placed);
  if (off_page(box, space)) return;
  const Crept found = shifted(box, space, block_page);
  const Length cut = evidence_.press.cut_tolerance;
  if (found.before <= cut || found.after > cut) return;
  Finding finding = about_frame(Grade::query, evidence_, placed);
  finding.sides = {found.side};
  finding.measured = found.after;
  finding.wanted = cut;
  findings_.push_back(std::move(finding));
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  if (!evidence.bound.creeps) return;
  Check checking(evidence, findings);
  std::size_t block_page = 1;
  auto placed = evidence.frames.begin();
  for (std::size_t page = 0; page < evidence.book.pages.size(); ++page) {
    const Page &content = evidence.book.pages[page];
    const bool cover = content.kind == PageKind::cover;
    for (; placed != evidence.frames.end() && placed->page == page; ++placed)
      if (!cover) checking.frame(*placed, block_page);
    for (std::size_t index = 0; index < content.texts.size(); ++index)
      if (!cover) checking.text(page, index, block_page);
    if (!cover) block_page += content.kind == PageKind::spread ? 2u : 1u;
  }
  checking.tell_worst();
}

} // namespace

extern const Rule creep_at_trim_rule = {
    "creep-at-trim",
    Grade::hold,
    "Creep brings it to the knife",
    "In a stapled book every sheet lies round those inside it. The inner pages stand out at the front and "
    "are cut shorter there, so that the same layout loses more of its margin from sheet to sheet.",
    "Creep of a page = number of sheets that lie outside its own × thickness of a leaf (common practice; "
    "some printers reckon one sheet more). Distance to the front edge less the creep; where the press sheet "
    "says that the printer moves the pages back, distance to the binding less the creep. A text that comes "
    "within the cut tolerance, or within what the binding swallows, is a hold; a frame that comes within the "
    "cut tolerance is a query. Of the texts that only come within the safe margin the one that is left with "
    "least is a query. What was too near without creep is left to other rules.",
    "Move it in by the creep, or use a thinner paper or fewer pages. Ask whether the printer moves the pages "
    "against the creep, and write that into the press sheet.",
    check,
};

} // namespace stoneproof
