// Counts the directories of a TIFF by their chain alone (TIFF 6.0, section 2; BigTIFF: 8-byte counts and
// offsets). Only way in: count_tiff_pages. Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/tiff_session.h"

#include <unordered_set>

namespace stoneproof {

namespace {

constexpr std::size_t most_pages = 10'000;

// Tag 254, bits 0 and 2: a reduced copy, a mask. Tag 255, an older one: 2 is a reduced copy (TIFF 6.0). Tags
// stand in ascending order, so it is the first entry.
constexpr std::uint64_t new_kind = 254, old_kind = 255, reduced_or_mask = 1 | 4, old_reduced = 2;

// Reads whole numbers in the byte order of the file.
class Numbers {
public:
  explicit Numbers(const PictureFile &file) : file_(file), little_(file.head()[0] == 'I') {}

  /// The number of `bytes` bytes at `offset`, or 0 past the end of the file.
  std::uint64_t at(std::uint64_t offset, int bytes) const {
    std::array<std::uint8_t, 8> raw{};
    if (file_.read_at(offset, raw.data(), static_cast<std::size_t>(bytes)) != static_cast<std::size_t>(bytes))
      return 0;
    std::uint64_t value = 0;
    for (int i = 0; i < bytes; ++i)
      value = value << 8 | raw[static_cast<std::size_t>(little_ ? bytes - 1 - i : i)];
    return value;
  }

private:
  const PictureFile &file_;
  bool little_;
};

bool is_lesser(const Numbers &numbers, std::uint64_t entry, bool big) {
  const std::uint64_t tag = numbers.at(entry, 2);
  if (tag != new_kind && tag != old_kind) return false;
  // A SHORT lies at the left of its field.
  const int bytes = numbers.at(entry + 2, 2) == 3 ? 2 : 4;
  const std::uint64_t value = numbers.at(entry + (big ? 12 : 8), bytes);
  return tag == new_kind ? (value & reduced_or_mask) != 0 : value == old_reduced;
}

} // namespace

int count_tiff_pages(const PictureFile &file) {
  if (file.head().size() < 8) return 1;
  const Numbers numbers(file);
  const bool big = numbers.at(2, 2) == 43;
  const int count_bytes = big ? 8 : 2, offset_bytes = big ? 8 : 4, entry_bytes = big ? 20 : 12;
  std::uint64_t directory = numbers.at(big ? 8 : 4, offset_bytes);
  std::unordered_set<std::uint64_t> seen;
  int pages = 0;
  while (directory != 0 && directory < file.size() && seen.size() < most_pages &&
         seen.insert(directory).second) {
    if (!is_lesser(numbers, directory + static_cast<std::uint64_t>(count_bytes), big)) ++pages;
    const std::uint64_t entries = numbers.at(directory, count_bytes);
    if (entries > file.size()) break;
    directory = numbers.at(directory + static_cast<std::uint64_t>(count_bytes) +
                               entries * static_cast<std::uint64_t>(entry_bytes),
                           offset_bytes);
  }
  return pages > 0 ? pages : 1;
}

} // namespace stoneproof
