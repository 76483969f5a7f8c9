#include "reports/content/sentences.h"

#include "engine/measure/jpeg_quality.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>
#include <set>

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

/// The only finding of a rule in a book, with its words.
struct Told {
  Checked checked;
  const Finding *finding = nullptr;
  std::string message, remedy;
};

Told tell(Book book, std::string_view rule, PixelSize size = {1200, 800}) {
  Told told{checked(std::move(book), size), nullptr, {}, {}};
  const auto &all = told.checked.findings;
  const auto found = std::find_if(all.begin(), all.end(), [&](const Finding &f) { return f.rule == rule; });
  REQUIRE(found != all.end());
  told.finding = &*found;
  told.message = message(told.checked.evidence, *found);
  told.remedy = remedy(told.checked.evidence, *found);
  return told;
}

Book with_frame(Frame frame, std::size_t page = 0) {
  Book book = small_book();
  book.pictures = {photo("p", "summer.jpg")};
  book.pages[page].frames = {std::move(frame)};
  return book;
}

} // namespace

TEST_CASE("too few pixels: the setting, the largest size and the looser crop are named") {
  // 1200 px over 150 mm = 203.2 ppi; a print of 150 x 100 mm at its own size wants a scan at 300 ppi.
  const Told query = tell(with_frame(frame("f", 0, 20, 20, 150, 100)), "too-few-pixels");
  CHECK(query.message == "Prints at 203 ppi; a photo wants 300 ppi.");
  CHECK(query.remedy ==
        "Scan the original again at 300 ppi. Or print it no larger than 101 × 67 mm (now 150 × 100 mm).");
  // A crop of half the width and height prints at half the density; the whole picture would do.
  Frame tight = frame("f", 0, 20, 20, 60, 40);
  tight.fit = CropShare{0.25, 0.25, 0.5, 0.5};
  const Told looser = tell(with_frame(tight), "too-few-pixels");
  CHECK(looser.message == "Prints at 254 ppi; a photo wants 300 ppi.");
  CHECK(looser.remedy ==
        "Scan the original again at 300 ppi. Or print it no larger than 50 × 33 mm (now 60 × 40 mm). Or "
        "loosen the crop: show at least 60 % of the picture’s width and 60 % of its height.");
}

TEST_CASE("a lost original is never asked for again") {
  Book book = with_frame(frame("f", 0, 20, 20, 150, 100));
  book.pictures[0].original->lost = true;
  const Told told = tell(std::move(book), "lost-original-too-small");
  CHECK(told.message ==
        "Prints at 203 ppi; a photo wants 300 ppi. The original is lost, so it cannot be scanned again.");
  CHECK(told.remedy == "Print it no larger than 101 × 67 mm (now 150 × 100 mm).");
}

TEST_CASE("film and settings beyond a flatbed carry a word of advice") {
  Book book = with_frame(frame("f", 0, 20, 20, 150, 100));
  book.pictures[0].original =
      Original{OriginalKind::slide, Size{Length::of_mm(36), Length::of_mm(24)}, false};
  CHECK(tell(book, "too-few-pixels").remedy == "Scan the original again at 1600 ppi. Film wants a film "
                                               "scanner, or a flatbed with a film holder. Or print it no "
                                               "larger than 101 × 67 mm (now 150 × 100 mm).");
  book.pictures[0].original = Original{OriginalKind::print, Size{Length::of_mm(9), Length::of_mm(6)}, false};
  const std::string beyond = tell(book, "too-few-pixels").remedy;
  CHECK(beyond.find("5000 ppi, more than any usual scanner gives") != std::string::npos);
}

TEST_CASE("sides of a page are named from the binding, sides of a spread as the reader sees them") {
  struct Case {
    Frame frame;
    std::size_t page;
    std::string_view rule, message;
  };
  Frame gap = frame("f", 0, -3, 20, 100, 100); // on the left page of the spread
  gap.fit = PictureAt{{Length::of_mm(1), Length::of_mm(20), Length::of_mm(96), Length::of_mm(100)}};
  const Case cases[] = {
      {frame("f", 0, 100, 0, 100, 100), 0, "short-bleed",
       "Comes no further than the trim at the top and outside; the bleed is 3 mm."},
      {frame("f", 0, 100, -1, 102, 100), 0, "short-bleed",
       "Passes the trim by as little as 1 mm at the top and outside; the bleed is 3 mm."},
      {frame("f", 0, 100, 50, 100, 100), 0, "short-bleed",
       "Stops at the trim at the outside; the bleed is 3 mm."},
      {frame("f", 0, -1, 50, 100, 100), 1, "short-bleed",
       "Passes the trim by only 1 mm at the left; the bleed is 3 mm."},
      {gap, 1, "short-bleed",
       "The picture ends 1 mm inside the trim at the left, though its frame goes on; the bleed is 3 mm."},
      {frame("f", 0, 30, 2, 100, 100), 0, "inside-safe-margin",
       "Stands 2 mm from the edge at the top; the safe margin is 5 mm."},
      {frame("f", 0, 202, 30, 100, 100), 1, "inside-safe-margin",
       "Stands 2 mm from the fold; the binding swallows 6 mm."},
      {frame("f", 0, 0.5, 30, 100, 100), 1, "near-trim",
       "Ends 0.5 mm from the trim at the left; the cut may wander by 1 mm."},
  };
  for (const Case &c : cases) {
    CAPTURE(c.message);
    CHECK(tell(with_frame(c.frame, c.page), c.rule, {9000, 9000}).message == c.message);
  }
}

TEST_CASE("the pages of a picture that stands twice are listed once each") {
  Book book = with_frame(frame("a", 0, 20, 20, 50, 30));
  book.pages[1].frames = {frame("b", 0, 20, 20, 50, 30), frame("c", 0, 20, 80, 50, 30)};
  CHECK(tell(std::move(book), "picture-twice", {9000, 9000}).message ==
        "The same picture stands in 3 frames: a (page 1), b (pages 2–3) and c (pages 2–3).");
}

TEST_CASE("a coarse JPEG is told with its quality, about where the tables are not standard ones") {
  const auto told = [](QuantTable luma, Grade grade, bool lost = false) {
    Book book = with_frame(frame("f", 0, 20, 20, 60, 40));
    book.pictures[0].original->lost = lost;
    Checked one = checked(std::move(book));
    one.evidence.pictures[0].facts->jpeg = JpegFacts{luma, {}, ""};
    Told made{std::move(one), nullptr, {}, {}};
    std::vector<Finding> findings = check_rules(made.checked.evidence);
    std::erase_if(findings, [](const Finding &f) { return f.rule != "coarse-jpeg"; });
    REQUIRE(findings.size() == 1);
    CHECK(findings[0].grade == grade);
    made.message = message(made.checked.evidence, findings[0]);
    made.remedy = remedy(made.checked.evidence, findings[0]);
    return made;
  };
  const Told query = told(standard_luma(60), Grade::query);
  CHECK(query.message == "Saved as a JPEG of quality 60; the press sheet wants 75. Fine detail is lost, and "
                         "smooth skies and faces may show blocks.");
  CHECK(query.remedy == find_rule("coarse-jpeg")->remedy);
  QuantTable other = standard_luma(30);
  other[0] += 3;
  CHECK(told(other, Grade::hold).message == "Saved as a JPEG of about quality 30; the press sheet needs at "
                                            "least 50, better 75. Fine detail is lost, "
                                            "and smooth skies and faces may show blocks.");
  CHECK(told(standard_luma(60), Grade::query, true).remedy ==
        "Ask for the file as it was before it was saved so small. The original is lost, so without that file "
        "print the picture small. Saving this file again at a higher quality brings nothing back.");
}

TEST_CASE("every rule has words of its own") {
  const std::set<std::string_view> of_counts = {"page-count-off", "pages-missing", "signature-left-over"};
  for (const Rule *rule : all_rules()) {
    CAPTURE(rule->id);
    Checked one = checked(with_frame(frame("f", 0, 20, 20, 150, 100)));
    Book &book = one.evidence.book;
    book.pages[0].trim = book.trim;
    book.cover.emplace();
    book.stocks.block.emplace().caliper = Length::of_mm(0.1);
    book.stocks.block->pages_per_inch = 300;
    one.evidence.bound = bind(book, one.evidence.press);
    Finding finding;
    finding.rule = rule->id;
    finding.page = 0;
    finding.frame = 0;
    finding.picture = 0;
    one.evidence.book.pages[0].texts.emplace_back();
    finding.text = 0;
    one.evidence.pictures[0].facts->jpeg = JpegFacts{standard_luma(60), {}, ""};
    Detail &detail = one.evidence.shown[0].emplace().detail;
    detail.upsampling.factor = 2;
    detail.past.kind = JpegPastKind::moved;
    finding.measured = Length::of_mm(1);
    finding.wanted = Length::of_mm(3);
    if (rule->id == "enlarged-in-software" || rule->id == "soft-detail")
      finding.measured = finding.wanted = Density::of_ppi(100);
    if (of_counts.count(rule->id) > 0) {
      finding.measured = Count{5};
      finding.wanted = Count{3};
    }
    if (rule->id == "printed-screen") finding.measured = Ruling{133};
    if (rule->id == "tilted-original") finding.measured = Angle{2};
    finding.with_picture = 0;
    one.evidence.glasses = {
        {{0, 0, 0, 0, 0}, {}, {{GlassSpotKind::speck, 0.2, 0.3, 0.21, 0.31, -40, {0}, Certainty::firm}}}};
    finding.glass = 0;

    one.evidence.pictures[0].bed = Bed{Certainty::firm, true, 0.1, {9, 9, 40, 40}, 1.5};
    finding.stock = StockPart::block;

    finding.sides = {PageSide::top};
    finding.same_picture = {{0, 0}, {0, 0}};
    finding.fault = Fault{"the file is empty", "summer.jpg", "Ask for the file again."};
    finding.rescue.print_no_larger = Size{Length::of_mm(10), Length::of_mm(10)};
    const std::string words = message(one.evidence, finding);
    CHECK(words != rule->id);
    CHECK(words.size() > 20);
    CHECK(words.back() == '.');
    CHECK(remedy(one.evidence, finding).back() == '.');
  }
}
