// Counts the directories of a TIFF by their chain alone (TIFF 6.0, section 2; BigTIFF: 8-byte counts and
// offsets). Only way in: count_tiff_pages. Tested in tests/engine/picture/facts.test.cpp.
#include "engine/picture/tiff_session.h"

#include <unordered_set>

namespace stoneproof {

namespace {

constexpr int most_pages = 10'000;

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

} // namespace

int count_tiff_pages(const PictureFile &file) {
  if (file.head().size() < 8) return 1;
  const Numbers numbers(file);
  const bool big = numbers.at(2, 2) == 43;
  const int count_bytes = big ? 8 : 2, offset_bytes = big ? 8 : 4, entry_bytes = big ? 20 : 12;
  std::uint64_t directory = numbers.at(big ? 8 : 4, offset_bytes);
  std::unordered_set<std::uint64_t> seen;
  int pages = 0;
  while (directory != 0 && directory < file.size() && pages < most_pages && seen.insert(directory).second) {
    ++pages;
    const std::uint64_t entries = numbers.at(directory, count_bytes);
    if (entries > file.size()) break;
    directory = numbers.at(directory + static_cast<std::uint64_t>(count_bytes) +
                               entries * static_cast<std::uint64_t>(entry_bytes),
                           offset_bytes);
  }
  return pages > 0 ? pages : 1;
}

} // namespace stoneproof
