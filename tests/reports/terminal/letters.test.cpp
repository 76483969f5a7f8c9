#include "tests/reports/terminal/album.h"

using namespace stoneproof::test;

namespace {

std::string person(const std::string &id, const std::string &name, const std::string &more = "") {
  return "    <contributor id=\"" + id + "\" name=\"" + name + "\" " + more + "/>\n";
}

/// scans/harbour.tif, 600 x 400 px, as pictures of several people, each 6 x 4 in: 100 ppi. `small` is printed
/// so that it is good enough.
std::string letters_xml(const std::string &people, const std::vector<std::string> &owners, bool small) {
  std::string pictures, frames;
  for (const std::string &owner : owners) {
    pictures += "    <picture id=\"of-" + owner + "\" file=\"scans/harbour.tif\"" +
                (owner.empty() ? "" : " contributor=\"" + owner + "\"") +
                "><original kind=\"print\" width=\"6in\" height=\"4in\"/></picture>\n";
    frames += "      <frame id=\"f-" + owner + "\" picture=\"of-" + owner + "\" x=\"20mm\" y=\"20mm\" " +
              (small ? "width=\"2in\" height=\"1.3333in\"/>\n" : "width=\"6in\" height=\"4in\"/>\n");
  }
  std::string xml = album_xml(pictures, frames);
  return xml.insert(xml.find("  <pictures>"), "  <contributors>\n" + people + "  </contributors>\n");
}

std::string words_of(const Folder &folder, const std::string &file) {
  CHECK(print_of("qpdf --check '" + folder.file(file) + "' 2>&1").status == 0);
  std::string words = print_of("pdftotext '" + folder.file(file) + "' -").out;
  for (char &c : words)
    if (c == '\n') c = ' ';
  return words;
}

const std::string of_letters = "  Run stoneproof letters --help to see how it is used.\n";

struct LettersFolder : Folder {
  LettersFolder() {
    write_file(path / "scans/harbour.tif", gray_tiff(600, 400));
    write_file(path / "book.xml",
               letters_xml(person("zaneta", "Żaneta Wróblak-Śliwińska", "language=\"de\"") +
                               person("eleni", "Ελένη Καλφάτη") + person("idle", "Ida Idle"),
                           {"zaneta", "eleni"}, false));
  }
};

} // namespace

TEST_CASE("each contributor with something to do gets a letter in their language, the others none") {
  const LettersFolder folder;
  const Untouched book(folder / "book.xml"), scan(folder / "scans/harbour.tif");
  const Ran ran = run(folder.path, {"letters", "book.xml", "--quick"});
  CHECK(ran.err.empty());
  CHECK(ran.out == "The harbour\n"
                   "2 letters written.\n"
                   "\n"
                   "Żaneta Wróblak-Śliwińska.letter.pdf  1 picture\n"
                   "Ελένη Καλφάτη.letter.pdf  1 picture\n"
                   "\n"
                   "Nothing to do, so no letter: Ida Idle.\n"
                   "\n"
                   "Letters  book.letters\n");
  CHECK(ran.status == 0);
  CHECK(book.still());
  CHECK(scan.still());
  CHECK_FALSE(fs::exists(folder / "book.letters/Ida Idle.letter.pdf"));
  const std::string german = words_of(folder, "book.letters/Żaneta Wróblak-Śliwińska.letter.pdf");
  for (const char *said :
       {"Guten Tag Żaneta Wróblak-Śliwińska,", "Scannen Sie den Papierabzug noch einmal mit 300 dpi",
        "Antwortzettel", "Auf Seite 1, gedruckt 15,2 × 10,2 cm."}) {
    CAPTURE(german, said);
    CHECK(german.find(said) != std::string::npos);
  }
  const std::string english = words_of(folder, "book.letters/Ελένη Καλφάτη.letter.pdf");
  for (const char *said :
       {"Dear Ελένη Καλφάτη,", "Scan the paper print again at 300 dpi, and save it as TIFF.",
        "At the size at which the book shows it, this file would look blurred or jagged.",
        "Your file: harbour.tif", "Reply slip", "Ask a qualified conservator first."}) {
    CAPTURE(english, said);
    CHECK(english.find(said) != std::string::npos);
  }
}

TEST_CASE("letters go where they are asked to, also with spaces, and the same inputs give the same bytes") {
  const LettersFolder folder;
  fs::create_directory(folder / "Listy do rodziny");
  const Ran ran =
      run(folder.path, {"letters", "book.xml", "--quick", "--dir", "Listy do rodziny/żółte", "--jobs", "1"});
  CHECK(ran.status == 0);
  run(folder.path, {"letters", "book.xml", "--quick", "--dir", "again"}, {{"TZ", "Asia/Tokyo"}});
  const std::string name = "Ελένη Καλφάτη.letter.pdf";
  CHECK(content_of(folder / "again" / name).substr(0, 5) == "%PDF-");
  CHECK(content_of(folder / "again" / name) == content_of(folder / "Listy do rodziny/żółte" / name));
}

TEST_CASE("nobody has anything to do: no letter, and an old one that lies there is told of") {
  const LettersFolder folder;
  write_file(folder / "fine.xml", letters_xml(person("a", "Anna"), {"a"}, true));
  write_file(folder / "fine.letters/Anna.letter.pdf", "old");
  const Ran ran = run(folder.path, {"letters", "fine.xml", "--quick"});
  CHECK(ran.out == "The harbour\nNo letter is needed: no contributor has anything to do.\n\n"
                   "An older letter lies there and no longer holds: Anna.\n");
  CHECK(ran.status == 0);
  CHECK(content_of(folder / "fine.letters/Anna.letter.pdf") == "old");
}

TEST_CASE("what the letters ask for is written as a table too, and agrees with the record") {
  const LettersFolder folder;
  const Ran ran = run(folder.path, {"letters", "book.xml", "--quick", "--csv", "rescans.csv"});
  CHECK(ran.err.empty());
  CHECK(ran.status == 0);
  CHECK(ran.out.ends_with("\nLetters  book.letters\nTable    rescans.csv\n"));
  run(folder.path, {"proof", "book.xml", "--quick"});
  const std::string said =
      print_of("cd '" + folder.path.string() +
               "' && /usr/bin/python3 '" STONEPROOF_SOURCE_DIR
               "/tests/reports/terminal/check_rescans.py' rescans.csv book.record.json 2>&1")
          .out;
  CHECK(said == "2 pictures are asked for\n");
  write_file(folder / "fine.xml", letters_xml(person("a", "Anna"), {"a"}, true));
  const Ran fine = run(folder.path, {"letters", "fine.xml", "--quick", "--csv", "rescans.csv"});
  CHECK(fine.out ==
        "The harbour\nNo letter is needed: no contributor has anything to do.\n\nTable    rescans.csv\n");
  const std::string table = content_of(folder / "rescans.csv");
  CHECK(table.starts_with("contributor,"));
  CHECK(std::count(table.begin(), table.end(), '\n') == 1);
}

TEST_CASE("the table never replaces an input or a letter") {
  const LettersFolder folder;
  const Untouched book(folder / "book.xml"), scan(folder / "scans/harbour.tif");
  const auto refusal = [&](const std::string &csv) {
    const Ran ran = run(folder.path, {"letters", "book.xml", "--quick", "--csv", csv});
    CHECK(ran.status == 2);
    CHECK(ran.out.empty());
    return ran.err;
  };
  const std::string rename = "\n  Give the output another name.\n";
  CHECK(refusal("book.xml") ==
        "book.xml: this output would replace an input, the description of the book" + rename);
  CHECK(refusal("scans/harbour.tif") ==
        "scans/harbour.tif: this output would replace an input, a picture of the book" + rename);
  CHECK(refusal("book.letters/Ida Idle.letter.pdf") ==
        "book.letters/Ida Idle.letter.pdf: the table and a letter would be the same file\n  Give one of them "
        "another name.\n");
  CHECK(book.still());
  CHECK(scan.still());
}

TEST_CASE("two people of one name get two letters; a picture of nobody is told of") {
  const LettersFolder folder;
  write_file(folder / "twins.xml",
             letters_xml(person("a", "A/B") + person("b", "a:b"), {"a", "b", "nobody"}, false));
  std::string xml = content_of(folder / "twins.xml");
  xml.erase(xml.find(" contributor=\"nobody\""), std::string(" contributor=\"nobody\"").size());
  write_file(folder / "twins.xml", xml);
  const Ran ran = run(folder.path, {"letters", "twins.xml", "--quick"});
  CHECK(ran.err.empty());
  CHECK(ran.status == 0);
  CHECK(fs::exists(folder / "twins.letters/A-B.letter.pdf"));
  CHECK(fs::exists(folder / "twins.letters/a-b 2.letter.pdf"));
  CHECK(ran.out.find("1 picture needs something done, but the book names no contributor for it.\n") !=
        std::string::npos);
}

TEST_CASE("what is wrong with a letters' command line, inputs or outputs is told, and nothing is written") {
  const LettersFolder folder;
  write_file(folder / "file", "x");
  write_file(folder / "bad.xml", letters_xml(person("a", "Anna", "language=\"no tag\""), {"a"}, false));
  fs::create_directories(folder / "taken/Ελένη Καλφάτη.letter.pdf");
  struct Case {
    Words words;
    int status;
    std::string err;
  };
  for (const Case &c : std::vector<Case>{
           {{"letters"}, 2, "stoneproof: the BOOK to write letters for is missing\n" + of_letters},
           {{"letters", "book.xml", "--dir"}, 2, "stoneproof: --dir wants a value: FOLDER\n" + of_letters},
           {{"letters", "book.xml", "--json"}, 2, "stoneproof: there is no option \"--json\"\n" + of_letters},
           {{"letters", "gone.xml"}, 3, "gone.xml: there is no such file\n  Check the path.\n"},
           {{"letters", "book.xml", "--dir", "file"},
            4,
            "file: this is not a folder\n  Write to a folder.\n"},
           {{"letters", "book.xml", "--dir", "none/below"},
            4,
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
           {{"letters", "book.xml", "--dir", "/proc"}, 4, ""},
           {{"letters", "book.xml", "--dir", "taken"}, 4, ""},
       }) {
    CAPTURE(c.words);
    const Ran ran = run(folder.path, c.words);
    if (!c.err.empty()) CHECK(ran.err == c.err);
    CHECK_FALSE(ran.err.empty());
    CHECK(ran.out.empty());
    CHECK(ran.status == c.status);
  }
  const Ran bad = run(folder.path, {"letters", "bad.xml"});
  CHECK(bad.status == 3);
  CHECK(bad.err.find("bad.xml:8:") == 0);
  CHECK_FALSE(fs::exists(folder / "book.letters"));
  CHECK(run(folder.path, {"letters", "book.xml", "--quick"}, {}, "/dev/full").status == 4);
}

TEST_CASE("letters to very many people fit a screen") {
  const LettersFolder folder;
  std::string people;
  std::vector<std::string> owners;
  for (int i = 0; i < 40; ++i) {
    owners.push_back("p" + std::to_string(i));
    people += person(owners.back(), "Person " + std::to_string(i));
  }
  write_file(folder / "many.xml", letters_xml(people, owners, false));
  const Ran ran = run(folder.path, {"letters", "many.xml", "--quick"});
  CHECK(ran.status == 0);
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') <= 23);
  CHECK(ran.out.find("\nand ") != std::string::npos);
  CHECK(ran.out.find("40 letters written.\n") != std::string::npos);
}
