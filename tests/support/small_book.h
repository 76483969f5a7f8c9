// A small book with one page and one spread, as evidence without any file: what tests of the reports start
// from.
#pragma once

#include "engine/press/read.h"
#include "engine/run/run.h"

namespace stoneproof::test {

/// One photo of 1200 x 800 px; its original is a print of 150 x 100 mm.
inline Picture photo(std::string id, std::string file) {
  Picture picture;
  picture.id = std::move(id);
  picture.file = std::move(file);
  picture.original = Original{OriginalKind::print, Size{Length::of_mm(150), Length::of_mm(100)}, false};
  return picture;
}

inline Facts facts_of(std::int64_t width, std::int64_t height) {
  Facts facts;
  facts.size = {width, height};
  facts.tag = ColourTag::srgb;
  return facts;
}

inline Frame frame(std::string id, std::optional<std::size_t> picture, double x, double y, double width,
                   double height) {
  Frame made;
  made.id = std::move(id);
  made.picture = picture;
  made.rect = {Length::of_mm(x), Length::of_mm(y), Length::of_mm(width), Length::of_mm(height)};
  return made;
}

/// Trim 200 x 250 mm, bleed 3 mm, safe margin 5 mm; a page 1 and a spread 2-3 without frames.
inline Book small_book() {
  Book book;
  book.source = "book.xml";
  book.title = "The Żółkiewski house";
  book.language = "en";
  book.trim = {Length::of_mm(200), Length::of_mm(250)};
  book.bleed = {Length::of_mm(3), Length::of_mm(3), Length::of_mm(3), {}};
  book.safe_margin = {Length::of_mm(5), Length::of_mm(5), Length::of_mm(5), Length::of_mm(5)};
  book.binding.gutter_loss = Length::of_mm(6);
  Page single, spread;
  spread.number = 2;
  spread.kind = PageKind::spread;
  book.pages = {single, spread};
  return book;
}

/// The book with every picture known to have so many pixels, placed and checked; no small copies. It is no
/// whole book: that its pages are too few and some of them empty is left out.
inline Checked checked(Book book, PixelSize size = {1200, 800}) {
  Checked result{{std::move(book), built_in_press_sheet(), {}, {}, {}, {}}, {}, {}, {}};
  Evidence &evidence = result.evidence;
  std::vector<std::optional<PixelSize>> sizes;
  for (std::size_t i = 0; i < evidence.book.pictures.size(); ++i) {
    PictureState state;
    state.facts = facts_of(size.width, size.height);
    evidence.pictures.push_back(state);
    sizes.emplace_back(size);
  }
  evidence.frames = place_frames(evidence.book, sizes);
  evidence.spaces = page_spaces(evidence.book, evidence.press);
  evidence.bound = bind(evidence.book, evidence.press);
  evidence.shown.resize(evidence.frames.size());
  result.findings = check_rules(evidence);
  std::erase_if(result.findings, [](const Finding &finding) {
    return finding.rule == "page-count-off" || finding.rule == "empty-page";
  });
  result.copies.resize(evidence.book.pictures.size());
  result.patches.resize(evidence.book.pictures.size());
  return result;
}

} // namespace stoneproof::test
