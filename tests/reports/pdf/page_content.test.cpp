#include "reports/pdf/page_content.h"
#include "tests/reports/pdf/sample.h"

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::test;

namespace {

std::string operators(const layout::DocumentPage &page) {
  pdf::SharedResources shared;
  return pdf::content_of(page, typesetter(), shared).operators;
}

/// What is drawn for items that are decoration, without the marks round it.
std::string operators(std::vector<layout::Item> items) {
  const std::string all = operators(page_of({100_pt, 100_pt}, std::move(items)));
  const std::string begin = "/Artifact BMC\n", end = "EMC\n";
  if (all.empty()) return all;
  REQUIRE(all.substr(0, begin.size()) == begin);
  REQUIRE(all.substr(all.size() - end.size()) == end);
  return all.substr(begin.size(), all.size() - begin.size() - end.size());
}

} // namespace

TEST_CASE("lines set colour, width and dash once") {
  const layout::Stroke thin{{255, 0, 0}, 1_pt, {2_pt, 1_pt}};
  std::vector<layout::Item> items;
  items.emplace_back(layout::LineItem{{0_pt, 10_pt}, {50_pt, 10_pt}, thin});
  items.emplace_back(layout::LineItem{{0_pt, 20_pt}, {50_pt, 20_pt}, thin});
  items.emplace_back(layout::LineItem{{0_pt, 30_pt}, {50_pt, 30_pt}, {{255, 0, 0}, 1_pt, {}}});
  CHECK(operators(std::move(items)) ==
        "1 0 0 RG\n1 w\n[2 1] 0 d\n0 90 m 50 90 l S\n0 80 m 50 80 l S\n[] 0 d\n0 70 m 50 70 l S\n");
}

TEST_CASE("a dash that PDF forbids is drawn as a whole line") {
  for (const std::vector<Length> &dash : {std::vector<Length>{0_pt, 0_pt}, {2_pt, -1_pt}}) {
    std::vector<layout::Item> items;
    items.emplace_back(layout::LineItem{{0_pt, 0_pt}, {1_pt, 0_pt}, {{}, 1_pt, dash}});
    CHECK(operators(std::move(items)) == "0 0 0 RG\n1 w\n[] 0 d\n0 100 m 1 100 l S\n");
  }
}

TEST_CASE("opacity is of the fill alone and ends with it") {
  std::vector<layout::Item> items;
  items.emplace_back(layout::ShapeItem{{{0_pt, 0_pt}, {9_pt, 0_pt}, {9_pt, 9_pt}},
                                       layout::Ink{0, 51, 0},
                                       layout::Stroke{{0, 0, 0}, 1_pt, {}},
                                       0.25});
  CHECK(operators(std::move(items)) == "0 0.2 0 rg\nq /A250 gs 0 100 m 9 100 l 9 91 l f Q\n"
                                       "0 0 0 RG\n1 w\n0 100 m 9 100 l 9 91 l s\n");
}

TEST_CASE("a picture is clipped unless the clip is its own outline, and hidden without one") {
  std::vector<layout::Item> items;
  layout::PictureItem picture = placed(2, {10_pt, 20_pt, 40_pt, 30_pt});
  items.emplace_back(picture);
  picture.clip = {{20_pt, 30_pt}, {30_pt, 30_pt}, {20_pt, 40_pt}};
  items.emplace_back(picture);
  picture.clip.clear();
  items.emplace_back(picture);
  CHECK(operators(std::move(items)) == "q\n40 0 0 30 10 50 cm /I3 Do\nQ\n"
                                       "q\n20 70 m 30 70 l 20 60 l h W n\n"
                                       "40 0 0 30 10 50 cm /I3 Do\nQ\n");
}

TEST_CASE("text that shows nothing, or a shape without corners, leaves no trace") {
  std::vector<layout::Item> items;
  items.emplace_back(layout::TextItem{{0_pt, 0_pt}, Face::text, 10_pt, {}, ""});
  items.emplace_back(layout::ShapeItem{{}, layout::Ink{}, layout::Stroke{}, 1});
  CHECK(operators(std::move(items)).empty());
}

TEST_CASE("what follows each other in one element is one piece, and all else is an artifact") {
  const auto line = [](Length y) { return layout::LineItem{{0_pt, y}, {9_pt, y}, {{}, 1_pt, {}}}; };
  layout::DocumentPage page = page_of({100_pt, 100_pt}, {line(1_pt), line(2_pt), line(3_pt), line(4_pt)});
  page.elements = {{layout::Role::heading2, {}, 1, 3, ""}};
  CHECK(operators(page) == "/Artifact BMC\n0 0 0 RG\n1 w\n0 99 m 9 99 l S\nEMC\n"
                           "/H2<</MCID 0>>BDC\n0 98 m 9 98 l S\n0 97 m 9 97 l S\nEMC\n"
                           "/Artifact BMC\n0 96 m 9 96 l S\nEMC\n");
}

TEST_CASE("a picture with an alternative is a figure, unless it lies in one") {
  layout::PictureItem picture = placed(0, {10_pt, 20_pt, 40_pt, 30_pt});
  picture.alternative = "the mill";
  layout::DocumentPage page = page_of({100_pt, 100_pt}, {picture, picture, picture, picture});
  page.elements = {{layout::Role::figure, {}, 2, 4, "two mills"}};
  pdf::SharedResources shared;
  const auto structure = pdf::content_of(page, typesetter(), shared).structure;
  REQUIRE(structure.nodes.size() == 3);
  CHECK(structure.content == std::vector<std::size_t>{0, 1, 2});
  CHECK(structure.nodes[1].alternative == "the mill");
  CHECK(structure.nodes[2].alternative == "two mills");
  CHECK(*structure.nodes[2].bounds == Rect{10_pt, 20_pt, 40_pt, 30_pt});
}
