// The rules at their bars: what just passes and what just fails, with the figures found. Whole books stand in
// tests/rules; here each case is one frame or text on one page of 200 x 250 mm.
#include "engine/measure/jpeg_quality.h"
#include "engine/rules/rule.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <string>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr PixelSize plenty = {9000, 9000};

PressSheet a_sheet(double tolerance) {
  PressSheet sheet;
  sheet.density.fill({Density::of_ppi(300), Density::of_ppi(200)});
  sheet.density_tolerance = tolerance;
  sheet.stretch_tolerance = 0.01;
  sheet.bleed = {3_mm, 3_mm, 3_mm, 0_mm};
  sheet.safe_margin = {5_mm, 5_mm, 5_mm, 5_mm};
  sheet.cut_tolerance = 1_mm;
  sheet.flatbed_limit = Density::of_ppi(2400);
  sheet.jpeg_quality = {75, 50};
  sheet.formats = {Format::jpeg};
  sheet.colours = {ColourModel::rgb};
  return sheet;
}

/// One page with one frame or text.
struct Desk {
  Book book;
  PressSheet press = a_sheet(0);
  PixelSize size = plenty;
  std::optional<JpegFacts> jpeg;
  ColourModel colour = ColourModel::rgb;

  explicit Desk(int number = 1, bool spread = false) {
    book.trim = {200_mm, 250_mm};
    book.pictures.emplace_back();
    Page page;
    page.number = number;
    page.kind = spread ? PageKind::spread : PageKind::page;
    book.pages.push_back(page);
  }

  Frame &put(Length x, Length y, Length width, Length height) {
    Frame frame;
    frame.rect = {x, y, width, height};
    frame.picture = 0;
    book.pages[0].frames.push_back(frame);
    return book.pages[0].frames.back();
  }
  void write(Length x, Length y, Length width, Length height) {
    TextBlock text;
    text.rect = {x, y, width, height};
    book.pages[0].texts.push_back(text);
  }

  std::vector<Finding> findings() const {
    PictureState state;
    state.facts = Facts{};
    state.facts->size = size;
    state.facts->tag = ColourTag::srgb;
    state.facts->colour = colour;
    state.facts->jpeg = jpeg;
    const std::vector<std::optional<PixelSize>> sizes = {size};
    const Evidence evidence = {
        book, press, {state}, place_frames(book, sizes), {page_space(book, press, book.pages[0])}};
    auto all = check_rules(evidence);
    std::erase_if(all, [](const Finding &finding) {
      return finding.rule == "unused-picture" || finding.rule == "pages-missing"; // one page of a book
    });
    return all;
  }
  /// "rule grade", of every finding, joined by commas.
  std::string verdict() const {
    std::string words;
    for (const Finding &finding : findings())
      words += (words.empty() ? "" : ", ") + std::string(finding.rule) + ' ' +
               std::string(word_of(grade_words, finding.grade));
    return words;
  }
};

std::string verdict_of_density(PixelSize size, double tolerance, Size frame) {
  Desk desk;
  desk.press = a_sheet(tolerance);
  desk.size = size;
  desk.put(20_mm, 20_mm, frame.width, frame.height);
  return desk.verdict();
}

constexpr Length tick = Length::of_ticks(1), hair = layout_rounding;

} // namespace

TEST_CASE("densities at the bar") {
  const Size six = {6_in, 4_in};
  CHECK(verdict_of_density({1800, 1200}, 0, six).empty());
  CHECK(verdict_of_density({1799, 1200}, 0, six) == "too-few-pixels query");
  CHECK(verdict_of_density({1200, 800}, 0, six) == "too-few-pixels query");
  CHECK(verdict_of_density({1199, 800}, 0, six) == "too-few-pixels hold");
  CHECK(verdict_of_density({1782, 1188}, 0.01, six).empty());
  CHECK(verdict_of_density({1781, 1188}, 0.01, six) == "too-few-pixels query");
  CHECK(verdict_of_density({1188, 792}, 0.01, six) == "too-few-pixels query");
  CHECK(verdict_of_density({1187, 792}, 0.01, six) == "too-few-pixels hold");
  const Size a4 = {210_mm, 297_mm};
  CHECK(verdict_of_density({2480, 3508}, 0, a4).find("too-few-pixels query") != std::string::npos);
  CHECK(verdict_of_density({2480, 3508}, 0.01, a4).find("too-few-pixels") == std::string::npos);
}

TEST_CASE("a one-bit picture counts as line art, unless the book says it is something else than a photo") {
  Desk desk;
  desk.press.colours.push_back(ColourModel::bilevel);
  desk.press.density[static_cast<std::size_t>(Use::line_art)] = {Density::of_ppi(1200), Density::of_ppi(600)};
  desk.press.density[static_cast<std::size_t>(Use::document)] = {Density::of_ppi(400), Density::of_ppi(300)};
  desk.put(20_mm, 20_mm, 6_in, 4_in);
  desk.size = {1800, 1200}; // 300 ppi
  CHECK(desk.verdict().empty());
  desk.colour = ColourModel::bilevel;
  CHECK(desk.verdict() == "too-few-pixels hold");
  desk.size = {7200, 4800};
  CHECK(desk.verdict().empty());
  desk.size = {2400, 1600};
  desk.book.pictures[0].use = Use::document;
  CHECK(desk.verdict().empty());
}

TEST_CASE("a picture at the bar stays there, wherever its other edge ends between two ticks") {
  for (const double tolerance : {0.0, 0.01, 0.02, 0.03, 0.05}) {
    const auto width = static_cast<std::int64_t>(3000 * (1 - tolerance) + 0.5);
    for (std::int64_t height = 1600; height < 2400; ++height) {
      CAPTURE(tolerance, height);
      REQUIRE(verdict_of_density({width, height}, tolerance, {10_in, 5_in}).find("too-few") ==
              std::string::npos);
      REQUIRE(verdict_of_density({width - 1, height}, tolerance, {10_in, 5_in}).find("too-few") !=
              std::string::npos);
    }
  }
}

TEST_CASE("a lost original is told apart, and offers no rescan") {
  Desk desk;
  desk.size = {900, 600};
  desk.put(20_mm, 20_mm, 6_in, 4_in);
  desk.book.pictures[0].original = Original{OriginalKind::print, Size{3_in, 2_in}, false};
  auto found = desk.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "too-few-pixels");
  REQUIRE(found[0].rescue.rescan);
  CHECK(found[0].rescue.rescan->setting == 600);
  CHECK(std::get<Density>(found[0].measured) == Density::of_ppi(150));
  CHECK(std::get<Density>(found[0].wanted) == Density::of_ppi(300));
  CHECK(found[0].rescue.print_no_larger == Size{3_in, 2_in});
  CHECK_FALSE(found[0].rescue.looser_crop);

  desk.book.pictures[0].original->lost = true;
  found = desk.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "lost-original-too-small");
  CHECK_FALSE(found[0].rescue.rescan);
  CHECK(found[0].rescue.print_no_larger == Size{3_in, 2_in});
}

TEST_CASE("edges of a frame on a right page, one side at a time") {
  struct Case {
    const char *name;
    Length x, y, width, height;
    const char *verdict;
  };
  // The binding is at the left: bleed 0 there, nothing is cut.
  const Case cases[] = {
      {"on the margins", 5_mm, 5_mm, 190_mm, 240_mm, ""},
      {"to the bleed edges", 0_mm, -3_mm, 203_mm, 256_mm, ""},
      {"past the bleed edges", 0_mm, -9_mm, 212_mm, 268_mm, ""},
      {"a hair of bleed short", 20_mm, -3_mm + hair, 100_mm, 100_mm, ""},
      {"more than that short", 20_mm, -3_mm + hair + tick, 100_mm, 100_mm, "short-bleed hold"},
      {"at the trim: top", 20_mm, 0_mm, 100_mm, 100_mm, "short-bleed hold"},
      {"at the trim: bottom", 20_mm, 150_mm, 100_mm, 100_mm, "short-bleed hold"},
      {"at the trim: outside", 100_mm, 50_mm, 100_mm, 100_mm, "short-bleed hold"},
      {"at the trim: binding", 0_mm, 50_mm, 100_mm, 100_mm, ""},
      {"a hair inside the trim", 20_mm, hair, 100_mm, 100_mm, "short-bleed hold"},
      {"more than that inside", 20_mm, hair + tick, 100_mm, 100_mm, "near-trim query"},
      {"at the cut tolerance", 20_mm, 1_mm, 100_mm, 100_mm, "near-trim query"},
      {"past the cut tolerance", 20_mm, 1_mm + tick, 100_mm, 100_mm, "inside-safe-margin query"},
      {"a hair into the margin", 20_mm, 5_mm - hair, 100_mm, 100_mm, ""},
      {"more than that into the margin", 20_mm, 5_mm - hair - tick, 100_mm, 100_mm,
       "inside-safe-margin query"},
      {"near the binding", 0.5_mm, 50_mm, 100_mm, 100_mm, "inside-safe-margin query"},
      {"past the binding", -(0.5_mm), 50_mm, 100_mm, 100_mm, "across-gutter query"},
      {"beside the page, at the trim", 200_mm, 3_mm, 50_mm, 50_mm, "off-page hold"},
      {"a tick on the page", 200_mm - tick, 50_mm, 50_mm, 50_mm, ""},
      {"over the binding and off", -(50_mm), 50_mm, 50_mm, 50_mm, "off-page hold"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.name);
    Desk desk;
    desk.put(each.x, each.y, each.width, each.height);
    CHECK(desk.verdict() == each.verdict);

    // The same on a left page, mirrored.
    Desk other(2);
    other.put(200_mm - each.x - each.width, each.y, each.width, each.height);
    CHECK(other.verdict() == each.verdict);
  }
}

TEST_CASE("texts at the edges of a right page") {
  struct Case {
    const char *name;
    Length x, y, width, height;
    const char *verdict;
  };
  const Case cases[] = {
      {"on the margins", 5_mm, 5_mm, 190_mm, 240_mm, ""},
      {"into the margin", 20_mm, 4.9_mm, 100_mm, 50_mm, "inside-safe-margin query"},
      {"past the cut tolerance", 20_mm, 1_mm + tick, 100_mm, 50_mm, "inside-safe-margin query"},
      {"at the cut tolerance", 20_mm, 1_mm, 100_mm, 50_mm, "inside-safe-margin hold"},
      {"at the trim", 100_mm, 50_mm, 100_mm, 50_mm, "inside-safe-margin hold"},
      {"a tick past the trim", 100_mm, 50_mm, 100_mm + tick, 50_mm, "inside-safe-margin hold"},
      {"past the trim", 100_mm, 50_mm, 101_mm, 50_mm, "off-page hold"},
      {"at the binding", 0_mm, 50_mm, 100_mm, 50_mm, "inside-safe-margin hold"},
      {"past the binding", -(1_mm), 50_mm, 100_mm, 50_mm, "across-gutter query"},
      {"beside the page", 220_mm, 50_mm, 50_mm, 50_mm, "off-page hold"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.name);
    Desk desk;
    desk.write(each.x, each.y, each.width, each.height);
    CHECK(desk.verdict() == each.verdict);
    Desk other(2);
    other.write(200_mm - each.x - each.width, each.y, each.width, each.height);
    CHECK(other.verdict() == each.verdict);
  }
}

TEST_CASE("a text past the binding is found even where the printer wants bleed there") {
  Desk desk;
  desk.press.bleed.inside = 3_mm;
  desk.write(-(2_mm), 50_mm, 100_mm, 50_mm);
  CHECK(desk.verdict() == "across-gutter query");
  Desk picture;
  picture.press.bleed.inside = 3_mm;
  picture.put(-(3_mm), 50_mm, 100_mm, 50_mm);
  CHECK(picture.verdict().empty());
}

TEST_CASE("the fold of a spread") {
  struct Case {
    const char *name;
    Length x, width;
    bool meant;
    const char *frame, *text;
  };
  const Case cases[] = {
      {"clear of it", 20_mm, 175_mm, false, "", ""},
      {"in the margin left of it", 20_mm, 176_mm, false, "inside-safe-margin query",
       "inside-safe-margin query"},
      {"in the margin right of it", 204_mm, 100_mm, false, "inside-safe-margin query",
       "inside-safe-margin query"},
      {"ends with it", 20_mm, 180_mm, false, "", "inside-safe-margin hold"},
      {"begins with it", 200_mm, 100_mm, false, "", "inside-safe-margin hold"},
      {"over it", 20_mm, 180.06_mm, false, "across-gutter query", "across-gutter query"},
      {"over it, meant", 20_mm, 300_mm, true, "", "across-gutter query"},
  };
  for (const Case &each : cases) {
    CAPTURE(each.name);
    Desk frames(2, true), texts(2, true);
    frames.put(each.x, 50_mm, each.width, 50_mm).across_gutter = each.meant;
    texts.write(each.x, 50_mm, each.width, 50_mm);
    CHECK(frames.verdict() == each.frame);
    CHECK(texts.verdict() == each.text);
  }
}

TEST_CASE("a turned frame bleeds where its edge does, not where the box round it does") {
  Desk level;
  level.put(0_mm, -3_mm, 203_mm, 256_mm);
  CHECK(level.verdict().empty());
  Desk turned_page;
  turned_page.put(0_mm, -3_mm, 203_mm, 256_mm).turn = {1};
  CHECK(turned_page.verdict().find("short-bleed hold") != std::string::npos);
  Desk large; // so large that its turned edges stay outside the bleed all round
  large.put(-(10_mm), -(10_mm), 220_mm, 270_mm).turn = {1};
  CHECK(large.verdict().find("short-bleed") == std::string::npos);
  Desk corner; // only the tip of a corner passes the trim
  corner.put(130_mm, 100_mm, 60_mm, 60_mm).turn = {45};
  CHECK(corner.verdict() == "short-bleed hold");
  for (const double degrees : {15.0, 30.0, 45.0, 60.0, 75.0, -20.0, 110.0}) { // half of it hangs off the page
    CAPTURE(degrees);
    Desk slanting;
    slanting.put(170_mm, 100_mm, 60_mm, 60_mm).turn = {degrees};
    CHECK(slanting.verdict().empty());
  }
}

TEST_CASE("what is printed of an inside picture counts, not the paper round it") {
  Desk desk;
  desk.size = {9000, 3000};
  desk.put(0_mm, 0_mm, 200_mm, 250_mm).fit = Inside{};
  const auto found = desk.findings();
  REQUIRE(found.size() == 1);
  CHECK(found[0].rule == "short-bleed");
  CHECK(found[0].sides == std::vector{PageSide::right}); // neither top nor bottom
  CHECK(std::get<Length>(found[0].measured) == Length{});
}

TEST_CASE("stretch at its tolerance") {
  const auto verdict = [](PixelSize size) {
    Desk desk;
    desk.size = size;
    desk.put(20_mm, 20_mm, 4_in, 4_in).fit = CropShare{0, 0, 1, 1};
    return desk.verdict();
  };
  CHECK(verdict({2000, 2020}).empty());
  CHECK(verdict({2020, 2000}).empty());
  CHECK(verdict({2000, 2021}) == "uneven-stretch query");
  CHECK(verdict({2021, 2000}) == "uneven-stretch query");
}

TEST_CASE("a JPEG at the bars of its quality") {
  struct Case {
    int quality;
    std::string_view verdict;
  };
  for (const Case &c :
       {Case{100, ""}, Case{75, ""}, Case{74, "coarse-jpeg query"}, Case{50, "coarse-jpeg query"},
        Case{49, "coarse-jpeg hold"}, Case{1, "coarse-jpeg hold"}}) {
    CAPTURE(c.quality);
    Desk desk;
    desk.put(20_mm, 20_mm, 50_mm, 50_mm);
    desk.jpeg = JpegFacts{standard_luma(c.quality), standard_chroma(c.quality), "4:2:0"};
    CHECK(desk.verdict() == c.verdict);
  }
}

TEST_CASE("a JPEG without tables, or with a step of 0, is not judged by its quality") {
  Desk desk;
  desk.put(20_mm, 20_mm, 50_mm, 50_mm);
  desk.jpeg = JpegFacts{};
  CHECK(desk.verdict().empty());
  desk.jpeg->luma = standard_luma(10);
  CHECK(desk.verdict() == "coarse-jpeg hold");
  (*desk.jpeg->luma)[63] = 0;
  CHECK(desk.verdict().empty());
}
