// What is said of the book as an object. The only ways in are the functions of object_words.h; tested in
// tests/reports/content/object_words.test.cpp.
#include "reports/content/object_words.h"

#include "reports/content/book_words.h"
#include "reports/content/figures.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace stoneproof::content {

namespace {

std::string trimmed(double value, int digits) {
  std::string text = fmt::format("{:.{}f}", value, digits);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string bare(Length length) { return trimmed(length.mm(), 2); }

/// "Stapled through the fold" has its own way to say how a block is put together.
Reckoning pages_words(const Evidence &evidence) {
  const BoundBook &bound = evidence.bound;
  const SignaturePlan &plan = bound.plan;
  Reckoning words{"Pages", count(plan.pages, "page", "pages"), {}, {}};
  if (plan.blanks > 0)
    words.figure += fmt::format(" and {} at the end", count(plan.blanks, "blank", "blanks"));
  words.how = fmt::format("{} is {} multiple of {}", plan.pages,
                          plan.pages % bound.multiple == 0 ? "a" : "no", bound.multiple);
  words.how += plan.blanks > 0 ? fmt::format(": {} + {} = {}.", plan.pages, plan.blanks, plan.total()) : ".";
  const auto meant = std::ranges::count_if(evidence.book.pages, &Page::blank);
  if (meant > 0)
    words.how += fmt::format(" {} meant to be blank.", meant == 1 ? std::string("One of them is")
                                                                  : fmt::format("{} of them are", meant));
  words.source =
      "A leaf has two pages. Signatures of 8 to 32 pages and at most two blanks at the end: GPO Style "
      "Manual (2008), 1.15; of 4 to 64: New Hart’s Rules, 1.8.";
  return words;
}

Reckoning sides_words(const Evidence &evidence) {
  const bool right = evidence.book.binding.first_page == Side::right;
  return {"Sides", right ? "odd pages on the right" : "odd pages on the left",
          fmt::format("Page 1 stands as a {} page.", right ? "right" : "left"),
          "Custom of the trade: page 1 is a right-hand page."};
}

std::string leaf_formula(const Stock &stock, ThicknessFrom from) {
  switch (from) {
  case ThicknessFrom::caliper: return "As described.";
  case ThicknessFrom::bulk:
    return fmt::format("{} g/m² × {} cm³/g ÷ 1000.", trimmed(*stock.grammage, 2), trimmed(*stock.bulk, 3));
  case ThicknessFrom::pages_per_inch:
    return fmt::format("2 × 25.4 mm ÷ {} pages per inch.", trimmed(*stock.pages_per_inch, 2));
  }
  return {};
}

Reckoning leaf_words(const Evidence &evidence, const LeafThickness &leaf) {
  return {"Leaf of the block", thickness(leaf.leaf), leaf_formula(*evidence.book.stocks.block, leaf.from),
          "Caliper, or grammage × bulk, or pages per inch at two pages a leaf."};
}

Reckoning block_words(const Evidence &evidence, const Spine &spine) {
  const std::size_t leaves = (spine.pages + 1) / 2;
  const std::string tolerance = thickness(evidence.press.spine.leaf_tolerance);
  return {"Block", banded(spine.block),
          fmt::format("{} leaves × {}; tolerance {} × {}.", leaves, thickness(spine.leaf.leaf), leaves,
                      tolerance),
          "Pages ÷ 2 × thickness of a leaf, as the textbooks have it; the tolerance of a leaf is the press "
          "sheet’s."};
}

/// What comes to the block, as "+ 2 × cover 0.3 mm".
std::string spine_parts(const Spine &spine) {
  std::string parts = fmt::format("block {}", nearest_millimetres(spine.block.length));
  if (spine.cover_leaf > Length{}) parts += fmt::format(" + 2 × cover {}", thickness(spine.cover_leaf));
  if (spine.endpapers > Length{})
    parts += fmt::format(" + endpapers {}", nearest_millimetres(spine.endpapers));
  if (spine.boards > Length{}) parts += fmt::format(" + two boards {}", nearest_millimetres(spine.boards));
  if (spine.lining > Length{}) parts += fmt::format(" + lining {}", nearest_millimetres(spine.lining));
  parts[0] = 'B';
  return parts + ".";
}

Reckoning spine_words(const Spine &spine, BindingKind kind) {
  const bool bound_in_boards = kind == BindingKind::case_bound;
  return {bound_in_boards ? "Spine piece" : "Spine", banded(spine.width), spine_parts(spine),
          bound_in_boards
              ? "Common practice: the block with what lies between it and the outside of the boards."
              : "Common practice: the block, and the cover’s paper on either side."};
}

std::string laid_out(const Book &book) {
  if (!book.cover) return {};
  return fmt::format(" Laid out: {} × {} mm, spine {} mm.", bare(book.cover->size.width),
                     bare(book.cover->size.height), bare(book.cover->spine));
}

Reckoning case_words(const Evidence &evidence, const CoverSheet &cover) {
  const Binding &binding = evidence.book.binding;
  return {
      "Cover sheet", fmt::format("{} × {} mm", bare(cover.sheet.width), bare(cover.sheet.height)),
      fmt::format("Width: 2 × turn-in {} + 2 × board {} + 2 × hinge {} + spine {}. Height: 2 × turn-in {} + "
                  "trim {} + 2 × square {}.{}",
                  bare(binding.turn_in), bare(cover.board), bare(binding.hinge), bare(cover.spine.length),
                  bare(binding.turn_in), bare(evidence.book.trim.height), bare(binding.square),
                  laid_out(evidence.book)),
      evidence.book.binding.board_width ? "Geometry of a case; the width of the board is the binder’s."
                                        : "Geometry of a case; board = trim + square − (hinge − board "
                                          "thickness) is our own, the binder’s word "
                                          "goes before it."};
}

Reckoning paper_cover_words(const Evidence &evidence, const CoverSheet &cover) {
  const Length flap = evidence.book.cover ? evidence.book.cover->flap : Length{};
  const std::string flaps = flap > Length{} ? fmt::format(" + 2 × flap {}", bare(flap)) : "";
  return {"Cover sheet", fmt::format("{} × {} mm", bare(cover.sheet.width), bare(cover.sheet.height)),
          fmt::format("Width: 2 × trim {} + spine {}{} + 2 × bleed {}. Height: trim {} + bleed {} + {}.{}",
                      bare(evidence.book.trim.width), bare(cover.spine.length), flaps,
                      bare(cover.past.outside), bare(evidence.book.trim.height), bare(cover.past.top),
                      bare(cover.past.bottom), laid_out(evidence.book)),
          "Geometry of a cover that is cut with its block."};
}

Reckoning gutter_words(const Evidence &evidence) {
  const Length loss = evidence.book.binding.gutter_loss;
  return {"Gutter", fmt::format("{} swallowed of each page", millimetres_up(loss)),
          fmt::format("A picture across a spread loses 2 × {} at the fold.", millimetres_up(loss)),
          "As described; ask the binder. On the pages the strip is hatched."};
}

Reckoning creep_words(const Evidence &evidence) {
  const BoundBook &bound = evidence.bound;
  const std::size_t sheets = sheets_of(bound.plan.total());
  return {"Creep", fmt::format("up to {}", nearest_millimetres(bound.creep(bound.plan.total() / 2))),
          fmt::format("({} sheets − 1) × {}. {}", sheets, thickness(*bound.leaf),
                      evidence.press.creep_compensated
                          ? "The printer moves each page towards the fold against it."
                          : "The content comes nearer to the front edge by so much."),
          "Common practice: number of sheets outside × thickness of a leaf; some printers reckon one sheet "
          "more."};
}

std::vector<SignatureRow> signature_rows(const SignaturePlan &plan) {
  std::vector<SignatureRow> rows;
  const auto &all = plan.signatures;
  for (std::size_t begin = 0, end = 0; begin < all.size(); begin = end) {
    const auto same = [&](const Signature &s) {
      return s.pages == all[begin].pages && s.blanks == all[begin].blanks;
    };
    while (end < all.size() && same(all[end])) ++end;
    const bool one = end == begin + 1;
    const std::size_t blanks = all[begin].blanks;
    rows.push_back({one ? fmt::format("{}", end) : fmt::format("{} to {}", begin + 1, end),
                    count(all[begin].pages, "page", "pages"),
                    fmt::format("{}–{}", all[begin].first, all[end - 1].last()),
                    blanks > 0 ? fmt::format("last {} blank", blanks) : std::string()});
  }
  return rows;
}

std::vector<CreepRow> creep_rows(const BoundBook &bound) {
  std::vector<CreepRow> rows;
  const std::size_t total = bound.plan.total(), sheets = sheets_of(total);
  for (std::size_t sheet = 0; sheet < sheets; ++sheet) {
    const std::size_t first = sheet * 2 + 1, mate = total - first;
    const bool inner = sheet + 1 == sheets;
    rows.push_back({fmt::format("{}{}", sheet + 1,
                                sheet == 0 ? ", outermost"
                                : inner    ? ", innermost"
                                           : ""),
                    inner ? fmt::format("{}–{}", first, mate + 1)
                          : fmt::format("{}–{} and {}–{}", first, first + 1, mate, mate + 1),
                    nearest_millimetres(bound.creep(first))});
  }
  return rows;
}

} // namespace

std::string thickness(Length length) { return trimmed(length.mm(), 3) + " mm"; }
std::string nearest_millimetres(Length length) { return bare(length) + " mm"; }
std::string exact_size(const Size &size) {
  return fmt::format("{} × {}", bare(size.width), nearest_millimetres(size.height));
}
std::string banded(const Banded &length) {
  return fmt::format("{} ± {}", nearest_millimetres(length.length), millimetres_up(length.tolerance));
}

ObjectWords object_words(const Evidence &evidence) {
  const Book &book = evidence.book;
  const BoundBook &bound = evidence.bound;
  ObjectWords words;
  auto &told = words.reckonings;
  told.push_back(pages_words(evidence));
  told.push_back(sides_words(evidence));
  if (const auto leaf = leaf_thickness(book.stocks.block)) told.push_back(leaf_words(evidence, *leaf));
  if (bound.spine) {
    told.push_back(block_words(evidence, *bound.spine));
    told.push_back(spine_words(*bound.spine, book.binding.kind));
  }
  if (bound.cover)
    told.push_back(book.binding.kind == BindingKind::case_bound ? case_words(evidence, *bound.cover)
                                                                : paper_cover_words(evidence, *bound.cover));
  if (book.binding.gutter_loss > Length{}) told.push_back(gutter_words(evidence));
  if (bound.creeps) {
    told.push_back(creep_words(evidence));
    words.creep = creep_rows(bound);
  }
  words.signatures = signature_rows(bound.plan);
  if (!bound.leaf)
    words.unknown = book.binding.kind == BindingKind::saddle
                        ? "The paper of the block is not known, so its creep could not be reckoned."
                        : "The paper of the block is not known, so neither the spine nor the cover could be "
                          "reckoned.";
  const auto also = [&](std::string_view sentence) {
    if (!words.unknown.empty()) words.unknown += " ";
    words.unknown += sentence;
  };
  if (is_binding_guessed(book))
    also("No PDF tells how a book will be bound: this one was taken for perfect bound; --binding names "
         "another.");
  if (words.signatures.empty())
    also("How many pages a folded sheet has is not known, so no signatures are listed.");
  return words;
}

} // namespace stoneproof::content
