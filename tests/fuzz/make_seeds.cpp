// Writes small pictures of every kind, PDFs and parts of them for the fuzzers to begin with. Usage:
// make_seeds DIR Run by tests/fuzz/seeds.sh.
#include "tests/engine/picture/make_newer.h"
#include "tests/support/made_pdf.h"

#include <tiff.h>

namespace {

class Writer {
public:
  explicit Writer(std::filesystem::path folder) : folder_(std::move(folder)) {}
  /// Where the next seed of the family goes.
  std::filesystem::path next(const std::string &family) {
    std::filesystem::create_directories(folder_ / family);
    return folder_ / family / ("made-" + std::to_string(++count_));
  }

private:
  std::filesystem::path folder_;
  int count_ = 0;
};

void write_classic(Writer &to) {
  const made::Raster rgb = made::busy(24, 20, 3), gray = made::busy(24, 20, 1), four = made::busy(24, 20, 4);
  const made::Exif exif{.orientation = 6, .x = 300, .y = 300, .unit = 2};
  made::write_jpeg(to.next("jpeg"), rgb, {.exif = exif, .icc_bytes = 200});
  made::write_jpeg(to.next("jpeg"), rgb, {.progressive = true});
  made::write_jpeg(to.next("jpeg"), four, {.ycck = true});
  made::write_jpeg(to.next("jpeg"), gray, {.arithmetic = true});
  for (const int packing :
       {COMPRESSION_NONE, COMPRESSION_LZW, COMPRESSION_ADOBE_DEFLATE, COMPRESSION_PACKBITS}) {
    made::write_tiff(to.next("tiff"), rgb, {.compression = packing, .tiled = true, .big = true, .tile = 16});
    made::write_tiff(to.next("tiff"), four,
                     {.photometric = PHOTOMETRIC_SEPARATED, .compression = packing, .planar = true});
    made::write_tiff(to.next("tiff"), made::busy(24, 20, 3, 16),
                     {.compression = packing, .big_endian = true});
  }
  made::write_tiff(to.next("tiff"), rgb,
                   {.photometric = PHOTOMETRIC_YCBCR, .compression = COMPRESSION_JPEG, .rows_per_strip = 16});
  made::write_tiff(to.next("tiff"), made::busy(24, 20, 1, 1),
                   {.photometric = 0, .compression = COMPRESSION_CCITTFAX4});
  made::write_png(to.next("png"), rgb, {.unit = 1, .x = 11811, .y = 11811});
  made::write_png(to.next("png"), four, {.colour_type = 6, .interlaced = true});
  made::write_png(to.next("png"), made::busy(24, 20, 1, 4),
                  {.colour_type = 3, .palette = std::vector<std::array<std::uint8_t, 3>>(16, {1, 2, 3})});
}

void write_newer(Writer &to) {
  const made::Raster rgb = made::busy(24, 20, 3), four = made::busy(24, 20, 4);
  const std::vector<std::array<std::uint8_t, 3>> palette(16, {1, 2, 3});
  for (const bool interlaced : {false, true})
    made::write_gif(to.next("gif"), made::busy(24, 20, 1, 4),
                    {.screen_width = 30,
                     .screen_height = 25,
                     .left = 2,
                     .top = 3,
                     .interlaced = interlaced,
                     .palette = palette,
                     .local = interlaced,
                     .see_through = 3,
                     .pages = 2,
                     .icc = made::Bytes(interlaced ? 300 : 0, 7)});
  const made::Bytes segment = made::exif_segment({.orientation = 6, .x = 300, .y = 300, .unit = 2});
  const made::Bytes exif(segment.begin() + 6, segment.end());
  for (const bool lossless : {false, true})
    for (const made::Raster &picture : {rgb, four}) {
      made::write_webp(to.next("webp"), picture, {.lossless = lossless});
      made::write_webp(to.next("webp"), picture,
                       {.lossless = lossless, .icc = made::Bytes(100, 7), .exif = exif});
      made::write_webp(
          to.next("webp"), picture,
          {.lossless = lossless, .canvas_width = 40, .canvas_height = 30, .left = 4, .pages = 2});
      for (const bool avif : {false, true})
        made::write_heif(to.next("heif"), picture,
                         {.avif = avif, .lossless = lossless, .orientation = lossless ? 6 : 1, .exif = exif});
    }
}

void write_pdf(Writer &to) {
  using stoneproof::test::write_file;
  const std::string content =
      "q 1 0 0 1 5 5 cm 0 0 90 90 re W n /I Do /F Do Q BT /T 12 Tf 10 20 Td [(ab)-200(c)] TJ T* (d) ' ET "
      "/Pattern cs /P scn 0 0 50 50 re f 0.5 w 1 0 0 RG 0 0 m 9 9 l 1 2 3 4 5 6 c S /OC /L BDC EMC "
      "BI /W 2 /H 2 /BPC 8 /CS /G ID abcd EI ";
  stoneproof::test::MadePdf pdf;
  const auto ref = [](int number) { return std::to_string(number) + " 0 R"; };
  const int image =
      pdf.stream("/Subtype/Image/Width 2/Height 2/BitsPerComponent 4/ColorSpace[/Indexed/DeviceRGB 3 "
                 "<000102030405>]/Decode[0 15]/Filter/AHx/SMask 1 0 R",
                 "10 20>");
  const int form = pdf.stream("/Subtype/Form/BBox[0 0 9 9]/Matrix[1 0 0 1 2 2]", "0 0 3 3 re f");
  const int pattern = pdf.stream("/PatternType 1/BBox[0 0 9 9]/XStep 9/YStep 9", "0 0 3 3 re f");
  const int map =
      pdf.stream("", "1 beginbfrange <00> <05> <0041> endbfrange 1 beginbfchar <61> <0062> endbfchar");
  const int font = pdf.add("<</Type/Font/Subtype/Type0/BaseFont/A/ToUnicode " + ref(map) +
                           "/DescendantFonts[<</DW 500/W[1[2 3]4 5 6]>>]>>");
  const int layer = pdf.add("<</Type/OCG>>");
  const std::string resources = "/XObject<</I " + ref(image) + "/F " + ref(form) + ">>/Pattern<</P " +
                                ref(pattern) + ">>/Font<</T " + ref(font) + ">>/Properties<</L " +
                                ref(layer) + ">>";
  write_file(to.next("pdf"),
             one_page(pdf, content, resources,
                      "/Rotate 90/TrimBox[1 1 9 9]/Annots[<</Rect[0 0 1 1]/Subtype/Text>>]",
                      "/PageLabels<</Nums[0<</S/r>>]>>/OCProperties<</OCGs[" + ref(layer) + "]/D<<>>>>"));
  write_file(to.next("content"), content);
  write_file(to.next("content"), "2 beginbfrange <01> <03> <0061> <10> <11> [<0041> <D83DDE00>] endbfrange");
  for (const char kind : {0, 1, 2, 3, 4})
    write_file(to.next("filter"), std::string{kind, 12, 3, 4} + "abc4142~>z");
}

} // namespace

int main(int count, char **words) {
  if (count != 2) return 2;
  Writer writer(words[1]);
  write_classic(writer);
  write_newer(writer);
  write_pdf(writer);
}
