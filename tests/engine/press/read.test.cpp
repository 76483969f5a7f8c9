#include "engine/press/read.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <fmt/format.h>

using namespace stoneproof;
using namespace stoneproof::literals;
using stoneproof::test::Folder;

namespace {

std::string faults_with(std::string_view part, std::string_view replacement) {
  std::string text(built_in_press_sheet_text());
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  const auto reading = parse_press_sheet(SourceText("p", text.replace(at, part.size(), replacement)));
  std::string faults;
  for (const SourceFault &fault : reading.faults) faults += fault.fault.what + "\n";
  return faults;
}

} // namespace

TEST_CASE("the built-in sheet holds common practice") {
  const PressSheet sheet = built_in_press_sheet();
  CHECK(sheet.name == "Common practice");
  CHECK(sheet.source == "built in");
  struct Case {
    Use use;
    double wanted, least;
  };
  for (const Case &c : {Case{Use::photo, 300, 200}, Case{Use::line_art, 1200, 600},
                        Case{Use::document, 400, 300}, Case{Use::clipping, 400, 300}}) {
    CHECK(sheet.bar(c.use).wanted == Density::of_ppi(c.wanted));
    CHECK(sheet.bar(c.use).least == Density::of_ppi(c.least));
  }
  CHECK(sheet.density_tolerance == 0.01);
  CHECK(sheet.stretch_tolerance == 0.01);
  CHECK(sheet.bleed == Edges{3_mm, 3_mm, 3_mm, 0_mm});
  CHECK(sheet.safe_margin == Edges{5_mm, 5_mm, 5_mm, 5_mm});
  CHECK(sheet.cut_tolerance == 1_mm);
  struct Count {
    BindingKind kind;
    int multiple, least, most;
  };
  for (const Count &c : {Count{BindingKind::saddle, 4, 8, 64}, Count{BindingKind::perfect, 2, 32, 800},
                         Count{BindingKind::case_bound, 4, 24, 600}, Count{BindingKind::spiral, 2, 8, 300},
                         Count{BindingKind::layflat, 2, 10, 120}}) {
    CHECK(sheet.page_count(c.kind).multiple == c.multiple);
    CHECK(sheet.page_count(c.kind).least == c.least);
    CHECK(sheet.page_count(c.kind).most == c.most);
  }
  CHECK(sheet.inside_margin(149) == 5_mm);
  CHECK(sheet.inside_margin(150) == 10_mm);
  CHECK(sheet.inside_margin(300) == 13_mm);
  CHECK(sheet.fold_tolerance == 1_mm);
  CHECK(sheet.spine.leaf_tolerance == Length::of_mm(0.013));
  CHECK(sheet.spine.text_from == 6_mm);
  CHECK(sheet.spine.text_clear == Length::of_mm(1.5));
  CHECK_FALSE(sheet.creep_compensated);
  CHECK(sheet.least_type_of(TextKind::caption) == 6_pt);
  CHECK(sheet.least_type_of(TextKind::body) == 8_pt);
  CHECK(sheet.least_type_of(TextKind::heading) == 8_pt);
  CHECK(sheet.least_type_of(TextKind::page_number) == 6_pt);
  CHECK(sheet.least_type_of(TextKind::spine) == 8_pt);
  CHECK(sheet.flatbed_limit == Density::of_ppi(2400));
  CHECK(sheet.jpeg_quality.wanted == 75);
  CHECK(sheet.jpeg_quality.least == 50);
  CHECK(sheet.tone.clipped == 0.05);
  CHECK(sheet.tone.range == 0.4);
  CHECK(sheet.ink.most == 3);
  CHECK(sheet.ink.square == 10_mm);
  CHECK_FALSE(sheet.profile);
  CHECK(sheet.formats == std::vector{Format::jpeg, Format::tiff, Format::png});
  CHECK(sheet.colours ==
        std::vector{ColourModel::bilevel, ColourModel::gray, ColourModel::rgb, ColourModel::cmyk});
}

TEST_CASE("the built-in text is the file, and reads the same from a file") {
  const auto file = read_source(STONEPROOF_SOURCE_DIR "/engine/press/default_sheet.xml");
  REQUIRE(file);
  const std::string text(file.value().text());
  CHECK(built_in_press_sheet_text() == text);
  const Folder folder;
  const auto copy = test::write_file(folder.path / "my press.xml", text);
  const auto reading = read_press_sheet(copy);
  REQUIRE(reading);
  CHECK(reading.value->source == copy.string());
  CHECK(reading.value->flatbed_limit == built_in_press_sheet().flatbed_limit);
}

TEST_CASE("each fault of a sheet is told") {
  struct Case {
    std::string_view part, replacement, faults;
  };
  const Case cases[] = {
      {"300ppi", "300", "wanted=\"300\": a density needs a unit\n"},
      {"300ppi", "300dpi", "wanted=\"300dpi\": \"dpi\" is not a unit of density (did you mean ppi?)\n"},
      {"300ppi", "199ppi", "the least density is above the wanted one\n"},
      {"use=\"clipping\"", "use=\"photo\"", "the use photo is written twice\n"},
      {"<density use=\"clipping\" wanted=\"400ppi\" least=\"300ppi\"/>", "",
       "there is no density for the use clipping\n"},
      {"tolerance=\"1%\"", "tolerance=\"0.01\"", "tolerance=\"0.01\": a share needs a unit\n"},
      {"top=\"3mm\"", "top=\"3\"", "top=\"3\": a length needs a unit\n"},
      {"<cut tolerance=\"1mm\"/>", "", "<press> lacks the element <cut>\n"},
      {"binding=\"spiral\"", "binding=\"saddle\"", "the binding saddle is written twice\n"},
      {"<page-count binding=\"spiral\" multiple=\"2\" least=\"8\" most=\"300\"/>", "",
       "there is no page count for the binding spiral\n"},
      {"most=\"64\"", "most=\"7\"", "the least page count is above the most\n"},
      {"from=\"150\"", "from=\"300\"", "the margin from 300 pages on comes after that from 300\n"},
      {"kind=\"spine\"", "kind=\"body\"", "the kind body is written twice\n"},
      {"compensated=\"no\"", "compensated=\"none\"",
       "compensated=\"none\": this is not one of the known words\n"},
      {"leaf-tolerance=\"0.013mm\"", "leaf-tolerance=\"-1mm\"",
       "leaf-tolerance=\"-1mm\": this length must not be negative\n"},
      {"<fold tolerance=\"1mm\"/>", "", "<press> lacks the element <fold>\n"},
      {"multiple=\"4\"", "multiple=\"0\"", "multiple=\"0\": this number must be from 1 to 99999\n"},
      {"wanted=\"75\"", "wanted=\"49\"", "the least quality is above the wanted one\n"},
      {"wanted=\"75\"", "wanted=\"101\"", "wanted=\"101\": a quality must be from 1 to 100\n"},
      {"<jpeg-quality wanted=\"75\" least=\"50\"/>", "", "<press> lacks the element <jpeg-quality>\n"},
      {"limit=\"300%\"", "limit=\"401%\"", "limit=\"401%\": an ink coverage must be from 0% to 400%\n"},
      {"square=\"10mm\"", "square=\"0mm\"", "square=\"0mm\": this length must be more than zero\n"},
      {"<ink ", "<profile file=\"none.icc\" difference=\"5\" share=\"10%\"/><ink ",
       "the profile cannot be read\n"},
      {"<ink ", "<profile file=\"none.icc\" difference=\"101\" share=\"10%\"/><ink ",
       "difference=\"101\": a difference of colours must be from 0 to 100\n"},
      {"name=\"png\"", "name=\"bmp\"", "name=\"bmp\": this is not one of the known words\n"},
      {"name=\"png\"", "name=\"jpeg\"", "this is written twice\n"},
      {"<colour model=\"rgb\"/>", "<color model=\"rgb\"/>",
       "<colours> takes no element <color> (did you mean colour?)\n"},
      {"press:1", "press:2", "<press> is in the namespace \"urn:stoneproof:press:2\"\n"},
  };
  for (const Case &c : cases) {
    INFO(c.replacement);
    CHECK(faults_with(c.part, c.replacement) == c.faults);
  }
  CHECK(read_press_sheet("/none/press.xml").faults.at(0).fault.what == "there is no such file");
}

TEST_CASE("every word of a sheet is read as the value it stands for") {
  const auto read = [](std::string_view part, const std::string &replacement) {
    std::string text(built_in_press_sheet_text());
    const auto reading =
        parse_press_sheet(SourceText("p", text.replace(text.find(part), part.size(), replacement)));
    REQUIRE(reading);
    return *reading.value;
  };
  const std::string_view formats =
      "<format name=\"jpeg\"/>\n    <format name=\"tiff\"/>\n    <format name=\"png\"/>";
  for (const auto &[format, word] : format_words)
    CHECK(read(formats, fmt::format("<format name=\"{}\"/>", word)).formats == std::vector{format});
  const std::string_view colours = "<colour model=\"bilevel\"/>\n    <colour model=\"gray\"/>\n    <colour "
                                   "model=\"rgb\"/>\n    <colour model=\"cmyk\"/>";
  for (const auto &[colour, word] : colour_words)
    CHECK(read(colours, fmt::format("<colour model=\"{}\"/>", word)).colours == std::vector{colour});
}
