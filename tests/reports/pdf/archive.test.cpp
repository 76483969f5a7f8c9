// What makes a document one to be kept: PDF/A-3b, its structure, and the files it carries.
#include "tests/reports/pdf/sample.h"

#include <algorithm>
#include <fstream>

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::test;
using layout::Role;

namespace {

layout::TextItem words(Length x, Length y, std::string text) {
  return {{x, y}, Face::text, 10_pt, {}, std::move(text), false};
}

/// One page with a heading, a table, a list, a picture, a drawing, a veil, a link and a note.
layout::Document sample(const Folder &folder) {
  layout::Document document = titled_document();
  document.images = {picture(folder, 60, 40)};
  layout::PictureItem shown = placed(0, {10_mm, 60_mm, 30_mm, 20_mm});
  shown.alternative = "the mill (in flood)";
  layout::DocumentPage page =
      page_of({100_mm, 100_mm},
              {words(10_mm, 10_mm, "Heading"), words(10_mm, 20_mm, "Name"), words(40_mm, 20_mm, "Size"),
               words(10_mm, 25_mm, "Mill"), words(40_mm, 25_mm, "9 cm"), words(10_mm, 35_mm, "first thing"),
               words(10_mm, 40_mm, "second \U000F1234 thing"), shown});
  page.items.emplace_back(
      layout::ShapeItem{{{60_mm, 60_mm}, {90_mm, 60_mm}, {90_mm, 90_mm}}, layout::Ink{9, 9, 9}, {}, 0.5});
  page.items.emplace_back(words(90_mm, 95_mm, "foot"));
  page.elements = {{Role::heading1, {}, 0, 1, ""},     {Role::row, {}, 1, 3, ""},
                   {Role::column_header, 1, 1, 2, ""}, {Role::column_header, 1, 2, 3, ""},
                   {Role::row, {}, 3, 5, ""},          {Role::row_header, 4, 3, 4, ""},
                   {Role::cell, 4, 4, 5, ""},          {Role::list_item, {}, 5, 6, ""},
                   {Role::list_item, {}, 6, 7, ""},    {Role::figure, {}, 8, 9, "three corners"}};
  page.links = {{{10_mm, 22_mm, 60_mm, 5_mm}, 0}};
  page.notes = {{{5_mm, 5_mm, 4_mm, 4_mm}, "1", "za ma\u0142o"}};
  page.label = "1";
  document.pages = {page};
  document.bookmarks = {{"Heading", 0, 0}};
  document.attachments = {{"b.json", "what was found", "application/json", "{\"b\": 1}"},
                          {"a \u0142.csv", "a table", "text/csv", "a,b\n"}};
  return document;
}

Printed look_over(const std::string &pdf) {
  return print_of("python3 " STONEPROOF_SOURCE_DIR "/tests/reports/pdf/archive.py " + pdf + " 2>&1");
}

/// The file with one text in place of another of the same length, so that its table of objects holds.
void replace_in(const std::string &from_file, const std::string &to_file, const std::string &from,
                const std::string &to) {
  REQUIRE(from.size() == to.size());
  std::string bytes = content_of(from_file);
  const auto at = bytes.find(from);
  REQUIRE(at != std::string::npos);
  bytes.replace(at, from.size(), to);
  std::ofstream(to_file, std::ios::binary) << bytes;
}

} // namespace

TEST_CASE("a document meets every clause of PDF/A-3b that can be checked, with a date and without") {
  const Folder folder;
  layout::Document document = sample(folder);
  for (const bool dated : {true, false}) {
    if (!dated) document.made_at.reset();
    write(document, folder.file("s.pdf"));
    const Printed printed = look_over(folder.file("s.pdf"));
    INFO(printed.out);
    CHECK(printed.status == 0);
    CHECK(std::count(printed.out.begin(), printed.out.end(), '\n') == 28); // a clause a line
  }
}

TEST_CASE("a document in fonts with CFF outlines meets every clause, and what breaks one is found") {
  const Folder folder;
  layout::Document document = sample(folder);
  document.pages[0].items.emplace_back(words(10_mm, 50_mm, cjk_words));
  document.pages[0].items.emplace_back(words(60_mm, 50_mm, script_words));
  document.pages[0].elements.push_back({Role::paragraph, {}, 11, 13, ""});
  write(document, folder.file("s.pdf"), Typesetter::load(cjk_words + script_words).value());
  const Printed whole = look_over(folder.file("s.pdf"));
  INFO(whole.out);
  CHECK(whole.status == 0);
  struct Case {
    const char *from, *to, *clause;
  };
  for (const Case &c : {Case{"/CIDFontType0C", "/OpenTypeFont0", "6.2.11.2"},
                        Case{"/CMapName", "/CNapName", "6.2.11.3"}, Case{"/W [0[1000]", "/W [0[1009]", "6.2.11.5"}}) {
    CAPTURE(c.from);
    replace_in(folder.file("s.pdf"), folder.file("broken.pdf"), c.from, c.to);
    CHECK(look_over(folder.file("broken.pdf")).out.find(std::string(c.clause) + ": NOT MET") !=
          std::string::npos);
  }
}

TEST_CASE("what breaks a clause is found") {
  const Folder folder;
  write(sample(folder), folder.file("s.pdf"));
  struct Case {
    const char *from, *to, *clause;
  };
  for (const Case &c :
       {Case{"%PDF-1.7", "%PDF-2.0", "6.1.2"}, Case{"/GTS_PDFA1", "/GTS_PDFX1", "6.2.3"},
        Case{"/DeviceRGB", "/DeviceLab", "6.2.4.3"}, Case{"/ca 0.5", "/BM 0.5", "6.2.5"},
        Case{"/Transparency", "/Transparence", "6.2.10"}, Case{"/Identity-H", "/Identity-V", "6.2.11.3"},
        Case{"/W [0[", "/W[0[9", "6.2.11.5"}, Case{"/F 28", "/F 30", "6.3.2"},
        Case{"(stoneproof)", "(otherproof)", "6.6.3"}, Case{"pdfaid:part>3", "pdfaid:part>2", "6.6.4"},
        Case{"/AFRelationship", "/AFRelationshop", "6.8"}}) {
    CAPTURE(c.from);
    replace_in(folder.file("s.pdf"), folder.file("broken.pdf"), c.from, c.to);
    const Printed printed = look_over(folder.file("broken.pdf"));
    INFO(printed.out);
    CHECK(printed.status == 1);
    CHECK(printed.out.find(std::string(c.clause) + ": NOT MET") != std::string::npos);
  }
}

TEST_CASE("the structure is read as it was meant") {
  const Folder folder;
  write(sample(folder), folder.file("s.pdf"));
  CHECK(run_command("pdfinfo " + folder.file("s.pdf")).find("Tagged:          yes") != std::string::npos);
  const std::string tree = run_command("pdfinfo -struct-text " + folder.file("s.pdf"));
  CHECK(tree == R"(Document
  Sect
    H1 (block)
      "Heading"
    Table (block)
      TR
        TH:
           /Scope /Column
          "Name"
        TH:
           /Scope /Column
          "Size"
      TR
        TH:
           /Scope /Row
          "Mill"
        TD
          "9 cm"
    L (block)
      LI (block)
        LBody (block)
          "first thing"
      LI (block)
        LBody (block)
          "second 󱈴 thing"
    Figure:
       /BBox [28.346 56.693 113.386 113.386]
      ""
    Figure:
       /BBox [170.079 28.346 255.118 113.386]
      ""
)");
}

TEST_CASE("the lines of a paragraph are read apart, whichever way they run") {
  const Folder folder;
  layout::Document document;
  document.pages = {
      page_of({100_mm, 100_mm}, {words(10_mm, 10_mm, "something to"), words(10_mm, 15_mm, "decide"),
                                 words(10_mm, 30_mm, "\u05D0\u05D1"), words(10_mm, 35_mm, "\u05D2\u05D3")})};
  document.pages[0].elements = {{Role::paragraph, {}, 0, 2, ""}, {Role::paragraph, {}, 2, 4, ""}};
  write(document, folder.file("p.pdf"));
  const std::string tree = run_command("pdfinfo -struct-text " + folder.file("p.pdf"));
  CHECK(tree.find("\"something to decide\"") != std::string::npos);
  // No space is set before a line that runs to the left: it would move.
  CHECK(run_command("pdftotext -bbox " + folder.file("p.pdf") + " -").find("xMin=\"28.34") !=
        std::string::npos);
}

TEST_CASE("files come out as they went in") {
  const Folder folder;
  const layout::Document document = sample(folder);
  write(document, folder.file("s.pdf"));
  const std::string list = run_command("pdfdetach -list " + folder.file("s.pdf"));
  CHECK(list.find("2 embedded files\n1: b.json\n2: a \u0142.csv\n") != std::string::npos);
  run_command("pdfdetach -save 1 -o " + folder.file("out.json") + " " + folder.file("s.pdf"));
  CHECK(content_of(folder.file("out.json")) == document.attachments[0].bytes);
}
