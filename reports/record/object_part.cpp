// The book as an object: what was computed from its pages, paper and binding. The only way in is object_part;
// tested in tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

constexpr Word<ThicknessFrom> from_words[] = {{ThicknessFrom::caliper, "caliper"},
                                              {ThicknessFrom::bulk, "bulk"},
                                              {ThicknessFrom::pages_per_inch, "pages_per_inch"}};

Json signatures_part(const BoundBook &bound) {
  Json list = Json::array();
  for (const Signature &signature : bound.plan.signatures)
    list.push_back({{"first", signature.first}, {"pages", signature.pages}, {"blanks", signature.blanks}});
  return {{"signature_pages", bound.signature}, {"multiple", bound.multiple},
          {"pages", bound.plan.pages},          {"blanks", bound.plan.blanks},
          {"total", bound.plan.total()},        {"signatures", std::move(list)}};
}

Json spine_part(const std::optional<Spine> &spine) {
  if (!spine) return nullptr;
  return {{"width_mm", spine->width.length.mm()},
          {"tolerance_mm", spine->width.tolerance.mm()},
          {"from", word_of(from_words, spine->leaf.from)},
          {"leaf_mm", spine->leaf.leaf.mm()},
          {"pages", spine->pages},
          {"block_mm", spine->block.length.mm()},
          {"cover_leaf_mm", spine->cover_leaf.mm()},
          {"endpapers_mm", spine->endpapers.mm()},
          {"boards_mm", spine->boards.mm()},
          {"lining_mm", spine->lining.mm()}};
}

Json cover_sheet_part(const std::optional<CoverSheet> &cover, bool boards) {
  if (!cover) return nullptr;
  return {{"visible_mm", in_mm(cover->visible)},
          {"sheet_mm", in_mm(cover->sheet)},
          {"past_mm", in_mm(cover->past)},
          {"panel_mm", cover->panel.mm()},
          {"board_width_mm", boards ? Json(cover->board.mm()) : Json(nullptr)},
          {"spine_mm", cover->spine.length.mm()},
          {"spine_tolerance_mm", cover->spine.tolerance.mm()}};
}

/// The sheets of a stapled block from the outermost inwards, by the pages that lie on them.
Json creep_part(const BoundBook &bound) {
  if (!bound.creeps) return nullptr;
  const std::size_t total = bound.plan.total();
  Json sheets = Json::array();
  for (std::size_t first = 1; first <= total / 2; first += 2) {
    const std::size_t last = total + 1 - first;
    sheets.push_back(
        {{"pages", Json::array({first, first + 1, last - 1, last})}, {"shift_mm", bound.creep(first).mm()}});
  }
  return sheets;
}

} // namespace

Json object_part(const Evidence &evidence) {
  const BoundBook &bound = evidence.bound;
  const bool boards = evidence.book.binding.kind == BindingKind::case_bound;
  return {{"signatures", signatures_part(bound)},
          {"leaf_mm", in_mm_or_null(bound.leaf)},
          {"spine", spine_part(bound.spine)},
          {"cover_sheet", cover_sheet_part(bound.cover, boards)},
          {"creep", creep_part(bound)}};
}

} // namespace stoneproof::record
