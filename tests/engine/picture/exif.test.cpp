// Who made a picture, as Exif says it.
#include "engine/picture/exif.h"

#include "tests/support/catch.h"

#include <string>
#include <vector>

using namespace stoneproof;

namespace {

using Bytes = std::vector<std::uint8_t>;

void add16(Bytes &bytes, unsigned value) {
  bytes.push_back(static_cast<std::uint8_t>(value & 0xFF));
  bytes.push_back(static_cast<std::uint8_t>(value >> 8));
}
void add32(Bytes &bytes, unsigned value) {
  add16(bytes, value & 0xFFFF);
  add16(bytes, value >> 16);
}
void add_entry(Bytes &bytes, unsigned tag, unsigned type, unsigned count, unsigned value) {
  add16(bytes, tag);
  add16(bytes, type);
  add32(bytes, count);
  add32(bytes, value);
}

/// An APP1 segment, little-endian, with maker and model of 8 bytes each, and an f-number where it is a
/// camera's.
Bytes segment(const std::string &maker, const std::string &model, bool camera) {
  constexpr unsigned ascii = 2, rational = 5, long_number = 4;
  const unsigned entries = camera ? 3 : 2, values = 8 + 2 + entries * 12 + 4;
  Bytes bytes = {'E', 'x', 'i', 'f', 0, 0, 'I', 'I', 42, 0};
  add32(bytes, 8);
  add16(bytes, entries);
  add_entry(bytes, 271, ascii, 8, values);
  add_entry(bytes, 272, ascii, 8, values + 8);
  if (camera) add_entry(bytes, 34665, long_number, 1, values + 16);
  add32(bytes, 0);
  for (const std::string &text : {maker, model})
    for (std::size_t i = 0; i < 8; ++i)
      bytes.push_back(i < text.size() ? static_cast<std::uint8_t>(text[i]) : 0);
  if (!camera) return bytes;
  add16(bytes, 1);
  add_entry(bytes, 33437, rational, 1, values + 16 + 2 + 12 + 4);
  add32(bytes, 0);
  add32(bytes, 28);
  add32(bytes, 10);
  return bytes;
}

} // namespace

TEST_CASE("a scanner is known by maker and model, a camera by its exposure") {
  const auto scanner = read_exif(segment("Lumen", "Flat 40", false));
  REQUIRE(scanner);
  CHECK(scanner->device == "Lumen Flat 40");
  CHECK_FALSE(scanner->camera);
  const auto camera = read_exif(segment("Lumen", "Lumen 7", true));
  REQUIRE(camera);
  CHECK(camera->device == "Lumen 7");
  CHECK(camera->camera);
}

TEST_CASE("what is not printable has no place in a device's name") {
  CHECK(device_name("", "") == "");
  CHECK(device_name(" Lumen \n", "") == "Lumen");
  CHECK(device_name("", "Flat\x01 40\xff ") == "Flat 40");
}
