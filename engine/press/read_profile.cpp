// Loads a press profile. Only way in: read_press_profile. Tested in tests/engine/press/profile.test.cpp.
#include "engine/press/read_profile.h"

#include "engine/xml/values.h"

#include <fstream>
#include <sstream>
#include <string>

namespace stoneproof {

namespace {

constexpr std::uintmax_t most_bytes = 32'000'000;

/// What is wrong with a profile for a press, or nothing.
std::string_view fault_of(const ProfileFacts &facts) {
  if (facts.broken) return "the file is no sound ICC profile";
  if (facts.space != ProfileSpace::cmyk) return "the profile is not one of CMYK inks";
  if (facts.made_for != ProfileClass::output) return "the profile is not one of an output device";
  return {};
}

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
  if (const auto fault = fault_of(profile->facts); !fault.empty()) {
    reader.fault(reader.place_of("file"), std::string(fault),
                 "Ask the printer for the output profile of press and paper, or leave <profile> out.");
    return nullptr;
  }
  return profile;
}

} // namespace stoneproof
