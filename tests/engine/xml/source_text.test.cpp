#include "engine/xml/source_text.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <sys/stat.h>

using namespace stoneproof;
using stoneproof::test::Folder;

TEST_CASE("a byte's place is its line and its column in characters") {
  //                            0  12 3 4   6 7   9 10
  const SourceText text("a.xml", "ab\n\tc\r\n\xC5\xBB"
                                 "d\re");
  struct Case {
    std::size_t offset;
    SourcePlace place;
  };
  const Case cases[] = {{0, {1, 1}}, {1, {1, 2}}, {2, {1, 3}},  {3, {2, 1}},  {4, {2, 2}},
                        {7, {3, 1}}, {9, {3, 2}}, {10, {3, 3}}, {11, {4, 1}}, {12, {4, 2}}};
  for (const Case &c : cases) {
    INFO(c.offset);
    CHECK(text.place_of(c.offset) == c.place);
  }
}

TEST_CASE("columns hold in a line of many blocks") {
  std::string line;
  for (int i = 0; i < 20000; ++i) line += "\xC5\xBB"; // two bytes each
  const SourceText text("a.xml", "x\n" + line);
  for (const int n : {0, 1, 126, 127, 128, 4095, 4096, 19999})
    CHECK(text.place_of(2 + 2 * static_cast<std::size_t>(n)) == SourcePlace{2, n + 1});
}

TEST_CASE("a fault carries its line, of a very long one the part around it") {
  const SourceText text("a.xml", "one\r\n  two\n" + std::string(1000, 'a') + "!" + std::string(1000, 'b'));
  const SourceFault near = text.fault_at({2, 3}, "w", "r");
  CHECK(near.fault == Fault{"w", "a.xml:2:3", "r"});
  CHECK(near.source_line == "  two");
  CHECK(near.column == 3);
  const SourceFault far = text.fault_at({3, 1001}, "w", "r");
  CHECK(far.fault.where == "a.xml:3:1001");
  CHECK(far.source_line == std::string(200, 'a') + "!" + std::string(199, 'b'));
  CHECK(far.column == 201);
}

TEST_CASE("a byte order mark is taken off") {
  const SourceText text("a.xml", "\xEF\xBB\xBF<a/>");
  CHECK(text.text() == "<a/>");
  CHECK(text.place_of(0) == SourcePlace{1, 1});
}

TEST_CASE("what is no readable file is refused in one sentence") {
  const Folder folder;
  const auto refused = [](const std::filesystem::path &file, std::size_t limit = most_source_bytes) {
    const auto outcome = read_source(file, limit);
    REQUIRE_FALSE(outcome);
    CHECK(outcome.fault().where == file.string());
    return outcome.fault().what;
  };
  CHECK(refused(folder.path / "none.xml") == "there is no such file");
  CHECK(refused(folder.path) == "this is a folder, not a file");
  CHECK(refused(test::write_file(folder.path / "empty.xml", "")) == "the file is empty");
  CHECK(refused(test::write_file(folder.path / "wide.xml", std::string("\xFF\xFE<\0", 4))) ==
        "the file is UTF-16; only UTF-8 is read");
  CHECK(refused(test::write_file(folder.path / "large.xml", "<abcd/>"), 6) ==
        "the file is larger than 6 bytes, the most that is read");
  CHECK(read_source(test::write_file(folder.path / "fits.xml", "<abcd/>"), 7));
  const auto fifo = folder.path / "fifo.xml";
  REQUIRE(mkfifo(fifo.c_str(), 0600) == 0);
  CHECK(refused(fifo) == "this is not a regular file"); // and does not wait for a writer
  CHECK(refused("/dev/zero") == "this is not a regular file");
}

TEST_CASE("a file of 100 MB is refused before it is read") {
  const Folder folder;
  const auto file = test::write_file(folder.path / "huge.xml", "<a ");
  std::filesystem::resize_file(file, 100'000'000);
  const auto outcome = read_source(file);
  REQUIRE_FALSE(outcome);
  CHECK(outcome.fault().what == "the file is larger than 67108864 bytes, the most that is read");
}

TEST_CASE("a path may have spaces and letters of any script") {
  const Folder folder;
  const auto file = test::write_file(folder.path / "moja ksi\xC4\x85\xC5\xBCka.xml", "<a/>");
  const auto outcome = read_source(file);
  REQUIRE(outcome);
  CHECK(outcome.value().name() == file.string());
}
