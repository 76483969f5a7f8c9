// The table of the plan, and CSV itself, read back by Python's csv module.
#include "reports/record/plan_csv.h"

#include "reports/record/csv.h"
#include "tests/reports/record/read_csv.h"
#include "tests/support/plan_book.h"

using namespace stoneproof;
using namespace stoneproof::record;
using namespace stoneproof::test;

TEST_CASE("fields come back as they were, whatever stands in them") {
  const std::vector<std::string> fields = {"",         "plain",      "a, b",     "\"quoted\"",
                                           "one\ntwo", "one\r\ntwo", " spaces ", "Żółć, ελένη 夏",
                                           "\"",       "=1+1"};
  const auto table = read_back(csv_line(fields) + csv_line({"next"}));
  REQUIRE(table.size() == 2);
  CHECK(table.at(0).get<std::vector<std::string>>() == fields);
  CHECK(table.at(1).at(0) == "next");
  CHECK(csv_line({"a", "b\"c", ""}) == "a,\"b\"\"c\",\r\n");
}

TEST_CASE("the table holds a line for each picture, with what was reckoned") {
  const Book book = plan_book_of_all();
  const auto table = read_back(plan_csv(book, plan_of(book, {{5, {{600, 400}}}})));
  REQUIRE(table.size() == book.pictures.size() + 1);
  check_columns(table, "plan.md");

  auto wedding = line_of(table, "picture", "wedding");
  CHECK(wedding["file"] == "wedding.tif");
  CHECK(wedding["contributor"] == "eleni");
  CHECK(wedding["contributor_name"] == "Ελένη Καλφάτη");
  CHECK(wedding["use"] == "photo");
  CHECK(wedding["original"] == "print");
  CHECK(wedding["original_width_mm"] == "152.4");
  CHECK(wedding["state"] == "to-scan");
  CHECK(wedding["way"] == "flatbed");
  CHECK(wedding["wanted_ppi"] == "300");
  CHECK(wedding["needed_ppi"] == "600");
  CHECK(wedding["setting_ppi"] == "600");
  CHECK(wedding["width_px"] == "3600");
  CHECK(wedding["height_px"] == "2400");
  CHECK(wedding["channels"] == "3");
  CHECK(wedding["bytes"] == "25920000");
  CHECK(wedding["frames"] == "1");
  CHECK(wedding["page"] == "2");
  CHECK(wedding["frame"] == "wedding");
  CHECK(wedding["printed_width_mm"] == "304.8");
  CHECK(wedding["enough_to_ppi"].empty());
  CHECK(wedding["largest_width_mm"].empty());
  CHECK(wedding["file_width_px"].empty());

  auto negative = line_of(table, "picture", "negative");
  CHECK(negative["state"] == "beyond");
  CHECK(negative["way"] == "film");
  CHECK(negative["needed_ppi"] == "7620");
  CHECK(negative["enough_to_ppi"] == "4800");
  CHECK(negative["largest_width_mm"] == "576");
  CHECK(negative["largest_height_mm"] == "384");

  auto watch = line_of(table, "picture", "watch");
  CHECK(watch["way"] == "camera");
  CHECK(line_of(table, "picture", "letter")["file_width_px"] == "600");
  CHECK(line_of(table, "picture", "lost")["state"] == "lost");
  CHECK(line_of(table, "picture", "lost")["setting_ppi"].empty());
  CHECK(line_of(table, "picture", "unknown")["state"] == "no-size");
  CHECK(line_of(table, "picture", "unknown")["contributor"].empty());
  CHECK(line_of(table, "picture", "cropped")["state"] == "no-crop");
  CHECK(line_of(table, "picture", "spare")["state"] == "not-shown");
  CHECK(line_of(table, "picture", "spare")["page"].empty());
}

TEST_CASE("a lost original's line tells what its file is enough for") {
  Book book = small_book();
  book.pictures = {original("lost", OriginalKind::print, 90, 60)};
  book.pictures[0].original = Original{OriginalKind::print, {}, true};
  book.pages[0].frames = {frame("small", 0, 0, 0, 25.4, 16.9333), frame("large", 0, 0, 0, 101.6, 67.7333)};
  auto lost = line_of(read_back(plan_csv(book, plan_of(book, {{0, {{600, 400}}}}))), "picture", "lost");
  CHECK(lost["frame"] == "large");
  CHECK(lost["largest_width_mm"] == "50.8");
  CHECK(lost["enough_to_ppi"].empty());
}

TEST_CASE("the columns are those that are described") {
  const auto table = read_back(plan_csv(small_book(), {}));
  REQUIRE(table.size() == 1);
  check_columns(table, "plan.md");
  const std::string described = content_of(STONEPROOF_SOURCE_DIR "/schema/plan.md");
  for (const auto &[state, word] : scan_state_words)
    CHECK(described.find("`" + std::string(word) + "`") != std::string::npos);
  for (const auto &[way, word] : scan_way_words)
    CHECK(described.find("`" + std::string(word) + "`") != std::string::npos);
}
