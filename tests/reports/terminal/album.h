// A stapled album of one page, and seven to be written on, to run the program on.
#pragma once

#include "tests/reports/terminal/run_program.h"

#include <cstdint>

namespace stoneproof::test {

/// A gray TIFF without compression (TIFF 6.0, section 4) whose pixels run through all tones.
inline std::string gray_tiff(std::uint16_t width, std::uint16_t height) {
  std::string file;
  const auto put16 = [&](std::uint32_t value) {
    file += static_cast<char>(value & 0xff);
    file += static_cast<char>(value >> 8 & 0xff);
  };
  const auto put32 = [&](std::uint32_t value) { put16(value & 0xffff), put16(value >> 16); };
  const std::uint32_t pixels = std::uint32_t{width} * height;
  const std::uint32_t tags[][2] = {{256, width}, {257, height}, {258, 8},      {259, 1},     {262, 1},
                                   {273, 8},     {277, 1},      {278, height}, {279, pixels}};
  file += "II*";
  file += '\0';
  put32(8 + pixels + pixels % 2);
  for (std::uint32_t i = 0; i < pixels + pixels % 2; ++i)
    file += static_cast<char>((i * 7 + i / width * 3) & 0xff);
  put16(std::size(tags));
  for (const auto &[tag, value] : tags) put16(tag), put16(4), put32(1), put32(value); // 4: LONG
  put32(0);
  return file;
}

inline std::string album_xml(const std::string &pictures, const std::string &frames) {
  return R"(<?xml version="1.0" encoding="UTF-8"?>
<book xmlns="urn:stoneproof:book:1" title="The harbour" language="en">
  <trim width="200mm" height="250mm"/>
  <bleed top="3mm" bottom="3mm" outside="3mm" inside="0mm"/>
  <safe-margin top="5mm" bottom="5mm" outside="5mm" inside="5mm"/>
  <binding kind="saddle" gutter-loss="6mm"/>
  <pictures>
)" + pictures +
         R"(  </pictures>
  <pages>
    <page number="1">
)" + frames +
         R"(      <text kind="page-number" x="150mm" y="230mm" width="20mm" height="8mm" size="9pt">1</text>
    </page>
    <blank number="2" count="7"/>
  </pages>
</book>
)";
}

/// 600 x 400 px on 50.8 x 33.87 mm: 300 ppi to a hair.
inline const std::string harbour = "    <picture id=\"harbour\" file=\"scans/harbour.tif\"/>\n";
inline const std::string harbour_well =
    "      <frame id=\"f1\" picture=\"harbour\" x=\"20mm\" y=\"20mm\" width=\"2in\" height=\"1.3333in\"/>\n";
/// The same on 6 x 4 in: 100 ppi.
inline const std::string harbour_large =
    "      <frame id=\"f1\" picture=\"harbour\" x=\"20mm\" y=\"20mm\" width=\"6in\" height=\"4in\"/>\n";

/// A folder with scans/harbour.tif and a clear album.xml and a held held.xml.
struct AlbumFolder : Folder {
  AlbumFolder() {
    write_file(path / "scans/harbour.tif", gray_tiff(600, 400));
    write_file(path / "album.xml", album_xml(harbour, harbour_well));
    write_file(path / "held.xml", album_xml(harbour, harbour_large));
  }
};

} // namespace stoneproof::test
