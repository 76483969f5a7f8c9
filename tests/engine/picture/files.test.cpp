// What is refused before a byte of it is judged, and the faults of every kind to the byte.
#include "tests/support/files.h"
#include "engine/picture/facts.h"
#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"

#include <sys/stat.h>
#include <unistd.h>

using namespace stoneproof;
using made::Bytes;

namespace {

Bytes bytes_of(const std::string &text) { return {text.begin(), text.end()}; }

const std::string export_it = "Export the picture as TIFF, or as JPEG at best quality.";
const std::string copy_again = "Copy the picture again from where it came, or ask for it again.";

} // namespace

TEST_CASE("a path that is not a picture file gives one clear fault") {
  const test::Folder folder;
  std::filesystem::create_directory(folder / "folder.jpg");
  REQUIRE(::mkfifo((folder / "pipe.jpg").c_str(), 0600) == 0);
  made::write_bytes(folder / "empty.jpg", {});
  struct Row {
    std::filesystem::path file;
    std::string what, remedy;
  };
  const Row rows[] = {
      {folder / "none.jpg", "there is no such file", "Put the picture at this path, or correct the path."},
      {folder / "empty.jpg" / "x.jpg", "there is no such file",
       "Put the picture at this path, or correct the path."},
      {folder / "folder.jpg", "this is a folder, not a picture file", "Name the picture file itself."},
      {folder / "pipe.jpg", "this is a pipe, not a picture file", "Name the picture file itself."},
      {"/dev/zero", "this is a device, not a picture file", "Name the picture file itself."},
      {folder / "empty.jpg", "the file is empty", copy_again},
  };
  for (const Row &row : rows) {
    CAPTURE(row.file.string());
    const auto facts = read_facts(row.file);
    REQUIRE_FALSE(facts);
    CHECK(facts.fault() == Fault{row.what, row.file.string(), row.remedy});
    const auto preview = read_preview(row.file, Facts{}, {});
    CHECK_FALSE(preview);
    const auto hash = sha256_of(row.file);
    REQUIRE_FALSE(hash);
    CHECK(hash.fault() == facts.fault());
  }
}

TEST_CASE("a file without the right to read it says so") {
  const test::Folder folder;
  made::write_bytes(folder / "locked.jpg", bytes_of("x"));
  std::filesystem::permissions(folder / "locked.jpg", std::filesystem::perms::none);
  std::filesystem::permissions(folder.path, std::filesystem::perms::all);
  const auto facts = [&] {
    const test::WithoutRoot nobody;
    return read_facts(folder / "locked.jpg");
  }();
  REQUIRE_FALSE(facts);
  CHECK(facts.fault() == Fault{"the file may not be read", (folder / "locked.jpg").string(),
                               "Give yourself the right to read it."});
}

TEST_CASE("the signature decides, not the name") {
  using namespace std::literals;
  const test::Folder folder;
  for (const std::string &bytes : {"RIFF\x24\0\0\0WAVE"s, "\xFF\xD8"s, "II*"s, "a\x01"s}) {
    made::write_bytes(folder / "scan.jpg", bytes_of(bytes));
    const auto facts = read_facts(folder / "scan.jpg");
    REQUIRE_FALSE(facts);
    CHECK(facts.fault() == Fault{"the file is no picture of a known kind, whatever its name says",
                                 (folder / "scan.jpg").string(), export_it});
  }
  made::write_png(folder / "lies.jpg", made::busy(4, 4, 3));
  const auto facts = read_facts(folder / "lies.jpg");
  REQUIRE(facts);
  CHECK(facts.value().format == Format::png);
}

TEST_CASE("broken headers say what the library found") {
  using namespace std::literals;
  const test::Folder folder;
  struct Row {
    std::string bytes, what;
  };
  const Row rows[] = {
      {"\xFF\xD8\xFF"s, "the JPEG header is broken (JPEG datastream contains no image)"},
      {"\xFF\xD8\xFF\xD9"s, "the JPEG header is broken (JPEG datastream contains no image)"},
      {"\x89PNG\r\n\x1A\n"s, "the PNG header is broken (the file ends too early)"},
      {"II*\0"s, "the TIFF header is broken (Cannot read TIFF header)"},
      {"MM\0*\0\0\0\x08"s, "the TIFF header is broken (Can not read TIFF directory count)"},
  };
  for (const Row &row : rows) {
    CAPTURE(row.bytes);
    made::write_bytes(folder / "x", bytes_of(row.bytes));
    const auto facts = read_facts(folder / "x");
    REQUIRE_FALSE(facts);
    CHECK(facts.fault().what == row.what);
    CHECK(facts.fault() == Fault{row.what, (folder / "x").string(), copy_again});
  }
}

TEST_CASE("enormous claims are refused before anything is allocated") {
  const test::Folder folder;
  // A true header of one pixel, with the size rewritten to 40,000 x 40,000.
  made::write_jpeg(folder / "huge", made::busy(1, 1, 1));
  Bytes jpeg = made::read_bytes(folder / "huge");
  std::size_t frame = 0;
  while (!(jpeg[frame] == 0xFF && jpeg[frame + 1] == 0xC0)) ++frame;
  for (const std::size_t at : {frame + 5, frame + 7}) jpeg[at] = 40000 >> 8, jpeg[at + 1] = 40000 & 0xFF;
  made::write_bytes(folder / "huge", jpeg);
  const Fault expected{"the picture claims 40,000 × 40,000 pixels; the limit is 1,000,000,000 in all",
                       (folder / "huge").string(),
                       "Check that this size is meant; if it is, save a smaller copy."};
  auto facts = read_facts(folder / "huge");
  REQUIRE_FALSE(facts);
  CHECK(facts.fault() == expected);
  Facts claimed;
  claimed.size = {40000, 40000};
  const auto preview = read_preview(folder / "huge", claimed, {{0, 0, 40000, 40000}, 10, 10});
  REQUIRE_FALSE(preview);
  CHECK(preview.fault() == expected);

  // A TIFF of 40,000 x 40,000 whose strips are nowhere.
  made::write_bytes(folder / "huge", made::bare_tiff(40000, 40000, 0));
  facts = read_facts(folder / "huge");
  REQUIRE_FALSE(facts);
  CHECK(facts.fault() == expected);

  // The same limit is a setting, and one row over it is enough.
  made::write_png(folder / "small", made::busy(30, 41, 1), {.colour_type = 0});
  CHECK(read_facts(folder / "small", {.most_pixels = 30 * 41}));
  facts = read_facts(folder / "small", {.most_pixels = 30 * 40});
  REQUIRE_FALSE(facts);
  CHECK(facts.fault().what == "the picture claims 30 × 41 pixels; the limit is 1,200 in all");
}

TEST_CASE("SHA-256 of the example of FIPS 180-4 and of a file of several pieces") {
  const test::Folder folder;
  // "abc": FIPS 180-2 appendix B.1; one million times "a": appendix B.3.
  made::write_bytes(folder / "abc", bytes_of("abc"));
  CHECK(sha256_of(folder / "abc").value() ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256_of_text("abc") == sha256_of(folder / "abc").value());
  made::write_bytes(folder / "a", bytes_of(std::string(1'000'000, 'a')));
  CHECK(sha256_of(folder / "a").value() ==
        "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}
