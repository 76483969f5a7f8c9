// Reads bytes as a picture file under small limits. Only way in: the functions of harnesses.h.
// Replayed by tests/fuzz/replay.test.cpp.
#include "engine/colour/profile.h"
#include "engine/picture/preview.h"
#include "engine/picture/rows.h"
#include "tests/fuzz/memory_file.h"

namespace stoneproof::fuzz {

namespace {

/// Touches every byte, so that a row that ends too early is seen.
void read_rows(const std::string &file, PixelSize stored, const PictureLimits &limits) {
  const auto rows = open_rows(file, {0, 0, stored.width, stored.height, stored.width, stored.height}, limits);
  if (!rows) return check(rows.fault());
  const RowLayout &layout = rows.value()->layout();
  const auto row_bytes = static_cast<std::size_t>(layout.width * layout.channels * (layout.bits > 8 ? 2 : 1));
  volatile std::uint8_t sum = 0;
  for (std::int64_t y = 0; y < layout.height; ++y) {
    const auto row = rows.value()->next();
    if (!row) return check(row.fault());
    must(row.value().size() >= row_bytes);
    for (const std::uint8_t byte : row.value()) sum = static_cast<std::uint8_t>(sum ^ byte);
  }
}

void read_picture(Bytes bytes) {
  const MemoryFile file(bytes);
  const PictureLimits limits{.most_pixels = 1'000'000, .most_memory = 64'000'000};
  const auto read = read_facts(file.path(), limits);
  if (!read) return check(read.fault());
  const Facts &facts = read.value();
  const PixelSize size = facts.size;
  must(size.width > 0 && size.height > 0 && size.width * size.height <= limits.most_pixels);
  must(facts.pages >= 1 && facts.orientation >= 1 && facts.orientation <= 8);
  const bool lies = facts.orientation >= 5;
  read_rows(file.path(), lies ? PixelSize{size.height, size.width} : size, limits);
  const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
  const auto preview =
      read_preview(file.path(), facts, {{width / 3, height / 4, width / 2, height / 2}, 20, 15}, limits);
  if (!preview) check(preview.fault());
}

} // namespace

void jpeg(Bytes bytes) {
  if (starts(bytes, "\xFF\xD8\xFF")) read_picture(bytes);
}

void tiff(Bytes bytes) {
  if (starts(bytes, "II") || starts(bytes, "MM")) read_picture(bytes);
}

void png(Bytes bytes) {
  if (starts(bytes, "\x89PNG\r\n\x1A\n")) read_picture(bytes);
}

void gif(Bytes bytes) {
  if (starts(bytes, "GIF8")) read_picture(bytes);
}

void webp(Bytes bytes) {
  if (starts(bytes, "RIFF") && starts(bytes, "WEBP", 8)) read_picture(bytes);
}

void heif(Bytes bytes) {
  if (starts(bytes, "ftyp", 4)) read_picture(bytes);
}

void icc(Bytes bytes) {
  const ProfileFacts facts = read_profile(bytes);
  must(facts.description.size() <= 1000);
}

} // namespace stoneproof::fuzz
