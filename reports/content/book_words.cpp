// Sentences about the book as an object. The only ways in are the functions of book_words.h; tested in
// tests/reports/content/book_words.test.cpp.
#include "reports/content/book_words.h"

#include "engine/rules/print_page.h"
#include "reports/content/figures.h"
#include "reports/content/object_words.h"

#include <fmt/format.h>

namespace stoneproof::content {

namespace {

std::size_t count_of(const Measure &measure) { return std::get<Count>(measure).value; }
Length length_of(const Measure &measure) { return std::get<Length>(measure); }

std::string_view bound_name(BindingKind kind) {
  switch (kind) {
  case BindingKind::saddle: return "a stapled book";
  case BindingKind::perfect: return "a glued book";
  case BindingKind::case_bound: return "a case bound book";
  case BindingKind::spiral: return "a spiral bound book";
  case BindingKind::layflat: return "a layflat book";
  }
  return {};
}

/// What the page count must be a multiple of: what the press sheet says, and what leaves and sheets ask.
std::size_t fold_of(const BoundBook &bound) {
  return bound.multiple % 2 == 0 ? bound.multiple : bound.multiple * 2;
}

bool lies_turned(const Evidence &evidence, const Finding &finding) {
  const auto &trim = evidence.book.pages[*finding.page].trim;
  return trim && is_turned(*trim, evidence.book.trim);
}

std::string_view paper_name(StockPart part) {
  switch (part) {
  case StockPart::block: return "the pages";
  case StockPart::cover: return "the cover";
  case StockPart::endpaper: return "the endpapers";
  }
  return {};
}

/// "its caliper of 0.12 mm", "90 g/m² × 1.6 cm³/g = 0.144 mm".
std::string told_by(const Stock &stock, const LeafThickness &leaf) {
  switch (leaf.from) {
  case ThicknessFrom::caliper: return fmt::format("the caliper says {}", thickness(leaf.leaf));
  case ThicknessFrom::bulk:
    return fmt::format("{:.6g} g/m² × {:.6g} cm³/g is {}", *stock.grammage, *stock.bulk,
                       thickness(leaf.leaf));
  case ThicknessFrom::pages_per_inch:
    return fmt::format("{:.6g} pages per inch is {}", *stock.pages_per_inch, thickness(leaf.leaf));
  }
  return {};
}

} // namespace

std::string page_count_words(const Evidence &evidence, const Finding &finding) {
  const BoundBook &bound = evidence.bound;
  const PageCountBar &bar = evidence.press.page_count(evidence.book.binding.kind);
  const std::size_t pages = count_of(finding.measured), wanted = count_of(finding.wanted);
  const std::string_view book = bound_name(evidence.book.binding.kind);
  const std::string has = count(pages, "page", "pages");
  if (bound.plan.total() < static_cast<std::size_t>(bar.least))
    return fmt::format("The book has {}; {}{} has at least {} with this printer, a multiple of {}.", has,
                       book, is_binding_guessed(evidence.book) ? ", for which it was taken," : "", wanted,
                       fold_of(bound));
  if (bound.plan.total() > static_cast<std::size_t>(bar.most))
    return fmt::format("The book has {}; {} has at most {} with this printer, a multiple of {}.", has, book,
                       wanted, fold_of(bound));
  const std::size_t blanks = bound.plan.blanks;
  return fmt::format(
      "The book has {}, no multiple of {} as {} wants: {} would be left at the end, after page "
      "{} of the block, to make {}.",
      has, fold_of(bound), book, count(blanks, "blank page", "blank pages"), pages, wanted);
}

std::string page_count_remedy(const Evidence &evidence, const Finding &finding) {
  const SignaturePlan &plan = evidence.bound.plan;
  const PageCountBar &bar = evidence.press.page_count(evidence.book.binding.kind);
  if (is_binding_guessed(evidence.book) && plan.total() < static_cast<std::size_t>(bar.least))
    return "If it is bound otherwise, name that with --binding, as saddle for a stapled book. Else add "
           "pages, blank "
           "if so meant.";
  if (plan.blanks == 0 || count_of(finding.wanted) != plan.total()) return {}; // the rule's own
  const std::size_t over = fold_of(evidence.bound) - plan.blanks;
  const std::string add = fmt::format("Add {}, blank if so meant", count(plan.blanks, "page", "pages"));
  return plan.pages > over ? fmt::format("{}, or take {} out.", add, over) : add + ".";
}

std::string left_over_words(const Evidence &evidence, const Finding &finding) {
  const std::size_t found = count_of(finding.measured);
  if (count_of(finding.wanted) == most_blanks) {
    const std::size_t filling = evidence.bound.plan.blanks;
    const std::string filled =
        filling > 0 ? fmt::format(", {} of them to fill the last sheet", filling) : std::string();
    return fmt::format("The book ends with {} blank pages{}; more than {} are better used or left out.",
                       found, filled, most_blanks);
  }
  const SignaturePlan &plan = evidence.bound.plan;
  return fmt::format(
      "{} pages make {} of {} pages, and {} are left, which do not fold as one usual sheet of 4, "
      "8, 12, 16, 24 or 32.",
      plan.total(), count(plan.signatures.size() - 1, "whole signature", "whole signatures"),
      count_of(finding.wanted), found);
}

std::string left_over_remedy(const Evidence &, const Finding &finding) {
  if (count_of(finding.wanted) != most_blanks) return {}; // the rule's own
  return "Put something on them, or take as many out as leaves whole sheets.";
}

std::string pages_missing_words(const Evidence &, const Finding &finding) {
  const std::size_t number = count_of(finding.measured), expected = count_of(finding.wanted);
  if (expected == 1 && finding.grade == Grade::query)
    return fmt::format("The book begins with page {}, not with page 1.", number);
  const std::size_t missing = number - expected;
  const std::string which =
      missing == 1 ? fmt::format("page {} is", expected)
                   : fmt::format("pages {} {} {} are", expected, missing == 2 ? "and" : "to", number - 1);
  const std::string sides = missing % 2 == 0
                                ? std::string()
                                : fmt::format(" Without {} every page that follows lies on the wrong side.",
                                              missing == 1 ? "it" : "them");
  return fmt::format("Page {} comes after page {}: {} missing.{}", number, expected - 1, which, sides);
}

std::string mixed_trim_words(const Evidence &evidence, const Finding &finding) {
  if (lies_turned(evidence, finding))
    return fmt::format("The page is {}: it has the book’s size, but lies turned by 90°.",
                       exact_size(*evidence.book.pages[*finding.page].trim));
  return fmt::format("The page is {}; the book is {}.", exact_size(*evidence.book.pages[*finding.page].trim),
                     exact_size(evidence.book.trim));
}

std::string mixed_trim_remedy(const Evidence &evidence, const Finding &finding) {
  if (!lies_turned(evidence, finding)) return {}; // the rule's own
  return evidence.book.pages[*finding.page].print
             ? "Turn the page in the export, so that it stands as the others do."
             : "Turn the page, so that it stands as the others do.";
}

std::string contradicting_stock_words(const Evidence &evidence, const Finding &finding) {
  const Stock &stock = *stock_of(evidence.book.stocks, *finding.stock);
  const auto differs = contradiction(stock, evidence.press.spine.leaf_tolerance);
  if (!differs) return {};
  const Length by = differs->thicker.leaf - differs->thinner.leaf;
  std::string words = fmt::format("The paper of {}: {}, but {}. They are {} apart; {} is allowed.",
                                  paper_name(*finding.stock), told_by(stock, differs->thinner),
                                  told_by(stock, differs->thicker), thickness(by),
                                  thickness(evidence.press.spine.leaf_tolerance));
  const auto leaves = static_cast<std::int64_t>(evidence.bound.plan.total() / 2);
  if (*finding.stock == StockPart::block && leaves > 1)
    words += fmt::format(" On {} leaves that makes {}.", leaves, nearest_millimetres(by * leaves));
  return words;
}

std::string spine_off_words(const Evidence &evidence, const Finding &finding) {
  const std::string laid = nearest_millimetres(length_of(finding.measured));
  if (evidence.book.binding.kind == BindingKind::saddle)
    return fmt::format("The cover has a spine of {}; a stapled book has none.", laid);
  const Spine &spine = *evidence.bound.spine;
  return fmt::format("The spine was laid out {} wide; {} leaves of {} and what comes to them make {}.", laid,
                     (spine.pages + 1) / 2, thickness(spine.leaf.leaf), banded(spine.width));
}

std::string cover_size_words(const Evidence &evidence, const Finding &) {
  const Book &book = evidence.book;
  const bool reckoned = evidence.bound.cover.has_value();
  Spine as_laid;
  as_laid.width.length = book.cover->spine;
  const CoverSheet wanted = reckoned ? *evidence.bound.cover : *cover_sheet(book, as_laid, book.bleed);
  const std::string with = reckoned ? fmt::format("with a spine of {}", banded(wanted.spine))
                                    : "with the spine as it was laid out";
  return fmt::format("The cover was laid out {}; this book needs {} {}, bleed or turn-in not counted.",
                     exact_size(book.cover->size), exact_size(wanted.visible), with);
}

std::string spine_text_words(const Evidence &evidence, const Finding &finding) {
  const Length measured = length_of(finding.measured);
  const std::string wanted = millimetres_up(length_of(finding.wanted));
  if (finding.sides.empty()) {
    if (measured <= Length{})
      return "There is text for the spine, but this binding has no spine to print on.";
    const bool laid_else = evidence.bound.cover && evidence.book.cover->spine != measured;
    return fmt::format(
        "The spine is only {} wide{}; text wants {}.", millimetres(measured),
        laid_else ? fmt::format(" (laid out {})", nearest_millimetres(evidence.book.cover->spine)) : "",
        wanted);
  }
  if (measured < Length{})
    return fmt::format(
        "Runs {} over the edge of the spine, which is {} wide; {} are to be clear on either side.",
        millimetres_up(-measured), nearest_millimetres(evidence.book.cover->spine), wanted);
  return fmt::format(
      "Stands {} from the edge of the spine, which is {} wide; {} are to be clear on either side.",
      millimetres(measured), nearest_millimetres(evidence.book.cover->spine), wanted);
}

std::string spine_text_remedy(const Evidence &, const Finding &finding) {
  return finding.sides.empty()
             ? "Leave the text off the spine."
             : "Make the text block narrower, with smaller type if need be, and set it in the "
               "middle of the spine.";
}

std::string cover_fold_words(const Evidence &, const Finding &finding) {
  if (finding.text) return fmt::format("Runs {} over a fold of the cover.", figure(finding.measured));
  return fmt::format("Ends {} beside a fold of the cover, which may wander by {}.", figure(finding.measured),
                     millimetres_up(length_of(finding.wanted)));
}

} // namespace stoneproof::content
