#include "tests/reports/terminal/album.h"

#include <sys/stat.h>

using namespace stoneproof::test;

namespace {

const std::string press_lines =
    "Reckoned by the press sheet “Common practice” (built in). The printer’s own\n"
    "specification has the last word.\n";
const std::string of_plan = "  Run stoneproof plan --help to see how it is used.\n";

/// Two prints, a slide that no scanner is enough for, a drawing; no file of any of them.
const std::string pictures =
    "    <picture id=\"mill\" file=\"scans/młyn nad Świną.tif\"><original kind=\"print\" width=\"6in\" "
    "height=\"4in\"/></picture>\n"
    "    <picture id=\"wedding\" file=\"scans/wedding.tif\"><original kind=\"print\" width=\"6in\" "
    "height=\"4in\"/></picture>\n"
    "    <picture id=\"slide\" file=\"scans/slide.tif\"><original kind=\"slide\" width=\"36mm\" "
    "height=\"24mm\"/></picture>\n";
const std::string frames =
    "      <frame id=\"f1\" picture=\"mill\" x=\"20mm\" y=\"20mm\" width=\"3in\" height=\"2in\"/>\n"
    "      <frame id=\"f2\" picture=\"wedding\" x=\"20mm\" y=\"80mm\" width=\"6in\" height=\"4in\"/>\n"
    "      <frame id=\"f3\" picture=\"slide\" x=\"0in\" y=\"0in\" width=\"36in\" height=\"24in\"/>\n";

struct PlanFolder : Folder {
  PlanFolder() { write_file(path / "book.xml", album_xml(pictures, frames)); }
};

} // namespace

TEST_CASE("a plan is written before any scan exists") {
  const PlanFolder folder;
  const Untouched book(folder / "book.xml");
  const Ran ran = run(folder.path, {"plan", "book.xml"});
  CHECK(ran.err.empty());
  CHECK(ran.out == "The harbour\n"
                   "3 originals to scan or photograph: about 101 MB of files.\n"
                   "2 on a flatbed scanner, 1 of film.\n"
                   "\n"
                   "slide  Page 1, frame f3\n"
                   "  A slide of 36 × 24 mm would need 7620 ppi; usual scanners end at 4800 ppi.\n"
                   "  Print it no larger than 576 × 384 mm (now 914 × 610 mm), or choose another\n"
                   "  picture.\n"
                   "\n"
                   "Plan   book.plan.pdf\n"
                   "Table  book.plan.csv\n" +
                       press_lines);
  CHECK(ran.status == 0);
  CHECK(book.still());
  const Printed checked = print_of("qpdf --check '" + folder.file("book.plan.pdf") + "' 2>&1");
  CHECK(checked.status == 0);
  const std::string words = print_of("pdftotext -layout '" + folder.file("book.plan.pdf") + "' -").out;
  for (const char *said :
       {"150 ppi", "300 ppi", "4800 ppi", "młyn nad Świną.tif", "900 × 600 px", "How to scan"}) {
    CAPTURE(said);
    CHECK(words.find(said) != std::string::npos);
  }
  const std::string table = content_of(folder / "book.plan.csv");
  CHECK(table.find("\r\nmill,scans/młyn nad Świną.tif,") != std::string::npos);
  CHECK(table.find("\r\nslide,scans/slide.tif,,,photo,slide,36,24,beyond,film,300,7620,4800,") !=
        std::string::npos);
}

TEST_CASE("a file that is there with pixels enough is not scanned again") {
  const AlbumFolder album; // 600 x 400 px on 2 x 1.33 in
  const Ran ran = run(album.path, {"plan", "album.xml"});
  CHECK(ran.out == "The harbour\n"
                   "Nothing is left to scan.\n"
                   "1 has a file with pixels enough.\n"
                   "\n"
                   "Plan   album.plan.pdf\n"
                   "Table  album.plan.csv\n" +
                       press_lines);
  CHECK(ran.status == 0);
  CHECK(content_of(album.path / "album.plan.csv").find("at-hand") != std::string::npos);
}

TEST_CASE("outputs go where they are asked for, also into folders with spaces and Polish names") {
  const PlanFolder folder;
  fs::create_directory(folder / "Zdjęcia babci");
  fs::rename(folder / "book.xml", folder / "Zdjęcia babci/książka rodzinna.xml");
  CHECK(run(folder.path, {"plan", "Zdjęcia babci/książka rodzinna.xml"}).status == 0);
  CHECK(content_of(folder / "Zdjęcia babci/książka rodzinna.plan.pdf").substr(0, 5) == "%PDF-");
  const Ran ran = run(folder.path, {"plan", "Zdjęcia babci/książka rodzinna.xml", "--out",
                                    "Zdjęcia babci/a b.pdf", "--csv", "żółć.csv"});
  CHECK(ran.status == 0);
  CHECK(ran.out.find("Plan   Zdjęcia babci/a b.pdf\nTable  żółć.csv\n") != std::string::npos);
  CHECK(content_of(folder / "Zdjęcia babci/a b.pdf") ==
        content_of(folder / "Zdjęcia babci/książka rodzinna.plan.pdf"));
  CHECK(content_of(folder / "żółć.csv").substr(0, 8) == "picture,");
}

TEST_CASE("the printer's own densities are planned for") {
  const PlanFolder folder;
  std::string sheet = run(folder.path, {"press"}).out;
  const auto at = sheet.find("wanted=\"300ppi\"");
  REQUIRE(at != std::string::npos);
  write_file(folder / "printer.xml", sheet.replace(at, 15, "wanted=\"400ppi\""));
  const Ran ran = run(folder.path, {"plan", "book.xml", "--press", "printer.xml"});
  CHECK(ran.status == 0);
  CHECK(ran.out.find("(printer.xml)") != std::string::npos);
  CHECK(content_of(folder / "book.plan.csv").find("to-scan,flatbed,400,200,200,1200,800,") !=
        std::string::npos);
}

TEST_CASE("the same inputs give the same plan, dated only by SOURCE_DATE_EPOCH") {
  const PlanFolder folder;
  run(folder.path, {"plan", "book.xml"});
  run(folder.path, {"plan", "book.xml", "--out", "again.pdf", "--csv", "again.csv"}, {{"TZ", "Asia/Tokyo"}});
  CHECK(content_of(folder / "again.pdf") == content_of(folder / "book.plan.pdf"));
  CHECK(content_of(folder / "again.csv") == content_of(folder / "book.plan.csv"));
  CHECK(content_of(folder / "again.pdf").find("CreationDate") == std::string::npos);
  run(folder.path, {"plan", "book.xml"}, {{"SOURCE_DATE_EPOCH", "1000000000"}});
  CHECK(content_of(folder / "book.plan.pdf").find("D:20010909014640Z") != std::string::npos);
}

TEST_CASE("what is wrong with a plan's command line, inputs or outputs is told, and nothing is written") {
  const PlanFolder folder;
  write_file(folder / "file", "x");
  write_file(folder / "broken.xml", "<book");
  struct Case {
    Words words;
    int status;
    std::string err;
  };
  const std::string rename = "\n  Give the output another name.\n";
  for (const Case &c : std::vector<Case>{
           {{"plna", "book.xml"},
            2,
            "stoneproof: there is no verb \"plna\" (did you mean plan?)\n  Run stoneproof --help to see how "
            "it is "
            "used.\n"},
           {{"plan"}, 2, "stoneproof: the BOOK to plan for is missing\n" + of_plan},
           {{"plan", "book.xml", "--cvs", "x"},
            2,
            "stoneproof: there is no option \"--cvs\" (did you mean --csv?)\n" + of_plan},
           {{"plan", "book.xml", "--csv"}, 2, "stoneproof: --csv wants a value: FILE\n" + of_plan},
           {{"plan", "book.xml", "--out", "--csv"}, 2, "stoneproof: --out wants a value: FILE\n" + of_plan},
           {{"plan", "book.xml", "--json"}, 2, "stoneproof: there is no option \"--json\"\n" + of_plan},
           {{"plan", "book.xml", "more"}, 2, "stoneproof: nothing is expected at \"more\"\n" + of_plan},
           {{"plan", "gone.xml"}, 3, "gone.xml: there is no such file\n  Check the path.\n"},
           {{"plan", "book.xml", "--press", "gone.xml"},
            3,
            "gone.xml: there is no such file\n  Check the path.\n"},
           {{"plan", "book.xml", "--out", "none/a.pdf"},
            4,
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
           {{"plan", "book.xml", "--csv", "file/a.csv"},
            4,
            "file: this is not a folder\n  Write to a folder.\n"},
           {{"plan", "book.xml", "--csv", "/dev/null"},
            4,
            "/dev/null: this is a device or a pipe, not a plain file" + rename},
           {{"plan", "book.xml", "--out", "book.xml"},
            2,
            "book.xml: this output would replace an input, the description of the book" + rename},
           {{"plan", "book.xml", "--csv", "scans/wedding.tif"},
            2,
            "scans/wedding.tif: this output would replace an input, a picture of the book" + rename},
           {{"plan", "book.xml", "--csv", "book.plan.pdf"},
            2,
            "book.plan.pdf: the plan and its table would be the same file\n  Give one of them another "
            "name.\n"},
       }) {
    CAPTURE(c.words);
    const Ran ran = run(folder.path, c.words);
    CHECK(ran.err == c.err);
    CHECK(ran.out.empty());
    CHECK(ran.status == c.status);
  }
  const Ran broken = run(folder.path, {"plan", "broken.xml"});
  CHECK(broken.status == 3);
  CHECK(broken.err.find("broken.xml:1:") == 0);
  CHECK(folder.names().size() == 3);
  const Ran full = run(folder.path, {"plan", "book.xml"}, {}, "/dev/full");
  CHECK(full.status == 4);
}

TEST_CASE("a plan with much to decide fits a screen") {
  const Folder folder;
  std::string many, shown;
  for (int i = 0; i < 50; ++i) {
    const std::string name = "p" + std::to_string(i);
    many += "    <picture id=\"" + name + "\" file=\"" + name + ".tif\"/>\n";
    shown += "      <frame id=\"f" + name + "\" picture=\"" + name +
             "\" x=\"20mm\" y=\"20mm\" width=\"2in\" height=\"1in\"/>\n";
  }
  write_file(folder / "book.xml", album_xml(many, shown));
  const Ran ran = run(folder.path, {"plan", "book.xml"});
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') <= 23);
  CHECK(ran.out.find(" more to decide in the plan\n") != std::string::npos);
  CHECK(ran.out.find("No scan can be planned yet.\n50 cannot be reckoned yet.\n") != std::string::npos);
}
