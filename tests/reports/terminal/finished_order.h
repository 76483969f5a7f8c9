// A finished PDF, and the file that its picture was made from.
#pragma once

#include "tests/reports/terminal/run_program.h"
#include "tests/support/made_pdf.h"
#include "tests/support/programs.h"

#include <nlohmann/json.hpp>

namespace stoneproof::test {

/// A file and an export of it: 1,200 pixels wide, and 300 in the PDF, where it is printed 3 in wide.
class Order {
public:
  Order() {
    fs::create_directory(folder.path / "scans of the m\xC5\x82yn");
    const std::string scan = "'" + folder.file("scans of the m\xC5\x82yn/mill.png") + "'";
    run_command("convert -size 1200x800 -seed 3 plasma:red-blue -blur 0x4 " + scan);
    run_command("convert " + scan + " -resize 300x200 -quality 90 " + folder.file("small.jpg"));
    MadePdf pdf;
    const int picture = pdf.stream(
        "/Subtype/Image/Width 300/Height 200/BitsPerComponent 8/ColorSpace/DeviceRGB/Filter/DCTDecode",
        content_of(folder / "small.jpg"));
    std::ofstream(folder.path / "album.pdf", std::ios::binary)
        << one_page(pdf, "216 0 0 144 40 30 cm /I Do", "/XObject<</I " + std::to_string(picture) + " 0 R>>",
                    "/TrimBox[10 10 290 190]/BleedBox[1 1 299 199]");
  }
  Ran run(Words words) const { return stoneproof::test::run(folder.path, words); }
  nlohmann::json record(const std::string &name) const {
    return nlohmann::json::parse(content_of(folder / name));
  }

  Folder folder;
};

/// Rule, grade, page and message of every finding.
inline std::string findings_of(const nlohmann::json &record) {
  std::string all;
  for (const auto &finding : record["findings"])
    all += finding["rule"].get<std::string>() + " " + finding["grade"].get<std::string>() + " " +
           finding["page"].dump() + " " + finding["message"].get<std::string>() + "\n";
  return all;
}

} // namespace stoneproof::test
