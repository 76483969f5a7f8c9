// Pictures of every kind, written out and read again.
#include "engine/import/picture_export.h"
#include "engine/import/picture_codecs.h"
#include "engine/picture/facts.h"
#include "engine/picture/small_copy.h"
#include "tests/engine/import/opened.h"
#include "tests/support/programs.h"

using namespace stoneproof;
using namespace stoneproof::test;
using namespace stoneproof::finished;

namespace {

struct Exported {
  WrittenPicture written;
  Facts facts;
  std::string file; ///< its bytes
};

/// The picture of a page that shows one, with this dictionary and these bytes.
Exported exported(const std::string &dictionary, const std::string &bytes, MadePdf pdf = {}) {
  const int picture = pdf.stream("/Subtype/Image" + dictionary, bytes);
  const Opened opened(
      one_page(pdf, "9 0 0 9 0 0 cm /I Do", "/XObject<</I " + std::to_string(picture) + " 0 R>>"));
  Folder folder;
  const auto written = write_picture(*opened.file, opened.drawn->parts.images().at(0), folder.path, "one");
  REQUIRE(written);
  const auto facts = read_facts(folder / written.value().file);
  INFO(written.value().file);
  REQUIRE(facts);
  return {written.value(), facts.value(), content_of(folder / written.value().file)};
}

/// What convert of ImageMagick makes of the written file: every pixel as text.
std::string pixels(const std::string &dictionary, const std::string &bytes, MadePdf pdf = {}) {
  const Exported one = exported(dictionary, bytes, std::move(pdf));
  Folder folder;
  std::ofstream(folder.path / "one.tif", std::ios::binary) << one.file;
  return run_command("convert " + folder.file("one.tif") +
                     " -depth 8 rgb:- | od -An -tu1 -v | tr -s ' \\n' ' '");
}

constexpr const char *two_by_one = "/Width 2/Height 1";

} // namespace

TEST_CASE("JPEG pictures are written as they are") {
  Folder folder;
  run_command("convert -size 20x10 gradient: -quality 80 " + folder.file("a.jpg"));
  const std::string jpeg = content_of(folder / "a.jpg");
  REQUIRE(jpeg.size() > 100);
  const Exported one =
      exported("/Width 20/Height 10/BitsPerComponent 8/ColorSpace/DeviceGray/Filter/DCTDecode", jpeg);
  CHECK(one.file == jpeg);
  CHECK(one.written.file == "one.jpg");
  CHECK(one.facts.size == PixelSize{20, 10});
}

TEST_CASE("samples of every colour space keep their colours") {
  const std::string eight = std::string(two_by_one) + "/BitsPerComponent 8/ColorSpace";
  CHECK(pixels(eight + "/DeviceRGB", "\x01\x02\x03\x04\x05\x06") == " 1 2 3 4 5 6 ");
  CHECK(pixels(eight + "/DeviceGray", "\x07\x40") == " 7 7 7 64 64 64 ");
  CHECK(pixels(eight + "/DeviceGray/Decode[1 0]", "\x07\x40") == " 248 248 248 191 191 191 ");
  CHECK(pixels(eight + "[/Indexed/DeviceRGB 1(abcdef)]", std::string("\x01\x00", 2)) ==
        " 100 101 102 97 98 99 ");
  CHECK(pixels(eight + "[/Indexed/DeviceGray 1(az)]", std::string("\x01\x00", 2)) ==
        " 122 122 122 97 97 97 ");
  // An ink that is none of the four darkens as black does.
  CHECK(pixels(eight + "[/Separation/Gold/DeviceCMYK null]", std::string("\x00\xff", 2)) ==
        " 255 255 255 0 0 0 ");
  CHECK(exported(eight + "/DeviceCMYK", "abcdefgh").facts.colour == ColourModel::cmyk);
  CHECK(exported(eight + "[/DeviceN[/Cyan/Gold]/DeviceCMYK null]", "abcd").facts.colour == ColourModel::cmyk);
  CHECK(exported(eight + "[/Lab<</WhitePoint[0.9 1 0.8]>>]", "abcdef").facts.colour == ColourModel::lab);
}

TEST_CASE("samples of fewer and of more bits than eight keep their values") {
  const auto gray = [](int bits, const std::string &bytes) {
    return pixels("/Width 2/Height 1/ColorSpace/DeviceGray/BitsPerComponent " + std::to_string(bits), bytes);
  };
  CHECK(gray(1, "\x40") == " 0 0 0 255 255 255 ");
  CHECK(gray(2, "\x60") == " 85 85 85 170 170 170 ");
  CHECK(gray(4, "\x1f") == " 17 17 17 255 255 255 ");
  CHECK(gray(16, std::string("\x00\x00\xff\xff", 4)) == " 0 0 0 255 255 255 ");
  CHECK(exported("/Width 1/Height 1/ColorSpace/DeviceRGB/BitsPerComponent 16", "abcdef").facts.bits == 16);
}

TEST_CASE("stencils are line art, black where they paint") {
  const Exported one = exported("/Width 8/Height 1/ImageMask true", "\x0f");
  CHECK(one.written.line_art);
  CHECK(one.facts.colour == ColourModel::bilevel);
  CHECK(pixels("/Width 2/Height 1/ImageMask true", "\x40") == " 0 0 0 255 255 255 ");
  CHECK(pixels("/Width 2/Height 1/ImageMask true/Decode[1 0]", "\x40") == " 255 255 255 0 0 0 ");
}

TEST_CASE("a fax keeps its coding and its black") {
  Folder folder;
  run_command(
      "convert -size 64x32 xc:white -fill black -draw 'rectangle 8,8 40,20' -type bilevel -compress Group4 " +
      folder.file("a.tif"));
  run_command("cd " + folder.path.string() + " && tiffcp -c g4 -r 32 a.tif b.tif");
  const std::string tiff = content_of(folder / "b.tif");
  // Where the strip lies is told by exiftool.
  const int from = std::stoi(run_command("exiftool -s3 -StripOffsets " + folder.file("b.tif")));
  const int size = std::stoi(run_command("exiftool -s3 -StripByteCounts " + folder.file("b.tif")));
  const bool white_is_zero =
      run_command("exiftool -s3 -n -PhotometricInterpretation " + folder.file("b.tif"))[0] == '0';
  const std::string coded = tiff.substr(static_cast<std::size_t>(from), static_cast<std::size_t>(size));
  const std::string dictionary =
      "/Width 64/Height 32/BitsPerComponent 1/ColorSpace/DeviceGray/Filter/CCITTFaxDecode/"
      "DecodeParms<</K -1/Columns 64/BlackIs1 ";
  const Exported one = exported(dictionary + (white_is_zero ? "false>>" : "true>>"), coded);
  CHECK(one.facts.size == PixelSize{64, 32});
  CHECK(one.facts.colour == ColourModel::bilevel);
  std::ofstream(folder.path / "one.tif", std::ios::binary) << one.file;
  CHECK(run_command("compare -metric AE " + folder.file("a.tif") + " " + folder.file("one.tif") +
                    " null: 2>&1") == "0");
}

TEST_CASE("rows that are missing are there, and what cannot be decoded is written as it is") {
  CHECK(exported("/Width 4/Height 4/BitsPerComponent 8/ColorSpace/DeviceGray", "abcd").facts.size ==
        PixelSize{4, 4});
  MadePdf pdf;
  const int picture = pdf.stream("/Subtype/Image/Width 4/Height 4/Filter/JBIG2Decode", "some bytes");
  const Opened opened(
      one_page(pdf, "9 0 0 9 0 0 cm /I Do", "/XObject<</I " + std::to_string(picture) + " 0 R>>"));
  Folder folder;
  const auto written = write_picture(*opened.file, opened.drawn->parts.images().at(0), folder.path, "one");
  REQUIRE(written);
  CHECK(written.value().file == "one.jb2");
  CHECK(content_of(folder / "one.jb2") == "some bytes");
}

TEST_CASE("JPEG 2000 and JBIG2 are decoded") {
  Folder folder;
  run_command("convert -size 40x30 gradient:red-blue " + folder.file("a.ppm"));
  run_command("cd " + folder.path.string() + " && opj_compress -n 3 -i a.ppm -o a.jp2 >/dev/null 2>&1");
  const std::string jp2 = content_of(folder / "a.jp2");
  REQUIRE(jp2.size() > 100);
  const Exported colour = exported("/Width 40/Height 30/Filter/JPXDecode", jp2);
  CHECK(colour.facts.size == PixelSize{40, 30});
  CHECK(colour.facts.channels == 3);
  std::ofstream(folder.path / "one.tif", std::ios::binary) << colour.file;
  CHECK(std::stod(run_command("compare -metric MAE " + folder.file("a.ppm") + " " + folder.file("one.tif") +
                              " null: 2>&1 | cut -d' ' -f1")) < 256);
  CHECK_FALSE(decode_jbig2("nonsense", ""));
  CHECK_FALSE(decode_jpeg2000("nonsense that is long enough", 1'000'000));
  CHECK_FALSE(decode_jpeg2000(jp2.substr(0, 60), 1'000'000));
  CHECK_FALSE(decode_jpeg2000(jp2, 100));
}

TEST_CASE("a profile goes into a TIFF, and beside a JPEG that has none") {
  const std::string icc = content_of("/usr/share/color/icc/ghostscript/srgb.icc");
  REQUIRE(icc.size() > 1000);
  MadePdf pdf;
  const int profile = pdf.stream("/N 3", icc);
  const std::string space = "/BitsPerComponent 8/ColorSpace[/ICCBased " + std::to_string(profile) + " 0 R]";
  CHECK(exported("/Width 1/Height 1" + space, "abc", pdf).facts.profile);
  Folder folder;
  run_command("convert -size 20x10 gradient:red-blue -strip " + folder.file("a.jpg"));
  const Exported jpeg =
      exported("/Width 20/Height 10/Filter/DCTDecode" + space, content_of(folder / "a.jpg"), pdf);
  CHECK(jpeg.written.profile == "one.icc");
}
