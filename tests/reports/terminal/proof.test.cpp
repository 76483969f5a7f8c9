#include "tests/reports/terminal/album.h"
#include "tests/support/programs.h"

#include <csignal>
#include <sys/stat.h>

using namespace stoneproof::test;

namespace {

const std::string press_lines =
    "Checked against the press sheet “Common practice” (built in). The printer’s own\n"
    "specification has the last word.\n";

} // namespace

TEST_CASE("a clear book") {
  const AlbumFolder album;
  const Untouched book(album.path / "album.xml"), picture(album.path / "scans/harbour.tif");
  const Ran ran = run(album.path, {"proof", "album.xml"});
  CHECK(ran.out == "The harbour\n"
                   "Clear: nothing holds this book back.\n"
                   "0 holds, 0 queries, 0 notes\n"
                   "\n"
                   "Proof   album.proof.pdf\n"
                   "Record  album.record.json\n" +
                       press_lines);
  CHECK(ran.err.empty());
  CHECK(ran.status == 0);
  CHECK(content_of(album.path / "album.proof.pdf").substr(0, 5) == "%PDF-");
  CHECK(book.still());
  CHECK(picture.still());
}

TEST_CASE("a held book") {
  const AlbumFolder album;
  const Ran ran = run(album.path, {"proof", "held.xml"});
  CHECK(ran.out == "The harbour\n"
                   "Held: 1 thing must be mended before this book goes to the printer.\n"
                   "1 hold, 0 queries, 0 notes\n"
                   "\n"
                   "Hold   Page 1  scans/harbour.tif\n"
                   "       Prints at 100 ppi; a photo needs at least 200 ppi, better 300 ppi.\n"
                   "\n"
                   "Proof   held.proof.pdf\n"
                   "Record  held.record.json\n" +
                       press_lines);
  CHECK(ran.err.empty());
  CHECK(ran.status == 1);
}

TEST_CASE("a picture that cannot be used holds its frames, and the book is proofed all the same") {
  const AlbumFolder album;
  write_file(album.path / "empty.tif", "");
  write_file(album.path / "words.tif", "these are words");
  write_file(album.path / "cut.tif", gray_tiff(600, 400).substr(0, 100'000));
  fs::create_directory(album.path / "folder.tif");
  REQUIRE(mkfifo((album.path / "pipe.tif").c_str(), 0600) == 0);
  std::string pictures, frames;
  for (const char *name : {"empty", "words", "cut", "folder", "pipe", "gone"}) {
    pictures += "    <picture id=\"" + std::string(name) + "\" file=\"" + name + ".tif\"/>\n";
    frames += "      <frame id=\"f-" + std::string(name) + "\" picture=\"" + name +
              "\" x=\"20mm\" y=\"20mm\" width=\"2in\" height=\"1.3333in\"/>\n";
  }
  write_file(album.path / "broken.xml", album_xml(pictures, frames));
  const Ran ran = run(album.path, {"proof", "broken.xml"});
  CHECK(ran.status == 1);
  CHECK(ran.err.empty());
  CHECK(ran.out.find("6 holds, 0 queries, 0 notes\n") != std::string::npos);
  const std::string record = content_of(album.path / "broken.record.json");
  for (const char *name : {"empty.tif", "words.tif", "cut.tif", "folder.tif", "pipe.tif", "gone.tif"}) {
    INFO(name);
    const auto listed = record.find("\"file\": \"" + std::string(name) + "\"");
    REQUIRE(listed != std::string::npos);
    const auto fault = record.find("\"fault\": ", listed);
    CHECK(record.substr(fault, 10) == "\"fault\": \"");
  }
  CHECK(content_of(album.path / "broken.proof.pdf").substr(0, 5) == "%PDF-");
}

TEST_CASE("limits on pictures are kept") {
  const AlbumFolder album;
  const Ran ran = run(album.path, {"proof", "album.xml", "--most-pixels", "239999"});
  CHECK(ran.status == 1);
  CHECK(ran.out.find("the picture claims 600 × 400 pixels") != std::string::npos);
  CHECK(run(album.path, {"proof", "album.xml", "--most-pixels", "240000"}).status == 0);
}

TEST_CASE("the same inputs give the same bytes, wherever they lie and however many threads work") {
  const AlbumFolder first, second;
  std::vector<std::string> proofs, records;
  fs::create_directory(first.path / "out");
  for (const auto &[folder, words] : std::vector<std::pair<fs::path, Words>>{
           {first.path, {"proof", "held.xml"}},
           {first.path, {"proof", "held.xml", "--jobs", "1"}},
           {second.path, {"proof", (second.path / "held.xml").string(), "--jobs", "7"}},
           {first.path / "out", {"proof", "../held.xml"}},
       }) {
    REQUIRE(run(folder, words).status == 1);
    const fs::path beside = folder.filename() == "out" ? folder.parent_path() : folder;
    proofs.push_back(content_of(beside / "held.proof.pdf"));
    records.push_back(content_of(beside / "held.record.json"));
  }
  for (std::size_t i = 1; i < proofs.size(); ++i) {
    CHECK(proofs[i] == proofs[0]);
    CHECK(records[i] == records[0]);
  }
}

TEST_CASE("a date comes in with SOURCE_DATE_EPOCH only") {
  const AlbumFolder album;
  REQUIRE(run(album.path, {"proof", "album.xml"}).status == 0);
  const std::string without = content_of(album.path / "album.proof.pdf");
  CHECK(without.find("/CreationDate") == std::string::npos);
  REQUIRE(run(album.path, {"proof", "album.xml"}, {{"SOURCE_DATE_EPOCH", "951782400"}}).status == 0);
  CHECK(content_of(album.path / "album.proof.pdf") != without);
  CHECK(content_of(album.path / "album.record.json").find("\"made_at\": \"2000-02-29T00:00:00Z\"") !=
        std::string::npos);
}

TEST_CASE("the proof is one to be kept, and carries the record") {
  const AlbumFolder album;
  run(album.path, {"proof", "held.xml"});
  const std::string proof = (album.path / "held.proof.pdf").string();
  run_command("python3 " STONEPROOF_SOURCE_DIR "/tests/reports/pdf/archive.py " + proof);
  run_command("pdfdetach -savefile held.record.json -o " + (album.path / "out.json").string() + " " + proof);
  CHECK(content_of(album.path / "out.json") == content_of(album.path / "held.record.json"));
}

TEST_CASE("--json prints the record that is also written") {
  const AlbumFolder album;
  const Ran ran = run(album.path, {"proof", "held.xml", "--json"});
  CHECK(ran.status == 1);
  CHECK(ran.err.empty());
  CHECK(ran.out == content_of(album.path / "held.record.json"));
  CHECK(fs::exists(album.path / "held.proof.pdf"));
}

TEST_CASE("outputs are named after the book and lie beside it, or where they were sent") {
  const AlbumFolder album;
  const fs::path folder = album.path / "Nasze zdjęcia";
  write_file(folder / "Żółkiewscy 1931.wersja 2.xml",
             album_xml("    <picture id=\"a\" file=\"łódź na plaży.tif\"/>\n", ""));
  write_file(folder / "łódź na plaży.tif", gray_tiff(30, 20));
  const Ran ran = run(album.path, {"proof", "Nasze zdjęcia/Żółkiewscy 1931.wersja 2.xml"});
  CHECK(ran.status == 0);
  CHECK(ran.out.find("Proof   Nasze zdjęcia/Żółkiewscy 1931.wersja 2.proof.pdf\n") != std::string::npos);
  CHECK(ran.out.find("Page") == std::string::npos);
  CHECK(ran.out.find("łódź na plaży.tif") != std::string::npos);
  CHECK(fs::exists(folder / "Żółkiewscy 1931.wersja 2.proof.pdf"));
  CHECK(fs::exists(folder / "Żółkiewscy 1931.wersja 2.record.json"));

  CHECK(run(album.path, {"proof", "album.xml", "--out", "a b.pdf", "--record", "ć.json"}).status == 0);
  CHECK(fs::exists(album.path / "a b.pdf"));
  CHECK(fs::exists(album.path / "ć.json"));
  fs::copy(album.path / "album.xml", album.path / "--odd.xml");
  CHECK(run(album.path, {"proof", "--", "--odd.xml"}).status == 0);
  CHECK(fs::exists(album.path / "--odd.proof.pdf"));
}

TEST_CASE("a terminal gets a progress bar and a bold verdict, a pipe neither") {
  const AlbumFolder album;
  const std::string verdict = "Clear: nothing holds this book back.";
  const Ran shown = run_on_terminal(album.path, {"proof", "album.xml"}, 80);
  CHECK(shown.status == 0);
  CHECK(shown.out.find("] 1 of 1 pictures\r\x1b[K") != std::string::npos);
  CHECK(shown.out.find("\x1b[1m" + verdict + "\x1b[0m") != std::string::npos);

  const Ran plain = run_on_terminal(album.path, {"proof", "album.xml"}, 80, {{"NO_COLOR", "1"}});
  CHECK(plain.out.find("\x1b[1m") == std::string::npos);
  CHECK(plain.out.find("\n" + verdict + "\r\n") != std::string::npos);
  const Ran empty = run_on_terminal(album.path, {"proof", "album.xml"}, 80, {{"NO_COLOR", ""}});
  CHECK(empty.out.find("\x1b[1m" + verdict) != std::string::npos);

  const Ran piped = run(album.path, {"proof", "album.xml"});
  CHECK(piped.out.find('\x1b') == std::string::npos);
  CHECK(piped.err.empty());
}

TEST_CASE("a reader that goes away ends the program without a word") {
  const AlbumFolder album;
  std::signal(SIGPIPE, SIG_DFL); // what ran this test may have ignored it
  const std::string script = "cd '" + album.path.string() +
                             "'; { '" STONEPROOF_PROGRAM
                             "' proof held.xml --json; echo $? > status; } 2> err | true";
  write_file(album.path / "go.sh", script);
  REQUIRE(std::system(("bash '" + (album.path / "go.sh").string() + "'").c_str()) == 0);
  CHECK(content_of(album.path / "err").empty());
  CHECK(content_of(album.path / "status") == std::to_string(128 + SIGPIPE) + "\n");
  CHECK(fs::exists(album.path / "held.proof.pdf"));
  CHECK(fs::exists(album.path / "held.record.json"));
}

TEST_CASE("a run that is stopped leaves the older outputs as they were, and nothing half") {
  const AlbumFolder album;
  std::string pictures, frames;
  write_file(album.path / "large.tif", gray_tiff(6000, 4000));
  for (int i = 0; i < 40; ++i) {
    const std::string id = std::to_string(i);
    pictures += "    <picture id=\"p" + id + "\" file=\"large.tif\"/>\n";
    frames += "      <frame id=\"f" + id + "\" picture=\"p" + id +
              "\" x=\"20mm\" y=\"20mm\" width=\"6in\" height=\"4in\"/>\n";
  }
  write_file(album.path / "long.xml", album_xml(pictures, frames));
  write_file(album.path / "long.proof.pdf", "older proof");
  write_file(album.path / "long.record.json", "older record");
  const pid_t child = fork();
  if (child == 0) become_program(album.path, {"proof", "long.xml", "--jobs", "1"}, {});
  usleep(200'000);
  kill(child, SIGINT);
  CHECK(status_of(child) == 128 + SIGINT);
  CHECK(content_of(album.path / "long.proof.pdf") == "older proof");
  CHECK(content_of(album.path / "long.record.json") == "older record");
  for (const auto &entry : fs::directory_iterator(album.path)) CHECK(entry.path().extension() != ".part");
}
