// Press sheets that name the profile of a press; the profile comes from the Debian package libgs-common.
#include "engine/press/read.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

using namespace stoneproof;
using stoneproof::test::Folder;

namespace {

const std::filesystem::path cmyk = "/usr/share/color/icc/ghostscript/default_cmyk.icc",
                            rgb = "/usr/share/color/icc/ghostscript/srgb.icc";

Reading<PressSheet> with_profile(const Folder &folder, const std::string &file) {
  std::string text(built_in_press_sheet_text());
  text.replace(text.find("<ink "), 5,
               "<profile file=\"" + file + "\" difference=\"4.5\" share=\"12%\"/><ink ");
  return read_press_sheet(test::write_file(folder.path / "sheet.xml", text));
}

} // namespace

TEST_CASE("the profile of a press is found from the sheet's folder and read whole") {
  const Folder folder;
  std::filesystem::copy(cmyk, folder.path / "Prasa Żółta.icc");
  const auto reading = with_profile(folder, "Prasa Żółta.icc");
  REQUIRE(reading);
  REQUIRE(reading.value->profile);
  const PressProfile &profile = *reading.value->profile;
  CHECK(profile.icc.size() == std::filesystem::file_size(cmyk));
  CHECK(profile.facts.space == ProfileSpace::cmyk);
  CHECK_FALSE(profile.facts.description.empty());
  CHECK(profile.difference == 4.5);
  CHECK(profile.share == 0.12);
}

TEST_CASE("a file that is no profile of a press is told with its place") {
  const Folder folder;
  test::write_file(folder.path / "text.icc", "not a profile");
  const auto fault_of = [&](const std::string &file) {
    const auto reading = with_profile(folder, file);
    REQUIRE(reading.faults.size() == 1);
    CHECK(reading.faults[0].fault.where.find("sheet.xml:") != std::string::npos);
    return reading.faults[0].fault.what;
  };
  CHECK(fault_of("text.icc") == "this is not a colour profile that can be read");
  CHECK(fault_of(rgb.string()) ==
        "this profile is not one of a press that prints with cyan, magenta, yellow and black");
  CHECK(fault_of(".") == "the profile cannot be read");
}
