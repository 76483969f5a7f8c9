// Loads a press profile. Only way in: read_press_profile. Tested in tests/engine/press/profile.test.cpp.
#include "engine/press/read_profile.h"

#include "engine/colour/press_table.h"
#include "engine/xml/values.h"

#include <fstream>
#include <sstream>
#include <string>

namespace stoneproof {

namespace {

constexpr std::uintmax_t most_bytes = 32'000'000;

bool read_bytes(const std::filesystem::path &file, std::vector<std::uint8_t> &bytes) {
  std::error_code error;
  if (!std::filesystem::is_regular_file(file, error)) return false;
  if (std::filesystem::file_size(file, error) > most_bytes || error) return false;
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  const std::string read = text.str();
  bytes.assign(read.begin(), read.end());
  return in.good();
}

} // namespace

std::shared_ptr<const PressProfile>
read_press_profile(const Element &element, const std::filesystem::path &folder, FaultList &faults) {
  ElementReader reader(element, faults);
  const std::size_t before = faults.count();
  auto profile = std::make_shared<PressProfile>();
  profile->file = reader.required("file", parse_file_name);
  profile->difference = reader.required("difference", parse_difference);
  profile->share = reader.required("share", parse_share);
  if (faults.count() > before) return nullptr;
  if (!read_bytes(folder / profile->file, profile->icc)) {
    reader.fault(reader.place_of("file"), "the profile cannot be read",
                 "Write the name of an ICC profile as seen from the press sheet, or leave <profile> out.");
    return nullptr;
  }
  profile->facts = read_profile(profile->icc);
  // What is wrong with it shows when a colour is converted.
  const auto table = PressTable::make({}, ProfileSpace::gray, profile->icc, profile->difference);
  if (!table) {
    reader.fault(reader.place_of("file"), table.fault().what, table.fault().remedy);
    return nullptr;
  }
  return profile;
}

} // namespace stoneproof
