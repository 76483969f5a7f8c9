#include "engine/book/read.h"
#include "engine/xml/element_reader.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <fmt/format.h>

#include <sys/stat.h>

using namespace stoneproof;
using namespace stoneproof::literals;
using stoneproof::test::Folder;

namespace {

// A description with every element and attribute but those of read_object.test.cpp.
constexpr std::string_view whole = R"(<?xml version="1.0" encoding="UTF-8"?>
<book xmlns="urn:stoneproof:book:1" title="Lato nad rzeką" language="pl">
  <trim width="210mm" height="280mm"/>
  <bleed top="3mm" bottom="4mm" outside="5mm" inside="0mm"/>
  <safe-margin top="6mm" bottom="7mm" outside="8mm" inside="9mm"/>
  <binding kind="case" first-page="right" gutter-loss="6mm"/>
  <contributors>
    <contributor id="ελένη" name="Ελένη Παππά" contact="eleni@example.org"/>
    <contributor id="jan" name="Jan Żak" language="de-AT"/>
  </contributors>
  <pictures>
    <picture id="mill" file="scans/the mill.tif" contributor="jan" use="line-art">
      <original kind="slide" width="36mm" height="24mm" lost="yes"/>
    </picture>
    <picture id="boat" file="boat.jpg"/>
  </pictures>
  <pages>
    <page number="1">
      <frame id="f1" picture="mill" x="-3mm" y="1in" width="72pt" height="2.5cm" turn="-2.5" mirror="vertical">
        <fill focus-x="25%" focus-y="100%"/>
      </frame>
      <text kind="caption" x="1mm" y="2mm" width="3mm" height="4mm" size="9pt">
        First line
        second &amp; last
      </text>
      <frame id="f2" x="0mm" y="0mm" width="1mm" height="1mm"/>
    </page>
    <spread number="2">
      <frame id="f3" picture="boat" x="0mm" y="0mm" width="420mm" height="280mm" across-gutter="yes"><inside/></frame>
      <frame id="f4" picture="boat" x="0mm" y="0mm" width="1mm" height="1mm">
        <crop x="10%" y="20%" width="30%" height="40%"/>
      </frame>
      <frame id="f5" picture="boat" x="0mm" y="0mm" width="1mm" height="1mm">
        <crop x="10px" y="20.5px" width="30px" height="40px"/>
      </frame>
      <frame id="f6" picture="boat" x="0mm" y="0mm" width="1mm" height="1mm">
        <picture-at x="-1mm" y="-2mm" width="5mm" height="6mm"/>
      </frame>
    </spread>
  </pages>
</book>
)";

std::string faults_of(const Reading<Book> &reading) {
  std::string text;
  for (const SourceFault &fault : reading.faults) text += fault.fault.where + ": " + fault.fault.what + "\n";
  return text;
}

std::string faults_with(std::string_view part, std::string_view replacement) {
  std::string text(whole);
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  return faults_of(parse_book(SourceText("b", text.replace(at, part.size(), replacement))));
}

} // namespace

TEST_CASE("every part of a description arrives in the book") {
  const Folder folder;
  const auto file = test::write_file(folder.path / "my book.xml", whole);
  const auto reading = read_book(file);
  INFO(faults_of(reading));
  REQUIRE(reading);
  const Book &book = *reading.value;
  CHECK(book.source == file);
  CHECK(book.title == "Lato nad rzeką");
  CHECK(book.language == "pl");
  CHECK(book.trim == Size{210_mm, 280_mm});
  CHECK(book.bleed == Edges{3_mm, 4_mm, 5_mm, 0_mm});
  CHECK(book.safe_margin == Edges{6_mm, 7_mm, 8_mm, 9_mm});
  CHECK(book.binding.kind == BindingKind::case_bound);
  CHECK(book.binding.first_page == Side::right);
  CHECK(book.binding.gutter_loss == 6_mm);
  REQUIRE(book.contributors.size() == 2);
  CHECK(book.contributors[0].id == "ελένη");
  CHECK(book.contributors[0].name == "Ελένη Παππά");
  CHECK(book.contributors[0].contact == "eleni@example.org");
  CHECK(book.contributors[1].contact.empty());
  CHECK_FALSE(book.contributors[0].language);
  CHECK(book.contributors[1].language == "de-AT");
  CHECK(book.contributors[1].place == SourcePlace{9, 5});
  REQUIRE(book.pictures.size() == 2);
  CHECK(book.path_of(book.pictures[0]) == folder.path / "scans/the mill.tif");
  CHECK(book.pictures[0].use == Use::line_art);
  CHECK(book.pictures[0].contributor == 1u);
  REQUIRE(book.pictures[0].original);
  CHECK(book.pictures[0].original->kind == OriginalKind::slide);
  CHECK(book.pictures[0].original->size == Size{36_mm, 24_mm});
  CHECK(book.pictures[0].original->lost);
  CHECK(book.pictures[1].use == Use::photo);
  CHECK_FALSE(book.pictures[1].contributor);
  CHECK_FALSE(book.pictures[1].original);
}

TEST_CASE("pages, frames and texts arrive in the order of the file") {
  const auto reading = parse_book(SourceText("b", std::string(whole)));
  REQUIRE(reading);
  const auto &pages = reading.value->pages;
  REQUIRE(pages.size() == 2);
  CHECK(pages[0].number == 1);
  CHECK(pages[0].kind == PageKind::page);
  CHECK(pages[1].number == 2);
  CHECK(pages[1].kind == PageKind::spread);
  REQUIRE(pages[0].frames.size() == 2);
  const Frame &first = pages[0].frames[0];
  CHECK(first.id == "f1");
  CHECK(first.rect == Rect{-3_mm, 1_in, 1_in, 25_mm});
  CHECK(first.turn == Turn{-2.5});
  CHECK(first.mirror == Mirror::vertical);
  CHECK(first.picture == 0u);
  CHECK(std::get<Fill>(first.fit).focus_x == 0.25);
  CHECK(std::get<Fill>(first.fit).focus_y == 1);
  CHECK(first.place == SourcePlace{19, 7});
  const Frame &second = pages[0].frames[1];
  CHECK_FALSE(second.picture);
  CHECK(second.turn == Turn{0});
  CHECK(second.mirror == Mirror::none);
  CHECK_FALSE(second.across_gutter);
  CHECK(std::get<Fill>(second.fit).focus_x == 0.5);
  REQUIRE(pages[0].texts.size() == 1);
  CHECK(pages[0].texts[0].kind == TextKind::caption);
  CHECK(pages[0].texts[0].rect == Rect{1_mm, 2_mm, 3_mm, 4_mm});
  CHECK(pages[0].texts[0].type_size == 9_pt);
  CHECK(pages[0].texts[0].text == "First line second & last");
  const auto &frames = pages[1].frames;
  REQUIRE(frames.size() == 4);
  CHECK(frames[0].across_gutter);
  CHECK(std::holds_alternative<Inside>(frames[0].fit));
  CHECK(std::get<CropShare>(frames[1].fit).height == 0.4);
  CHECK(std::get<CropPixels>(frames[2].fit).part == PixelRect{10, 20.5, 30, 40});
  CHECK(std::get<PictureAt>(frames[3].fit).rect == Rect{-1_mm, -2_mm, 5_mm, 6_mm});
}

TEST_CASE("each fault is told at its place") {
  struct Case {
    std::string_view part, replacement, faults;
  };
  const Case cases[] = {
      {"width=\"210mm\"", "width=\"210\"", "b:3:16: width=\"210\": a length needs a unit\n"},
      {"width=\"210mm\"", "width=\"1e308\"",
       "b:3:16: width=\"1e308\": an exponent is not allowed in a number\n"},
      {"width=\"210mm\"", "width=\"NaN\"", "b:3:16: width=\"NaN\": this is not a length\n"},
      {"width=\"210mm\"", "width=\"0mm\"", "b:3:16: width=\"0mm\": this length must be more than zero\n"},
      {"width=\"210mm\"", "widht=\"210mm\"",
       "b:3:3: <trim> lacks the attribute width\nb:3:9: <trim> has no attribute widht (did you mean "
       "width?)\n"},
      {"<safe-margin", "<safemargin",
       "b:2:1: <book> lacks the element <safe-margin>\n"
       "b:5:3: <book> takes no element <safemargin> (did you mean safe-margin?)\n"},
      {"<pages>", "<trim width=\"1mm\" height=\"1mm\"/><pages>",
       "b:17:3: <book> takes one element <trim> only\n"},
      {"case", "hardcover", "b:6:18: kind=\"hardcover\": this is not one of the known words\n"},
      {"case", "cse", "b:6:18: kind=\"cse\": this is not one of the known words (did you mean case?)\n"},
      {"\"jan\" name", "\"ελένη\" name",
       "b:9:22: another contributor has the id \"ελένη\"\n"
       "b:12:63: no contributor has the id \"jan\"\n"},
      {"contributor=\"jan\"", "contributor=\"jam\"",
       "b:12:63: no contributor has the id \"jam\" (did you mean jan?)\n"},
      {"picture=\"mill\"", "picture=\"mil\"",
       "b:19:31: no picture has the id \"mil\" (did you mean mill?)\n"},
      {"id=\"f2\"", "id=\"f1\"", "b:26:18: another frame has the id \"f1\"\n"},
      {"id=\"f3\"", "id=\"f1\"", "b:29:18: another frame has the id \"f1\"\n"},
      {"<inside/>", "stray", "b:29:102: there is text in <frame>, which takes none\n"},
      {"<inside/>", "<inside/><fill/>", "b:29:111: a picture sits in its frame in one way only\n"},
      {"x=\"10%\"", "x=\"10px\"", "b:31:9: the crop mixes per cent and pixels\n"},
      {"x=\"10%\"", "x=\"70.1%\"", "b:31:9: the crop reaches beyond 100% of the picture\n"},
      {"x=\"10%\"", "x=\"10\"", "b:31:18: x=\"10\": a part of a picture needs a unit\n"},
      {"<fill focus-x", "<fill xmlns=\"urn:other\" focus-x",
       "b:20:9: <fill> is not in the namespace of <frame>\n"},
      {"number=\"2\"", "number=\"1\"",
       "b:28:21: page 1 is there already, in line 18\nb:28:21: a spread cannot begin on page 1, which is a "
       "right "
       "page\n"},
      {"title=\"Lato nad rzeką\" ", "", "b:2:1: <book> lacks the attribute title\n"},
      {"top=\"6mm\"", "top=\"273mm\"", "b:5:3: the safe margin leaves nothing of the page\n"},
      {" height=\"24mm\"", "", "b:13:7: the original has a width or a height but not both\n"},
      {"urn:stoneproof:book:1", "urn:stoneproof:book:9",
       "b:2:1: <book> is in the namespace \"urn:stoneproof:book:9\"\n"},
      {"<book xmlns=\"urn:stoneproof:book:1\"", "<book", "b:2:1: <book> has no namespace\n"},
      {"</contributors>", "", "b:41:1: </book> does not close <contributors>\n"},
      {"<trim", "<trim xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" xsi:schemaLocation=\"a b\"",
       ""},
      {"<trim", "<trim xml:lang=\"en\"", "b:3:9: <trim> has no attribute lang of another namespace\n"},
  };
  for (const Case &c : cases) {
    INFO(c.replacement);
    CHECK(faults_with(c.part, c.replacement) == c.faults);
  }
}

TEST_CASE("a fault shows its line with a caret and what to do") {
  const auto reading =
      parse_book(SourceText("book.xml", "<book xmlns=\"urn:stoneproof:book:1\" title=\"Ż\" language=\"pl\">\n"
                                        "\t<trim width=\"210\" height=\"280mm\"/>\n</book>"));
  REQUIRE(reading.faults.size() == 5);
  CHECK(with_caret(reading.faults[4]) ==
        "book.xml:2:15: width=\"210\": a length needs a unit\n"
        "     <trim width=\"210\" height=\"280mm\"/>\n"
        "                  ^\n"
        "  Write a number and its unit, mm, cm, in or pt, for example \"6.5mm\".\n");
  CHECK(with_caret(reading.faults[0]) ==
        "book.xml:1:1: <book> lacks the element <bleed>\n"
        "    <book xmlns=\"urn:stoneproof:book:1\" title=\"Ż\" language=\"pl\">\n"
        "    ^\n"
        "  Add <bleed> inside <book>.\n");
}

TEST_CASE("all faults are told in one run, up to a limit") {
  std::string text(whole);
  for (std::size_t at = 0; (at = text.find("mm\"", at)) != std::string::npos;) text.erase(at, 2);
  const auto reading = parse_book(SourceText("b", text));
  REQUIRE(reading.faults.size() == most_faults + 1);
  CHECK(reading.faults.front().fault.where == "b:3:16");
  CHECK(reading.faults.back().fault == Fault{"and 17 more faults", "b", "Mend those above and run again."});
}

TEST_CASE("white space that lays out the XML is one space, an empty line starts a new line") {
  const auto text_of = [](std::string_view written) {
    std::string text(whole);
    const std::size_t begin = text.find("\n        First"), end = text.find("</text>");
    const auto reading = parse_book(SourceText("b", text.replace(begin, end - begin, written)));
    REQUIRE(reading);
    return reading.value->pages[0].texts[0].text;
  };
  CHECK(text_of("one") == "one");
  CHECK(text_of("  one  two\n  three\r\n\n\n   four\n \n") == "one two three\nfour");
  CHECK(text_of("<![CDATA[a < b]]> &#x3B1;<!-- c -->!") == "a < b α!");
  CHECK(text_of("").empty());
  CHECK(text_of(" \n ").empty());
}

TEST_CASE("what is no file of a book gives one fault") {
  const Folder folder;
  const auto only_fault = [](const std::filesystem::path &file) {
    const auto reading = read_book(file);
    REQUIRE(reading.faults.size() == 1);
    return reading.faults[0].fault.what;
  };
  CHECK(only_fault(folder.path / "none.xml") == "there is no such file");
  CHECK(only_fault(folder.path) == "this is a folder, not a file");
  CHECK(only_fault(test::write_file(folder.path / "a.xml", "")) == "the file is empty");
  CHECK(only_fault(test::write_file(folder.path / "b.xml", "\x89PNG\r\n")) == "these bytes are not UTF-8");
  CHECK(only_fault(test::write_file(folder.path / "c.xml", "<svg/>")) ==
        "the first element is <svg>, not <book>");
  const auto fifo = folder.path / "fifo";
  REQUIRE(mkfifo(fifo.c_str(), 0600) == 0);
  CHECK(only_fault(fifo) == "this is not a regular file");
}

TEST_CASE("every word of a description is read as the value it stands for") {
  const auto reads = [](std::string_view part, std::string_view replacement) {
    std::string text(whole);
    text.replace(text.find(part), part.size(), replacement);
    const auto reading = parse_book(SourceText("b", text));
    INFO(faults_of(reading));
    REQUIRE(reading);
    return *reading.value;
  };
  for (const auto &[kind, word] : binding_words)
    CHECK(reads("kind=\"case\"", fmt::format("kind=\"{}\"", word)).binding.kind == kind);
  for (const auto &[use, word] : use_words)
    CHECK(reads("use=\"line-art\"", fmt::format("use=\"{}\"", word)).pictures[0].use == use);
  for (const auto &[kind, word] : original_words)
    CHECK(reads("kind=\"slide\"", fmt::format("kind=\"{}\"", word)).pictures[0].original->kind == kind);
  for (const auto &[mirror, word] : mirror_words)
    CHECK(reads("mirror=\"vertical\"", fmt::format("mirror=\"{}\"", word)).pages[0].frames[0].mirror ==
          mirror);
  for (const auto &[kind, word] : text_words)
    CHECK(reads("kind=\"caption\"", fmt::format("kind=\"{}\"", word)).pages[0].texts[0].kind == kind);
}
