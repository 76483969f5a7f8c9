// The bound book in the record: what was told, what was computed, and where the cover stands.
#include "reports/record/record.h"
#include "tests/reports/record/validate.h"
#include "tests/support/small_book.h"

#include <nlohmann/json.hpp>

using namespace stoneproof;
using namespace stoneproof::test;
using namespace stoneproof::literals;
using nlohmann::json;

namespace {

Book bound_book(BindingKind kind, int pages) {
  Book book = small_book();
  book.binding.kind = kind;
  book.stocks.block = Stock{.caliper = Length::of_mm(0.12), .place = {7, 3}};
  book.pages.clear();
  for (int number = 1; number <= pages; ++number) {
    Page page;
    page.number = number;
    book.pages.push_back(page);
  }
  return book;
}

std::string text_of(const Book &book, std::vector<Finding> findings = {}) {
  Checked made = checked(book);
  made.evidence.bound = bind(made.evidence.book, made.evidence.press);
  findings.insert(findings.end(), made.findings.begin(), made.findings.end());
  return record::record_text(made.evidence, findings, {"1.2.3", std::string(64, 'd'), std::nullopt});
}

int refused(const std::string &text) { return refused_by("record.schema.json", {text}); }

} // namespace

TEST_CASE("a spine is recorded with all that it was computed from") {
  // Check value: 128 pages of 0.120 mm make 7.68 +- 0.83 mm.
  Book book = bound_book(BindingKind::case_bound, 126);
  book.binding.signature = 16;
  book.binding.spine_lining = 1_mm;
  book.stocks.endpaper = Stock{.grammage = 120, .bulk = 1.25};
  const std::string text = text_of(book);
  CHECK(refused(text) == 0);
  const json root = json::parse(text), spine = root["object"]["spine"];
  CHECK(spine["pages"] == 128);
  CHECK(spine["block_mm"] == 7.68);
  CHECK(spine["tolerance_mm"].get<double>() == Approx(0.832));
  CHECK(spine["from"] == "caliper");
  CHECK(spine["leaf_mm"] == 0.12);
  CHECK(spine["endpapers_mm"].get<double>() == Approx(0.6));
  CHECK(spine["boards_mm"] == 5.0);
  CHECK(spine["lining_mm"] == 1.0);
  CHECK(spine["cover_leaf_mm"] == 0.0);
  CHECK(spine["width_mm"].get<double>() == Approx(14.28));
  const json stocks = root["book"]["stocks"];
  CHECK(stocks["block"]["caliper_mm"] == 0.12);
  CHECK(stocks["block"]["line"] == 7);
  CHECK(stocks["block"]["bulk_cm3_g"] == nullptr);
  CHECK(stocks["endpaper"]["grammage_g_m2"] == 120);
  CHECK(stocks["cover"] == nullptr);
  CHECK(root["object"]["creep"] == nullptr);
}

TEST_CASE("signatures are recorded with their blanks") {
  Book book = bound_book(BindingKind::case_bound, 98);
  book.binding.signature = 32;
  const json plan = json::parse(text_of(book))["object"]["signatures"];
  CHECK(plan["signature_pages"] == 32);
  CHECK(plan["multiple"] == 4);
  CHECK(plan["pages"] == 98);
  CHECK(plan["blanks"] == 2);
  CHECK(plan["total"] == 100);
  REQUIRE(plan["signatures"].size() == 4);
  CHECK(plan["signatures"][3]["first"] == 97);
  CHECK(plan["signatures"][3]["pages"] == 4);
  CHECK(plan["signatures"][3]["blanks"] == 2);
}

TEST_CASE("the sheet of a case is recorded, as laid out and as computed") {
  Book book = bound_book(BindingKind::case_bound, 100);
  book.trim = {210_mm, 280_mm};
  book.binding.board_width = 213_mm;
  // 50 leaves of 0.24 mm and two boards make a spine of 17 mm: check value 497 x 324 mm.
  book.stocks.block->caliper = Length::of_mm(0.24);
  book.cover = Cover{{460_mm, 286_mm}, 18_mm, {}, {}};
  Page cover;
  cover.kind = PageKind::cover;
  cover.number = 0;
  cover.frames = {frame("front", std::nullopt, 240, 20, 200, 200)};
  book.pages.insert(book.pages.begin(), cover);
  const std::string text = text_of(book);
  CHECK(refused(text) == 0);
  const json root = json::parse(text), sheet = root["object"]["cover_sheet"];
  CHECK(sheet["sheet_mm"] == json{{"width", 497.0}, {"height", 324.0}});
  CHECK(sheet["visible_mm"] == json{{"width", 459.0}, {"height", 286.0}});
  CHECK(sheet["past_mm"]["top"] == 19.0);
  CHECK(sheet["panel_mm"] == 221.0);
  CHECK(sheet["board_width_mm"] == 213.0);
  CHECK(sheet["spine_mm"] == 17.0);
  CHECK(root["book"]["cover"]["spine_mm"] == 18.0);
  CHECK(root["book"]["cover"]["panel_mm"] == 221.0);
  CHECK(root["book"]["cover"]["flap_mm"] == 0.0);
  CHECK(root["book"]["pages"] == 100);
  CHECK(root["frames"][0]["page"] == 0);
  CHECK(root["frames"][0]["spread"] == false);
}

TEST_CASE("creep is recorded sheet by sheet") {
  // Check value: 16 pages, 0.10 mm: 0.30 mm on the innermost sheet.
  Book book = bound_book(BindingKind::saddle, 16);
  book.stocks.block->caliper = Length::of_mm(0.1);
  const std::string text = text_of(book);
  CHECK(refused(text) == 0);
  const json object = json::parse(text)["object"];
  REQUIRE(object["creep"].size() == 4);
  CHECK(object["creep"][0] == json{{"pages", {1, 2, 15, 16}}, {"shift_mm", 0.0}});
  CHECK(object["creep"][3]["pages"] == json{7, 8, 9, 10});
  CHECK(object["creep"][3]["shift_mm"].get<double>() == Approx(0.3));
  CHECK(object["spine"] == nullptr);
  CHECK(object["cover_sheet"]["board_width_mm"] == nullptr);
}

TEST_CASE("a book of which no paper is told has no figures that hang on it") {
  Book book = bound_book(BindingKind::perfect, 32);
  book.stocks.block.reset();
  const std::string text = text_of(book);
  CHECK(refused(text) == 0);
  const json root = json::parse(text);
  for (const char *key : {"leaf_mm", "spine", "cover_sheet", "creep"}) CHECK(root["object"][key] == nullptr);
  CHECK(root["book"]["caliper_mm"] == nullptr);
  CHECK(root["book"]["cover"] == nullptr);
  CHECK(root["press"]["page_multiple"] == 2); // of a glued book
}

TEST_CASE("a finding of two things names both") {
  Book book = bound_book(BindingKind::perfect, 32);
  book.pages[4].frames = {frame("f1", std::nullopt, 20, 20, 50, 50),
                          frame("f2", std::nullopt, 20, 90, 50, 50)};
  book.pages[4].texts.resize(2);
  book.pages[4].texts[1].text = "The other";
  Finding finding;
  finding.rule = "empty-frame";
  finding.page = 4;
  finding.frame = 0;
  finding.with_frame = 1;
  finding.with_text = 1;
  const std::string text = text_of(book, {finding});
  CHECK(refused(text) == 0);
  const json told = json::parse(text)["findings"][0];
  CHECK(told["frame"] == "f1");
  CHECK(told["with_frame"] == "f2");
  CHECK(told["with_text"] == "The other");
}
