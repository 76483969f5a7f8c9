// Facts of real files that nobody here made, against what exiftool, ImageMagick and libtiff's tiffinfo say of
// them. The files are fetched by tests/get-samples.sh; without them this test fails, because silence would
// prove nothing.
#include "engine/picture/orientation.h"
#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/outside/samples.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <map>
#include <sstream>

using namespace stoneproof;

namespace {

// A command's lines, cut at tabs; the first field is the path.
std::map<std::string, std::vector<std::string>> table_of(const std::string &command) {
  std::map<std::string, std::vector<std::string>> rows;
  // A damaged file makes a status of its own; what matters is the lines.
  std::istringstream lines(stoneproof::test::print_of(command).out);
  for (std::string line; std::getline(lines, line);) {
    std::istringstream parts(line);
    std::vector<std::string> fields;
    for (std::string field; std::getline(parts, field, '\t');) fields.push_back(field == "-" ? "" : field);
    if (!fields.empty()) rows[fields[0]] = {fields.begin() + 1, fields.end()};
  }
  return rows;
}

std::filesystem::path write_list(const test::Folder &folder, const std::vector<std::filesystem::path> &files,
                                 const std::string &after) {
  std::ofstream list(folder / "list");
  for (const auto &file : files) list << file.string() << after << "\n";
  return folder / "list";
}

double number(const std::string &text) { return text.empty() ? 0 : std::atof(text.c_str()); }

struct Disagreement {
  std::string file, field, why;
};

// Files in which a tool and stoneproof differ, and why stoneproof is content with its own answer.
const Disagreement known[] = {
    {"broken_exif_dpi.jpg", "ppi across", "the density is stored as text, which Exif does not allow"},
    {"broken_exif_dpi.jpg", "ppi down", "the density is stored as text, which Exif does not allow"},
    {"crash-2020-10-test.tif", "bits", "exiftool passes over entries of a broken format, libtiff mends them"},
    {"crash-2020-10-test.tif", "channels",
     "exiftool passes over entries of a broken format, libtiff mends them"},
    {"crash-2020-10-test.tif", "pages", "tiffinfo stops at the second directory, which is broken"},
    {"crash-63b1dffefc8c075ddc606c0a2f5fdc15ece78863.tif", "bits", "as the other crash file"},
    {"crash-63b1dffefc8c075ddc606c0a2f5fdc15ece78863.tif", "channels", "as the other crash file"},
    {"old-style-jpeg-compression-no-samplesperpixel.tif", "channels",
     "libtiff looks into the old JPEG itself"},
    {"crash-0e16d3bfb83be87356d026d66919deaefca44dac.tif", "colour tag",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-0e16d3bfb83be87356d026d66919deaefca44dac.tif", "profile",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-1152ec2d1a1a71395b6f2ce6721c38924d025bf3.tif", "colour tag",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-1152ec2d1a1a71395b6f2ce6721c38924d025bf3.tif", "profile",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-338516dbd2f0e83caddb8ce256c22db3bd6dc40f.tif", "colour tag",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-338516dbd2f0e83caddb8ce256c22db3bd6dc40f.tif", "profile",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-4f085cc12ece8cde18758d42608bed6a2a2cfb1c.tif", "colour tag",
     "exiftool gives up on an entry that libtiff mends"},
    {"crash-4f085cc12ece8cde18758d42608bed6a2a2cfb1c.tif", "profile",
     "exiftool gives up on an entry that libtiff mends"},
    {"icc-after-SOF.jpg", "colour tag", "exiftool looks for no profile after the header of the frame"},
    {"icc-after-SOF.jpg", "profile", "exiftool looks for no profile after the header of the frame"},
};

class Report {
public:
  void compare(const std::filesystem::path &file, const std::string &field, double ours, double theirs) {
    ++compared_;
    if (std::abs(ours - theirs) <= 1e-4 * std::abs(theirs)) return;
    for (const Disagreement &one : known)
      if (file.native().ends_with(one.file) && field == one.field) return;
    text_ += fmt::format("{} {}: {} here, {} there\n", file.string(), field, ours, theirs);
  }
  const std::string &text() const { return text_; }
  int compared() const { return compared_; }

private:
  std::string text_;
  int compared_ = 0;
};

double ppi(const std::optional<Density> &density) { return density ? density->ppi() : 0; }

} // namespace

TEST_CASE("facts agree with exiftool: channels, bits, orientation, density") {
  const auto files = test::samples();
  const test::Folder folder;
  // Fields that a file lacks come as "-"; -n keeps numbers as they are stored.
  const auto theirs = table_of(
      "exiftool -q -q -n -f -p "
      "'$Directory/$FileName\t$File:BitsPerSample\t$File:ColorComponents\t$PNG:BitDepth\t"
      "$PNG:ColorType\t$IFD0:BitsPerSample\t$IFD0:SamplesPerPixel\t$IFD0:Orientation\t$JFIF:ResolutionUnit\t"
      "$JFIF:XResolution\t$JFIF:YResolution\t$IFD0:ResolutionUnit\t$IFD0:XResolution\t$IFD0:YResolution\t"
      "$PNG-pHYs:PixelUnits\t$PNG-pHYs:PixelsPerUnitX\t$PNG-pHYs:PixelsPerUnitY' -@ " +
      write_list(folder, files, "").string() + " 2>/dev/null");
  Report report;
  for (const auto &file : files) {
    const auto facts = read_facts(file);
    const auto row = theirs.find(file.string());
    if (!facts || row == theirs.end() || row->second.size() < 16) continue;
    const Facts &ours = facts.value();
    const auto field = [&](std::size_t i) { return number(row->second[i]); };
    double bits = field(0), channels = field(1), unit = 0, x = 0, y = 0;
    if (ours.format == Format::png) {
      constexpr int by_type[] = {1, 0, 3, 1, 2, 0, 4};
      bits = field(2);
      channels = by_type[static_cast<int>(field(3)) % 7];
      unit = field(13) == 1 ? 0.0254 : 0;
      x = field(14), y = field(15);
    } else {
      const bool jfif = ours.format == Format::jpeg && field(7) > 0;
      const double code = jfif ? field(7) + 1 : row->second[10].empty() ? 2 : field(10);
      unit = code == 2 ? 1 : code == 3 ? 2.54 : 0;
      x = jfif ? field(8) : field(11), y = jfif ? field(9) : field(12);
    }
    if (ours.format == Format::tiff) {
      bits = row->second[4].empty() ? 1 : field(4); // TIFF 6.0: a missing tag is 1
      channels = row->second[5].empty() ? 1 : field(5);
    }
    if (ours.format != Format::png) {
      const double turn = field(6);
      report.compare(file, "orientation", ours.orientation, turn >= 1 && turn <= 8 ? turn : 1);
    }
    const bool lies = ours.orientation >= 5;
    report.compare(file, "bits", ours.bits, bits);
    report.compare(file, "channels", ours.channels, channels);
    report.compare(file, "ppi across", ppi(lies ? ours.stored_y : ours.stored_x), x * unit);
    report.compare(file, "ppi down", ppi(lies ? ours.stored_x : ours.stored_y), y * unit);
  }
  CHECK(report.compared() > 1000);
  CHECK(report.text() == "");
}

TEST_CASE("facts agree with exiftool: what is said of the colours, floating samples") {
  const auto files = test::samples();
  const test::Folder folder;
  const auto theirs =
      table_of("exiftool -q -q -n -f -p "
               "'$Directory/$FileName\t$ICC_Profile:ProfileFileSignature\t$PNG:SRGBRendering\t$PNG:Gamma\t"
               "$PNG:WhitePointX\t$ExifIFD:ColorSpace\t$InteropIFD:InteropIndex\t$IFD0:SampleFormat' -@ " +
               write_list(folder, files, "").string() + " 2>/dev/null");
  Report report;
  std::map<ColourTag, int> met;
  for (const auto &file : files) {
    const auto facts = read_facts(file);
    const auto row = theirs.find(file.string());
    if (!facts || row == theirs.end() || row->second.size() < 7) continue;
    const Facts &ours = facts.value();
    const auto has = [&](std::size_t i) { return !row->second[i].empty(); };
    ColourTag tag = ColourTag::none;
    if (ours.format == Format::png) {
      if (has(1) || has(2) || has(3)) tag = has(1) ? ColourTag::srgb : ColourTag::gamma;
    } else if (ours.format == Format::jpeg) {
      const double space = number(row->second[4]);
      if (space == 1) tag = ColourTag::srgb;
      if (space == 0xFFFF && row->second[5] == "R03") tag = ColourTag::adobe;
    }
    if (has(0)) tag = ColourTag::profile;
    report.compare(file, "colour tag", static_cast<int>(ours.tag), static_cast<int>(tag));
    report.compare(file, "profile", ours.profile.has_value(), tag == ColourTag::profile);
    const bool tiff = ours.format == Format::tiff;
    report.compare(file, "floating", ours.floating, tiff && number(row->second[6]) == 3);
    ++met[tag];
  }
  CHECK(report.compared() > 1000);
  for (const ColourTag tag : {ColourTag::none, ColourTag::srgb, ColourTag::gamma, ColourTag::profile})
    CHECK(met[tag] > 5);
  CHECK(report.text() == "");
}

TEST_CASE("facts agree with ImageMagick: width and height; what it can read is not refused") {
  const auto files = test::samples();
  const test::Folder folder;
  const auto theirs = table_of("xargs -a " + write_list(folder, files, "[0]").string() +
                               " -d '\\n' identify -ping -format '%d/%f\t%w\t%h\n' 2>/dev/null");
  Report report;
  for (const auto &file : files) {
    const auto facts = read_facts(file);
    const auto row = theirs.find(file.string());
    // ImageMagick gives 0 x 0 for a file that it could not read.
    if (row == theirs.end() || row->second.size() < 2 || row->second[0] == "0") continue;
    report.compare(file, "read", bool(facts), 1);
    if (!facts) continue;
    const PixelSize stored = Orientation(facts.value().orientation).stored(facts.value().size);
    report.compare(file, "width", static_cast<double>(stored.width), number(row->second[0]));
    report.compare(file, "height", static_cast<double>(stored.height), number(row->second[1]));
  }
  CHECK(report.compared() > 1000);
  CHECK(report.text() == "");
}

// Reduced copies and masks (bits 0 and 2 of the subfile type) are no pictures of their own.
TEST_CASE("the pages of a TIFF agree with tiffinfo") {
  Report report;
  for (const auto &file : test::samples()) {
    const auto facts = read_facts(file);
    if (!facts || facts.value().format != Format::tiff) continue;
    const auto theirs = table_of("printf 'pages\\t%d\\n' $(tiffinfo '" + file.string() +
                                 "' 2>/dev/null | awk '/^=== /{n++; page=1} /^--- /{page=0} "
                                 "page && /Subfile Type:.*(reduced|mask)/{n--} END{print n}')");
    report.compare(file, "pages", facts.value().pages, std::max(1.0, number(theirs.at("pages").at(0))));
  }
  CHECK(report.compared() > 100);
  CHECK(report.text() == "");
}

TEST_CASE("every sample, damaged or not, ends in a preview or a fault") {
  int previews = 0;
  for (const auto &file : test::samples()) {
    CAPTURE(file.string());
    const auto facts = read_facts(file);
    if (!facts) {
      CHECK((!facts.fault().what.empty() && facts.fault().where == file.string() &&
             !facts.fault().remedy.empty()));
      continue;
    }
    const PixelSize size = facts.value().size;
    const auto preview =
        read_preview(file, facts.value(),
                     {{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)}, 100, 100});
    if (!preview) CHECK((!preview.fault().what.empty() && !preview.fault().remedy.empty()));
    previews += bool(preview);
  }
  CHECK(previews > 500);
}
