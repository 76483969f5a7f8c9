// The book of the record's tests: a fault of several kinds, and figures that can be worked out by hand.
#pragma once

#include "engine/measure/jpeg_quality.h"
#include "tests/support/small_book.h"

namespace stoneproof::test {

/// Photo harbour.tif, 2480 x 3508 px, in a frame of 210 x 297.05 mm; a lost slide too small; an empty frame;
/// a picture that is missing; one that nothing shows; a text at the edge.
inline Checked record_book() {
  Book book = small_book();
  book.source = "/somebody/at home/album.xml";
  book.contributors = {{"zofia", "Zofia Żółkiewska", "zofia@example.org", {}}};
  book.pictures = {photo("harbour", "scans/harbour.tif"), photo("slide", "slide 7.jpg"),
                   photo("gone", "gone.png"), photo("spare", "spare.png")};
  book.pictures[0].contributor = 0;
  book.pictures[1].original = Original{OriginalKind::slide, std::nullopt, true};
  book.stocks.block = Stock{.caliper = Length::of_mm(0.12)};
  book.pages[0].frames = {frame("f1", 0, -5, -5, 210, 297.05), frame("f2", 1, 20, 20, 120, 80)};
  book.pages[0].frames[1].fit = CropShare{0.25, 0, 0.5, 1};
  book.pages[0].texts = {{TextKind::caption,
                          {Length::of_mm(2), Length::of_mm(240), Length::of_mm(50), Length::of_mm(5)},
                          Length::of_pt(9),
                          "The quay in 1931",
                          {}}};
  book.pages[1].frames = {frame("f3", std::nullopt, 20, 20, 50, 50), frame("f4", 2, 120, 20, 50, 50),
                          frame("f5", 1, 190, 100, 30, 20)};
  Checked made{{std::move(book), built_in_press_sheet(), {}, {}, {}}, {}, {}};
  Evidence &evidence = made.evidence;
  evidence.pictures.resize(4);
  evidence.pictures[0] = {false, {}, facts_of(2480, 3508), std::string(64, 'a')};
  evidence.pictures[0].facts->stored_x = evidence.pictures[0].facts->stored_y = Density::of_ppi(600);
  evidence.pictures[1] = {false, {}, facts_of(800, 600), std::string(64, 'b')};
  evidence.pictures[1].facts->jpeg = JpegFacts{standard_luma(60), standard_chroma(60), "4:2:0"};
  evidence.pictures[2].missing = true;
  evidence.pictures[2].fault = Fault{"there is no such file", "/somebody/at home/gone.png", "Ask for it."};
  evidence.pictures[3] = {false, {}, facts_of(100, 100), std::string(64, 'c')};
  evidence.pictures[3].facts->jpeg = JpegFacts{}; // a header without tables
  std::vector<std::optional<PixelSize>> sizes;
  for (const PictureState &state : evidence.pictures)
    sizes.push_back(state.facts ? std::optional(state.facts->size) : std::nullopt);
  evidence.frames = place_frames(evidence.book, sizes);
  evidence.spaces = page_spaces(evidence.book, evidence.press);
  evidence.bound = bind(evidence.book, evidence.press);
  made.findings = check_rules(evidence);
  return made;
}

} // namespace stoneproof::test
