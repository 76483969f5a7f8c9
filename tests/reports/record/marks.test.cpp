// Marks for the finished PDF: judged by xmllint with our schema, and read by Python's and PDFBox's own
// readers.
#include "reports/record/marks.h"

#include "tests/engine/xml/xmllint.h"
#include "tests/support/programs.h"
#include "tests/support/small_book.h"

#include <nlohmann/json.hpp>

#include <set>

using namespace stoneproof;
using namespace stoneproof::test;
using record::FinishedFile;
using record::marks_text;

namespace {

const std::string schema = STONEPROOF_SOURCE_DIR "/schema/marks.xsd";
const std::string awkward = "Żółć & <Ёлка> \"夏\"\n]]> \xF0\x9F\x93\xB7 'x'";

/// One finding on page 1, on the fold of the spread, off the page, on the cover and about the book.
Checked marked_book() {
  Book book = small_book();
  book.contributors = {{"anna", awkward, "", {}, {}}};
  book.pictures = {photo("p", awkward + ".tif")};
  book.pictures[0].contributor = 0;
  Page cover;
  cover.number = 0;
  cover.kind = PageKind::cover;
  cover.frames = {frame("front", 0, 210, 20, 100, 100)};
  book.cover = Cover{{Length::of_mm(410), Length::of_mm(250)}, Length::of_mm(10), {}, {}};
  book.pages.insert(book.pages.begin(), cover);
  book.pages[1].frames = {frame("f<1>&", 0, 20, 30, 100, 50), frame("gone", 0, 300, 20, 30, 30)};
  book.pages[2].frames = {frame("across", 0, 150, 30, 100, 50)};
  Checked made = checked(std::move(book));
  made.findings.clear();
  const auto add = [&](std::string_view rule, Grade grade, std::optional<std::size_t> page,
                       std::size_t frame) {
    Finding finding;
    finding.rule = rule;
    finding.grade = grade;
    finding.page = page;
    if (page) {
      finding.frame = frame;
      finding.area = made.evidence.book.pages[*page].frames[frame].rect;
    }
    finding.picture = 0;
    finding.contributor = 0;
    made.findings.push_back(finding);
  };
  add("missing-picture", Grade::hold, 1, 0);
  add("see-through-picture", Grade::query, 2, 0);
  add("see-through-picture", Grade::note, 1, 1);
  add("missing-picture", Grade::hold, 0, 0);
  add("unused-picture", Grade::note, {}, 0);
  return made;
}

std::string marks_of(const Checked &made, record::MarksOptions options = {}) {
  return marks_text(made.evidence, made.findings, options);
}

/// The marks as Python's XML reader (expat) gives them: attributes, with `kind` and `contents`.
nlohmann::json read_by_python(const std::string &marks) {
  const Folder folder;
  write_file(folder / "marks.xfdf", marks);
  return nlohmann::json::parse(run_command(
      "/usr/bin/python3 -c '"
      "import json, sys, xml.etree.ElementTree as tree\n"
      "space = \"{http://ns.adobe.com/xfdf/}\"\n"
      "print(json.dumps([{\"kind\": mark.tag[len(space):], \"contents\": mark.find(space + "
      "\"contents\").text, "
      "**mark.attrib} for mark in tree.parse(sys.argv[1]).getroot().find(space + \"annots\")]))' '" +
      folder.file("marks.xfdf") + "'"));
}

/// The marks as the FDF reader of Apache PDFBox gives them (Debian packages libpdfbox2-java and bsh).
nlohmann::json read_by_pdfbox(const std::string &marks) {
  const Folder folder;
  write_file(folder / "marks.xfdf", marks);
  return nlohmann::json::parse(run_command(
      "bash '" STONEPROOF_SOURCE_DIR "/tests/reports/record/pdfbox.sh' '" + folder.file("marks.xfdf") + "'"));
}

} // namespace

TEST_CASE("marks are valid by their schema, and every reader finds the same in them") {
  record::MarksOptions dated;
  dated.made_at = 951'782'400; // 2000-02-29
  const Checked made = marked_book();
  Checked none = made;
  none.findings.clear();
  std::string cut = marks_of(made);
  cut.erase(cut.find(" rect="), 7);
  const auto verdicts = ask_xmllint(schema, {marks_of(made), marks_of(made, dated), marks_of(none), cut,
                                             marks_of(made, {FinishedFile::cover, true, {}})});
  CHECK(verdicts[0].messages == "100000.xml validates\n");
  CHECK(verdicts[1].messages == "100001.xml validates\n");
  CHECK(verdicts[2].messages == "100002.xml validates\n");
  CHECK_FALSE(verdicts[3].accepted);
  CHECK(verdicts[4].messages == "100004.xml validates\n");

  const auto python = read_by_python(marks_of(made, dated)), pdfbox = read_by_pdfbox(marks_of(made, dated));
  REQUIRE(python.size() == 6);
  REQUIRE(pdfbox.size() == 6);
  for (std::size_t i = 0; i < python.size(); ++i)
    for (const char *key : {"kind", "page", "color", "name", "title", "subject", "date", "contents"})
      CHECK(pdfbox[i].at(key) == python[i].at(key));
  CHECK(python[0].at("date") == "D:20000229000000Z");
  CHECK(python[0].at("creationdate") == "D:20000229000000Z");
  CHECK(python[0].at("title") == "stoneproof");
}

TEST_CASE("a mark says in words what was found where, whatever the names hold") {
  const auto marks = read_by_pdfbox(marks_of(marked_book()));
  const auto words = [&](std::size_t i) { return marks.at(i).at("contents").get<std::string>(); };
  CHECK(marks.at(0).at("subject") == find_rule("missing-picture")->title);
  CHECK(words(0).starts_with("Hold. Page 1 · " + awkward + ".tif · Frame f<1>& · " + awkward + "\n"));
  CHECK(words(0).ends_with("\n" + std::string(find_rule("missing-picture")->remedy)));
  CHECK(words(1).starts_with("Query. Pages 2–3 · "));
  CHECK(words(3).starts_with("Note. Page 1 · "));
  CHECK(words(5).starts_with("Note. The book · "));
}

TEST_CASE("a place has a square on each page that shows it; what has none is a note") {
  const auto marks = read_by_python(marks_of(marked_book()));
  const auto is = [&](std::size_t i, const char *kind, const char *page, const std::string &rect) {
    CHECK(marks.at(i).at("kind") == kind);
    CHECK(marks.at(i).at("page") == page);
    CHECK(marks.at(i).at("rect") == rect);
  };
  is(0, "square", "0", "56.693,490.394,340.157,632.126");  // 20, 173, 120 and 223 mm
  is(1, "square", "1", "433.701,490.394,575.433,632.126"); // 153 to 203 mm
  is(2, "square", "2", "0.000,490.394,141.732,632.126");
  is(3, "text", "0", "555.433,607.953,575.433,627.953"); // at the outside, 218 mm +- 10 pt
  is(4, "text", "0", "0.000,697.165,20.000,717.165");    // the cover's, at the top of page 1
  is(5, "text", "0", "24.000,697.165,44.000,717.165");   // the book's, beside it
}

TEST_CASE("the cover's marks stand in a file of their own, if there is one") {
  const Checked made = marked_book();
  const auto block = read_by_python(marks_of(made, {FinishedFile::block, true, {}}));
  const auto cover = read_by_python(marks_of(made, {FinishedFile::cover, true, {}}));
  CHECK(block.size() == 5);
  REQUIRE(cover.size() == 1);
  CHECK(cover[0].at("kind") == "square");
  CHECK(cover[0].at("page") == "0");
  CHECK(cover[0].at("rect") == "603.780,377.008,887.244,660.472"); // 213, 133, 313 and 233 mm
}

TEST_CASE("grades differ in colour and in line") {
  Checked made = marked_book();
  made.findings.assign(3, made.findings[0]);
  made.findings[1].grade = Grade::query;
  made.findings[2].grade = Grade::note;
  const auto marks = read_by_pdfbox(marks_of(made));
  REQUIRE(marks.size() == 3);
  CHECK(marks[0].at("line").get<std::string>().starts_with("2.0 S "));
  CHECK(marks[1].at("line") == "1.5 D [6.0, 3.0]");
  CHECK(marks[2].at("line") == "1.0 D [1.5, 2.5]");
  std::set<std::string> colours;
  for (const auto &mark : marks) colours.insert(mark.at("color"));
  CHECK(colours.size() == 3);
}

TEST_CASE("names of marks are one of a kind, and stay when pages are renumbered and frames moved") {
  const auto names = [](const Checked &made) {
    std::vector<std::string> all;
    for (const auto &mark : read_by_python(marks_of(made))) all.push_back(mark.at("name"));
    return all;
  };
  Checked made = marked_book();
  const auto before = names(made);
  CHECK(std::set<std::string>(before.begin(), before.end()).size() == before.size());
  CHECK(before[0].starts_with("missing-picture-"));
  CHECK(before[2] == before[1] + "-2"); // the other page of one finding
  made.evidence.book.pages[1].number = 7;
  made.evidence.book.pages[2].number = 8;
  made.findings[0].area->x = Length::of_mm(50);
  CHECK(names(made) == before);
}

TEST_CASE("what XML cannot hold is replaced, and 400 notes on a page are all there") {
  Checked made = marked_book();
  made.evidence.book.pictures[0].file = "a\x01"
                                        "b\xFF.tif";
  made.findings.assign(400, made.findings.back());
  const std::string marks = marks_of(made);
  CHECK(ask_xmllint(schema, {marks})[0].messages == "100000.xml validates\n");
  const auto read = read_by_python(marks);
  REQUIRE(read.size() == 400);
  CHECK(read[399]
            .at("contents")
            .get<std::string>()
            .find("a\xEF\xBF\xBD"
                  "b\xEF\xBF\xBD.tif") != std::string::npos);
  Book no_pages = small_book();
  no_pages.pages.clear();
  Checked empty = checked(no_pages);
  empty.findings = {made.findings[0]};
  CHECK(read_by_python(marks_of(empty)).empty());
}

TEST_CASE("the same inputs give the same bytes") {
  CHECK(marks_of(marked_book()) == marks_of(marked_book()));
  CHECK(marks_of(marked_book()).find("date=") == std::string::npos);
}
