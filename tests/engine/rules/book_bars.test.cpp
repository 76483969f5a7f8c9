// The rules of the book as an object at their bars: what just passes and what just fails. Whole books stand
// in tests/rules.
#include "engine/rules/rule.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <string>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

constexpr Length tick = Length::of_ticks(1), hair = layout_rounding;

PressSheet a_sheet() {
  PressSheet sheet;
  sheet.density.fill({Density::of_ppi(1), Density::of_ppi(1)});
  sheet.stretch_tolerance = 0.01;
  sheet.cut_tolerance = sheet.fold_tolerance = 1_mm;
  sheet.page_counts.fill({4, 8, 64});
  sheet.spine = {Length::of_mm(0.013), 6_mm, Length::of_mm(1.5)};
  return sheet;
}

/// A book of 200 x 250 mm with so many blank pages, or with a cover too.
struct Bench {
  Book book;
  PressSheet press = a_sheet();

  explicit Bench(BindingKind kind, int pages = 8) {
    book.language = "en";
    book.trim = {200_mm, 250_mm};
    book.binding.kind = kind;
    book.pictures.emplace_back();
    for (int number = 1; number <= pages; ++number) {
      Page page;
      page.number = number;
      page.blank = number > 1 && number < pages;
      book.pages.push_back(page);
      if (!page.blank) write(book.pages.size() - 1, {50_mm, 50_mm, 50_mm, 50_mm});
    }
  }

  void cover(Size size, Length spine, Length flap = {}) {
    book.cover.emplace();
    book.cover->size = size;
    book.cover->spine = spine;
    book.cover->flap = flap;
    Page page;
    page.kind = PageKind::cover;
    page.number = 0;
    book.pages.insert(book.pages.begin(), page);
  }
  void write(std::size_t page, Rect rect, TextKind kind = TextKind::body) {
    TextBlock text;
    text.rect = rect;
    text.kind = kind;
    book.pages[page].texts.push_back(text);
    book.pages[page].blank = false;
  }
  Frame &put(std::size_t page, Rect rect) {
    Frame frame;
    frame.rect = rect;
    frame.picture = 0;
    book.pages[page].frames.push_back(frame);
    book.pages[page].blank = false;
    return book.pages[page].frames.back();
  }

  /// "hold" or the like for each finding of the rule, joined by blanks.
  std::string verdict(std::string_view rule) const {
    PictureState state;
    state.facts = Facts{};
    state.facts->size = {4000, 4000};
    const std::vector<std::optional<PixelSize>> sizes = {PixelSize{4000, 4000}};
    const Evidence evidence = {
        book, press, {state}, place_frames(book, sizes), page_spaces(book, press), bind(book, press)};
    std::string words;
    for (const Finding &finding : check_rules(evidence))
      if (finding.rule == rule)
        words += (words.empty() ? "" : " ") + std::string(word_of(grade_words, finding.grade));
    return words;
  }
};

Stock paper(double caliper_mm) {
  Stock stock;
  stock.caliper = Length::of_mm(caliper_mm);
  return stock;
}

} // namespace

TEST_CASE("page counts at the multiple and at the limits") {
  const auto of = [](BindingKind kind, int pages) { return Bench(kind, pages).verdict("page-count-off"); };
  CHECK(of(BindingKind::perfect, 8).empty());
  CHECK(of(BindingKind::perfect, 9) == "hold");
  CHECK(of(BindingKind::perfect, 10) == "hold");
  CHECK(of(BindingKind::perfect, 12).empty());
  CHECK(of(BindingKind::perfect, 4) == "hold");
  CHECK(of(BindingKind::perfect, 1) == "hold");
  CHECK(of(BindingKind::perfect, 64).empty());
  CHECK(of(BindingKind::perfect, 68) == "hold");
  Bench any(BindingKind::perfect, 9); // a leaf has two pages, whatever the sheet says
  any.press.page_counts.fill({1, 1, 64});
  CHECK(any.verdict("page-count-off") == "hold");
  any.book.pages.pop_back();
  CHECK(any.verdict("page-count-off").empty());
  Bench stapled(BindingKind::saddle, 10); // and a folded sheet four
  stapled.press.page_counts.fill({2, 1, 64});
  CHECK(stapled.verdict("page-count-off") == "hold");
}

TEST_CASE("blanks at the end that fill a sheet, and others") {
  const auto of = [](int pages, int blanks, int signature) {
    Bench bench(BindingKind::perfect, pages);
    bench.book.binding.signature = signature;
    auto &all = bench.book.pages;
    bench.write(static_cast<std::size_t>(pages - blanks - 1), {50_mm, 50_mm, 50_mm, 50_mm});
    for (int i = 0; i < blanks; ++i) {
      all[all.size() - 1 - static_cast<std::size_t>(i)].texts.clear();
      all[all.size() - 1 - static_cast<std::size_t>(i)].blank = true;
    }
    return bench.verdict("signature-left-over");
  };
  CHECK(of(16, 2, 16).empty());
  CHECK(of(16, 3, 16) == "query");
  CHECK(of(32, 13, 16) == "query"); // 19 + 13 = 2 x 16
  CHECK(of(16, 4, 8) == "query");   // 12 + 4 = 2 x 8
  CHECK(of(20, 4, 8).empty());      // 16 = 2 x 8: four more are to be written on
  CHECK(of(20, 8, 16).empty());
  CHECK(of(36, 0, 16).empty());    // 16 + 16 + 4
  CHECK(of(44, 0, 24) == "query"); // 24 + 20
  CHECK(of(28, 0, 28).empty());    // one signature, as told
}

TEST_CASE("a trim at the rounding") {
  const auto of = [](Size size) {
    Bench bench(BindingKind::saddle);
    bench.book.pages[2].trim = size;
    return bench.verdict("mixed-trim");
  };
  CHECK(of({200_mm + hair, 250_mm - hair}).empty());
  CHECK(of({200_mm + hair + tick, 250_mm}) == "hold");
  CHECK(of({200_mm, 250_mm - hair - tick}) == "hold");
}

TEST_CASE("the spine at its band") {
  // 4 leaves x 0.1 mm + 2 x 0.3 = 1 mm, give or take 4 x 0.013 = 0.052 mm.
  const auto of = [](BindingKind kind, Length spine, bool told = true) {
    Bench bench(kind);
    if (told) bench.book.stocks.block = paper(0.1);
    bench.book.stocks.cover = paper(0.3);
    bench.cover({400_mm + spine, 250_mm}, spine);
    return bench.verdict("spine-off");
  };
  const auto perfect = BindingKind::perfect;
  CHECK(of(perfect, Length::of_mm(1.052)).empty());
  CHECK(of(perfect, Length::of_mm(1.052) + tick) == "hold");
  CHECK(of(perfect, Length::of_mm(0.948)).empty());
  CHECK(of(perfect, Length::of_mm(0.948) - tick) == "hold");
  CHECK(of(perfect, 30_mm, false).empty()); // no paper is told
  CHECK(of(BindingKind::saddle, hair).empty());
  CHECK(of(BindingKind::saddle, hair + tick) == "hold");
  CHECK(of(BindingKind::spiral, 30_mm).empty());
}

TEST_CASE("the size of a cover at its tolerance") {
  const auto of = [](BindingKind kind, Size size, Length spine, Length flap, bool told) {
    Bench bench(kind);
    if (told) bench.book.stocks.block = paper(0.1);
    bench.cover(size, spine, flap);
    return bench.verdict("cover-size-off");
  };
  const auto perfect = BindingKind::perfect;
  const Length spine = Length::of_mm(0.4), band = Length::of_mm(0.052), fine = 400_mm + spine;
  CHECK(of(perfect, {fine + 1_mm + band, 251_mm}, spine, {}, true).empty());
  CHECK(of(perfect, {fine + 1_mm + band + tick, 250_mm}, spine, {}, true) == "hold");
  CHECK(of(perfect, {fine - 1_mm - band - tick, 250_mm}, spine, {}, true) == "hold");
  CHECK(of(perfect, {fine, 251_mm + tick}, spine, {}, true) == "hold");
  CHECK(of(perfect, {fine, 249_mm - tick}, spine, {}, true) == "hold");
  CHECK(of(perfect, {fine + 5_mm, 250_mm}, spine + 5_mm, {}, true).empty()); // the spine alone: spine-off
  CHECK(of(perfect, {fine + 120_mm, 250_mm}, spine, 60_mm, true).empty());
  CHECK(of(perfect, {fine + 120_mm, 250_mm}, spine, 58_mm, true) == "hold");
  CHECK(of(perfect, {410_mm, 250_mm}, 10_mm, {}, false).empty()); // no paper: with the spine that is laid out
  CHECK(of(perfect, {412_mm, 250_mm}, 10_mm, {}, false) == "hold");
  CHECK(of(BindingKind::saddle, {400_mm, 250_mm}, {}, {}, false).empty());
  CHECK(of(BindingKind::saddle, {402_mm, 250_mm}, {}, {}, false) == "hold");
  CHECK(of(BindingKind::spiral, {405_mm, 250_mm}, 5_mm, {}, true) == "hold");
  // 2 x (197.5 + 8) + 10; 250 + 2 x 3
  CHECK(of(BindingKind::case_bound, {421_mm, 256_mm}, 10_mm, {}, false).empty());
  CHECK(of(BindingKind::case_bound, {410_mm, 250_mm}, 10_mm, {}, false) == "hold");
}

TEST_CASE("text on a spine, at the least width and clearance") {
  const auto of = [](Length spine, Length from, Length width, TextKind kind = TextKind::spine) {
    Bench bench(BindingKind::perfect);
    bench.cover({400_mm + spine, 250_mm}, spine);
    bench.write(0, {200_mm + from, 40_mm, width, 60_mm}, kind);
    return bench.verdict("narrow-spine-text") + "/" + bench.verdict("over-cover-fold");
  };
  const Length clear = Length::of_mm(1.5);
  CHECK(of(6_mm, clear, 3_mm) == "/");
  CHECK(of(6_mm - tick, clear, 2_mm) == "hold/");
  CHECK(of(10_mm, clear - hair, 7_mm) == "/");
  CHECK(of(10_mm, clear - hair - tick, 5_mm) == "hold/");
  CHECK(of(10_mm, 3_mm, Length::of_mm(5.5) + hair + tick) == "hold/");
  CHECK(of(10_mm, -5_mm, 20_mm) == "hold/");
  CHECK(of(10_mm, -5_mm, 20_mm, TextKind::heading) == "/query"); // no text of the spine
  CHECK(of(10_mm, hair, 8_mm, TextKind::heading) == "hold/");    // between its folds
  Bench told(BindingKind::perfect);                              // laid out at 10 mm, but the paper makes 0.4
  told.book.stocks.block = paper(0.1);
  told.cover({410_mm, 250_mm}, 10_mm);
  told.write(0, {203_mm, 40_mm, 4_mm, 60_mm}, TextKind::spine);
  CHECK(told.verdict("narrow-spine-text") == "hold");
}

TEST_CASE("frames and texts at a fold of the cover") {
  const auto of = [](Length right) {
    Bench bench(BindingKind::perfect);
    bench.cover({410_mm, 250_mm}, 10_mm);
    bench.put(0, {150_mm, 50_mm, 50_mm + right, 50_mm});
    return bench.verdict("over-cover-fold");
  };
  CHECK(of({}).empty());
  CHECK(of(hair).empty());
  CHECK(of(hair + tick) == "query");
  CHECK(of(-hair - tick) == "query");
  CHECK(of(1_mm) == "query");
  CHECK(of(1_mm + tick).empty());
  CHECK(of(-1_mm) == "query");
  CHECK(of(-1_mm - tick).empty());
  CHECK(of(30_mm).empty());
}

TEST_CASE("creep at the knife and at the margin") {
  // 16 pages are 4 sheets; pages 7 to 10 creep by 3 x 0.2 = 0.6 mm. Page 8 is a left page, 7 a right one.
  const auto of = [](std::size_t page, Rect rect, bool text, bool moved_back = false, double leaf = 0.2) {
    Bench bench(BindingKind::saddle, 16);
    bench.press.creep_compensated = moved_back;
    bench.press.safe_margin = {5_mm, 5_mm, 5_mm, 5_mm};
    bench.book.binding.gutter_loss = 2_mm;
    bench.book.stocks.block = paper(leaf);
    if (text)
      bench.write(page - 1, rect);
    else
      bench.put(page - 1, rect);
    return bench.verdict("creep-at-trim");
  };
  const Length creep = Length::of_mm(0.6);
  const auto left = [](Length x) { return Rect{x, 50_mm, 50_mm, 50_mm}; };
  CHECK(of(8, left(1_mm + creep), true) == "hold");
  CHECK(of(8, left(1_mm + creep + tick), true).empty()); // inside the margin already without creep
  CHECK(of(8, left(1_mm), true).empty());                // near to the knife already without creep
  CHECK(of(8, left(5_mm), true) == "query");
  CHECK(of(8, left(5_mm + creep - hair), true).empty());
  CHECK(of(8, left(5_mm + creep - hair - tick), true) == "query");
  CHECK(of(7, left(5_mm), true).empty()); // at the binding
  CHECK(of(7, left(145_mm), true) == "query");
  CHECK(of(1, left(145_mm), true).empty()); // the outermost sheet
  CHECK(of(8, left(1_mm + creep), false) == "query");
  CHECK(of(8, left(1_mm + creep + tick), false).empty());
  CHECK(of(8, left(1_mm), false).empty());
  CHECK(of(8, left(5_mm), true, false, 0.01).empty()); // 0.03 mm, less than layouts are rounded to
  // Moved back by the printer, they come nearer to the binding instead, of page 7 to the left edge.
  CHECK(of(8, left(5_mm), true, true).empty());
  CHECK(of(7, left(5_mm), true, true) == "query");
  CHECK(of(7, left(2_mm + creep), true, true) == "hold");
  CHECK(of(7, left(1_mm + creep), false, true).empty());
}

TEST_CASE("the swallowed strip at its edge") {
  const auto of = [](Rect rect, std::string_view rule) {
    Bench bench(BindingKind::saddle);
    bench.book.binding.gutter_loss = 6_mm;
    bench.book.pages[0].texts.clear();
    bench.write(0, rect);
    return bench.verdict(rule);
  };
  const auto from = [](Length x) { return Rect{x, 50_mm, 50_mm, 50_mm}; };
  CHECK(of(from(6_mm - hair), "lost-in-gutter").empty());
  CHECK(of(from(6_mm - hair - tick), "lost-in-gutter") == "hold");
  CHECK(of(from(-2_mm), "lost-in-gutter") == "hold");
  CHECK(of(from(-2_mm), "across-gutter").empty()); // told once
  CHECK(of(from(3_mm), "inside-safe-margin").empty());
  CHECK(of({3_mm, -1_mm, 50_mm, 50_mm}, "lost-in-gutter").empty()); // off the page first of all
  Bench focus(BindingKind::saddle);
  focus.book.binding.gutter_loss = 6_mm;
  const auto at = [&](double x, bool said) {
    focus.book.pages[0].frames.clear();
    focus.put(0, {0_mm, 50_mm, 100_mm, 100_mm}).fit = Fill{x, 0.5, said};
    return focus.verdict("lost-in-gutter");
  };
  CHECK(at(0.059, true) == "query");
  CHECK(at(0.06, true).empty());
  CHECK(at(0.01, false).empty());
}

TEST_CASE("halves of a picture at the fold tolerance") {
  const auto of = [](double begins, Length y, double loss_mm, Length height = 200_mm) {
    Bench bench(BindingKind::saddle);
    bench.book.binding.gutter_loss = Length::of_mm(loss_mm);
    bench.put(1, {100_mm, 20_mm, 100_mm, 200_mm}).fit = CropShare{0, 0, 0.5, 1};
    bench.put(2, {0_mm, 20_mm + y, height / 2, height}).fit = CropShare{begins, 0, 0.5, 1};
    return bench.verdict("halves-apart") + "/" + bench.verdict("picture-twice");
  };
  CHECK(of(0.5, {}, 0) == "/");
  CHECK(of(0.5, 1_mm, 0) == "/");
  CHECK(of(0.5, 1_mm + tick * 2, 0) == "query/");
  CHECK(of(0.495, {}, 0) == "/"); // 1 mm of 200 twice
  CHECK(of(0.494, {}, 0) == "query/");
  CHECK(of(0.505, {}, 0) == "/"); // 1 mm nowhere
  CHECK(of(0.506, {}, 0) == "query/");
  CHECK(of(0.46, {}, 4) == "/"); // 8 mm twice, all swallowed
  CHECK(of(0.454, {}, 4) == "query/");
  CHECK(of(0.506, {}, 4) == "query/");
  CHECK(of(0.5, {}, 0, 201_mm) == "/");
  CHECK(of(0.5, {}, 0, 203_mm) == "query/");
}
