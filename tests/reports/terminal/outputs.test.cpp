#include "tests/reports/terminal/album.h"

#include <sys/stat.h>

using namespace stoneproof::test;

namespace {

/// Everything in a folder, with its content, to see that nothing came, went or changed.
std::map<std::string, std::string> all_files(const fs::path &folder) {
  std::map<std::string, std::string> files;
  for (const auto &entry : fs::recursive_directory_iterator(folder))
    files[entry.path().string()] = fs::is_regular_file(entry.path()) ? content_of(entry.path()) : "";
  return files;
}

} // namespace

TEST_CASE("an output never replaces an input or the other output") {
  const AlbumFolder album;
  write_file(album.path / "printer.xml", run(album.path, {"press"}).out);
  std::string sheet = run(album.path, {"press"}).out;
  sheet.replace(sheet.find("<ink "), 5, "<profile file=\"press.icc\" difference=\"5\" share=\"10%\"/><ink ");
  write_file(album.path / "colours.xml", sheet);
  fs::copy_file("/usr/share/color/icc/ghostscript/default_cmyk.icc",
                album.path / "press.icc"); // libgs-common
  write_file(album.path / "gone.xml", album_xml("    <picture id=\"gone\" file=\"scans/gone.tif\"/>\n", ""));
  fs::create_hard_link(album.path / "album.xml", album.path / "hard.pdf");
  fs::create_symlink("album.xml", album.path / "soft.pdf");
  fs::create_symlink("scans", album.path / "other");
  fs::create_hard_link(album.path / "scans/harbour.tif", album.path / "hard.tif");
  const std::string book = "this output would replace an input, the description of the book";
  const std::string picture = "this output would replace an input, a picture of the book";
  struct Case {
    Words words;
    std::string err;
  };
  const std::string rename = "\n  Give the output another name.\n";
  for (const Case &c : std::vector<Case>{
           {{"album.xml", "--out", "album.xml"}, "album.xml: " + book + rename},
           {{"album.xml", "--record", "album.xml"}, "album.xml: " + book + rename},
           {{"album.xml", "--out", "./scans/../album.xml"}, "./scans/../album.xml: " + book + rename},
           {{"album.xml", "--out", "hard.pdf"}, "hard.pdf: " + book + rename},
           {{"album.xml", "--out", "soft.pdf"}, "soft.pdf: " + book + rename},
           {{"soft.pdf", "--out", "album.xml"}, "album.xml: " + book + rename},
           {{"album.xml", "--out", "scans/harbour.tif"}, "scans/harbour.tif: " + picture + rename},
           {{"album.xml", "--record", "other/harbour.tif"}, "other/harbour.tif: " + picture + rename},
           {{"album.xml", "--record", "hard.tif"}, "hard.tif: " + picture + rename},
           {{"gone.xml", "--out", "other/gone.tif"}, "other/gone.tif: " + picture + rename},
           {{"album.xml", "--press", "printer.xml", "--out", "printer.xml"},
            "printer.xml: this output would replace an input, the press sheet" + rename},
           {{"album.xml", "--press", "colours.xml", "--out", "press.icc"},
            "press.icc: this output would replace an input, the press's colour profile" + rename},
           {{"album.xml", "--out", "same", "--record", "./same"},
            "./same: the proof and the record would be the same file\n  Give one of them another name.\n"},
           {{"album.xml", "--out", "album.record.json"},
            "album.record.json: the proof and the record would be the same file\n  Give one of them another "
            "name.\n"},
       }) {
    const auto before = all_files(album.path);
    Words words = {"proof"};
    words.insert(words.end(), c.words.begin(), c.words.end());
    const Ran ran = run(album.path, words);
    CHECK(ran.err == c.err);
    CHECK(ran.out.empty());
    CHECK(ran.status == 2);
    CHECK(all_files(album.path) == before);
  }
}

// The tests may run as root, whom no mode of a folder stops; a missing folder and a file in its place stop
// everybody.
TEST_CASE("an output without a place is told before the pictures are read") {
  const AlbumFolder album;
  write_file(album.path / "file", "x");
  fs::create_directory(album.path / "folder");
  REQUIRE(mkfifo((album.path / "pipe").c_str(), 0600) == 0);
  struct Case {
    Words words;
    std::string err;
  };
  for (const Case &c : std::vector<Case>{
           {{"--out", "none/a.pdf"},
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
           {{"--record", "none/a.json"},
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
           {{"--out", "none/a.pdf", "--record", "none/a.json"},
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
           {{"--out", "file/a.pdf"}, "file: this is not a folder\n  Write to a folder.\n"},
           {{"--out", "folder"},
            "folder: a folder of this name is in the way\n  Give the output another name.\n"},
           {{"--out", "pipe"},
            "pipe: this is a device or a pipe, not a plain file\n  Give the output another name.\n"},
           {{"--record", "/dev/null"},
            "/dev/null: this is a device or a pipe, not a plain file\n  Give the output another name.\n"},
           {{"--out", std::string(300, 'n')},
            std::string(300, 'n') + ": the file name is too long\n  Give the output a shorter name.\n"},
           {{"--out", "file/a.pdf", "--record", "none/a.json"},
            "file: this is not a folder\n  Write to a folder.\n"
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
       }) {
    const auto before = all_files(album.path);
    Words words = {"proof", "album.xml"};
    words.insert(words.end(), c.words.begin(), c.words.end());
    const Ran ran = run(album.path, words);
    CHECK(ran.err == c.err);
    CHECK(ran.out.empty());
    CHECK(ran.status == 4);
    CHECK(all_files(album.path) == before);
  }
}

TEST_CASE("older outputs are replaced, and a link in their place is not followed") {
  const AlbumFolder album;
  write_file(album.path / "album.record.json", "old");
  write_file(album.path / "keep", "keep");
  fs::create_symlink("keep", album.path / "album.proof.pdf");
  CHECK(run(album.path, {"proof", "album.xml"}).status == 0);
  CHECK(content_of(album.path / "keep") == "keep");
  CHECK(content_of(album.path / "album.proof.pdf").substr(0, 5) == "%PDF-");
  CHECK(content_of(album.path / "album.record.json").substr(0, 2) == "{\n");
}
