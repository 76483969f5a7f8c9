#include "reports/record/record.h"
#include "tests/reports/record/record_book.h"
#include "tests/reports/record/validate.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <filesystem>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::test;
using record::record_text;
namespace fs = std::filesystem;

namespace {

const record::RecordOptions options = {"1.2.3", std::string(64, 'd'), std::nullopt};
const std::string here = STONEPROOF_SOURCE_DIR "/tests/reports/record/";

int refused(const std::vector<std::string> &records) { return refused_by("record.schema.json", records); }

std::string record_of(const Checked &checked) {
  return record_text(checked.evidence, checked.findings, options);
}

} // namespace

TEST_CASE("the record of a small book is the one that was looked at and accepted") {
  const std::string made = record_of(test::record_book());
  const std::string accepted = content_of(here + "small.record.json");
  if (made != accepted) write_file(fs::temp_directory_path() / "small.record.json", made);
  INFO("the record as it is now lies in " << fs::temp_directory_path() / "small.record.json");
  CHECK(made == accepted);
}

TEST_CASE("records are valid by their schema") {
  Book empty = test::small_book();
  empty.pages.clear();
  record::RecordOptions dated = options;
  dated.made_at = 0;
  const Checked full = test::record_book();
  CHECK(refused({record_of(full), record_of(test::checked(empty)),
                 record_text(full.evidence, full.findings, dated)}) == 0);
}

TEST_CASE("a spoiled record is refused") {
  const std::string sound = record_of(test::record_book());
  const std::vector<std::string> spoiled = {
      replaced(sound, "\"verdict\": \"held\"", "\"verdict\": \"maybe\""),
      replaced(sound, "\"record\": 1", "\"record\": 2"),
      replaced(sound, "\"record\": 1", "\"record\": 1, \"colour\": true"),
      replaced(sound, "\"made_at\": null,", ""),
      replaced(sound, "\"made_at\": null", "\"made_at\": \"yesterday\""),
      replaced(sound, "\"hold\": ", "\"hold\": -"),
      replaced(sound, "\"width_px\": 2480", "\"width_px\": 2480.5"),
      replaced(sound, "\"sha256\": \"aa", "\"sha256\": \"AA"),
      replaced(sound, "\"effective_ppi\":", "\"effective\":"),
      replaced(sound, "\"unit\": \"ppi\"", "\"unit\": \"dpi\""),
      replaced(sound, "\"grade\": \"hold\"", "\"grade\": \"error\""),
      replaced(sound, "\"fit\": \"fill\"", "\"fit\": null"),
      replaced(sound, "\"quality\": 60", "\"quality\": 101"),
      replaced(sound, "\"subsampling\": \"4:2:0\"", "\"subsampling\": \"2x2\""),
      replaced(sound, "\"rule\": \"", "\"rule\": \"-"),
      replaced(sound, "\"from\": \"caliper\"", "\"from\": \"guess\""),
      replaced(sound, "\"block_mm\": 0.24", "\"block_mm\": -0.24"),
      replaced(sound, "\"creep\": null", "\"creep\": 0"),
      replaced(sound, "\"most\": 64", "\"most\": 0"),
      replaced(sound, "\"with_text\": null,", ""),
  };
  for (const std::string &record : spoiled) CHECK(refused({record}) == 1);
}

TEST_CASE("figures are not rounded") {
  const std::string made = record_of(test::record_book());
  // 2480 / (210 / 25.4), and 3508 / (297.05 / 25.4) = 299.958, the smaller one; both as short as doubles
  // allow
  CHECK(made.find("\"placed_width_mm\": 210.0,") != std::string::npos);
  const std::string key = "\"effective_ppi\": ";
  const auto at = made.find(key);
  REQUIRE(at != std::string::npos);
  CHECK(std::stod(made.substr(at + key.size())) == Approx(3508 / (297.05 / 25.4)).epsilon(1e-14));
}

TEST_CASE("the record has a date only when it is given one") {
  const Checked book = test::record_book();
  struct Case {
    std::optional<std::int64_t> seconds;
    std::string line;
  };
  for (const Case &c : std::vector<Case>{{std::nullopt, "\"made_at\": null,"},
                                         {0, "\"made_at\": \"1970-01-01T00:00:00Z\","},
                                         {951'782'400, "\"made_at\": \"2000-02-29T00:00:00Z\","},
                                         {253'402'300'799, "\"made_at\": \"9999-12-31T23:59:59Z\","}}) {
    record::RecordOptions dated = options;
    dated.made_at = c.seconds;
    CHECK(record_text(book.evidence, book.findings, dated).find(c.line) != std::string::npos);
  }
}

TEST_CASE("no folder of the machine and no contributor's name is told") {
  const std::string made = record_of(test::record_book());
  for (const char *word : {"somebody", "at home", "Zofia", "example.org"}) {
    INFO(word);
    CHECK(made.find(word) == std::string::npos);
  }
}

TEST_CASE("names that are not UTF-8 are written with a replacement character") {
  Checked book = test::record_book();
  book.evidence.book.source = "/tmp/\xff.xml";
  book.evidence.book.pictures[0].file = "sc\xc3.tif";
  const std::string made = record_of(book);
  CHECK(made.find("\"file\": \"\xEF\xBF\xBD.xml\"") != std::string::npos);
  CHECK(made.find("\"file\": \"sc\xEF\xBF\xBD.tif\"") != std::string::npos);
  CHECK(refused({made}) == 0);
}

TEST_CASE("every key of the schema is described") {
  const std::string schema = content_of(STONEPROOF_SOURCE_DIR "/schema/record.schema.json");
  const std::string words = content_of(STONEPROOF_SOURCE_DIR "/schema/record.md");
  std::istringstream made(record_of(test::record_book()));
  std::size_t keys = 0;
  for (std::string line; std::getline(made, line);) {
    const auto begin = line.find('"'), end = line.find("\": ");
    if (begin == std::string::npos || end == std::string::npos) continue;
    const std::string key = line.substr(begin, end + 1 - begin);
    INFO(key);
    CHECK(schema.find(key + ":") != std::string::npos);
    CHECK((words.find(key) != std::string::npos ||
           words.find("`" + key.substr(1, key.size() - 2) + "`") != std::string::npos));
    ++keys;
  }
  CHECK(keys > 100);
}
