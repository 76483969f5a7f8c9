// Reads the charset of a CFF font (Adobe Technical Note 5176). The only way in is cids_of(); tested in
// tests/reports/type/cff_charset.test.cpp.
#include "reports/type/cff_charset.h"

#include <cstddef>

namespace stoneproof {
namespace {

/// Big-endian numbers one after another. Beyond the end everything is 0 and `good` no longer holds.
class Cursor {
public:
  Cursor(std::string_view bytes, std::size_t at) : bytes_(bytes), at_(at) {}

  std::uint32_t next(std::size_t size) {
    std::uint32_t value = 0;
    for (; size > 0; --size) value = value << 8 | byte();
    return value;
  }
  void skip(std::size_t count) { at_ += count; }
  std::size_t at() const { return at_; }
  bool good() const { return at_ <= bytes_.size(); }

private:
  std::uint32_t byte() {
    const std::size_t at = at_++;
    return at < bytes_.size() ? static_cast<unsigned char>(bytes_[at]) : 0;
  }

  std::string_view bytes_;
  std::size_t at_;
};

/// An array of byte strings (section 5): where the first of them begins and ends, and where the last one
/// does.
struct Index {
  std::uint32_t count = 0;
  std::size_t first = 0, first_end = 0, end = 0;
};

Index index_at(std::string_view cff, std::size_t at) {
  Cursor cursor(cff, at);
  const std::uint32_t count = cursor.next(2);
  if (count == 0) return {0, cursor.at(), cursor.at(), cursor.at()};
  const std::size_t size = cursor.next(1), offsets = cursor.at(), base = offsets + (count + 1) * size - 1;
  const auto offset = [&](std::size_t i) { return base + Cursor(cff, offsets + i * size).next(size); };
  return {count, offset(0), offset(1), offset(count)};
}

/// What of the Top DICT (section 9) leads to the charset.
struct TopDict {
  bool by_cid = false; ///< the operator ROS
  std::size_t charset = 0, char_strings = 0;
};

/// Operands before their operator (section 4); of several only the last is kept, which is all that is wanted.
TopDict top_dict(std::string_view dict) {
  TopDict top;
  Cursor cursor(dict, 0);
  for (std::uint32_t operand = 0; cursor.at() < dict.size();) {
    const std::uint32_t b = cursor.next(1);
    if (b == 12)
      top.by_cid |= cursor.next(1) == 30;
    else if (b == 15)
      top.charset = operand;
    else if (b == 17)
      top.char_strings = operand;
    else if (b == 28)
      operand = cursor.next(2);
    else if (b == 29)
      operand = cursor.next(4);
    else if (b == 30)
      while (cursor.good() && (cursor.next(1) & 0xF) != 0xF) continue;
    else if (b >= 32 && b <= 246)
      operand = b - 139;
    else if (b >= 247 && b <= 250)
      operand = (b - 247) * 256 + cursor.next(1) + 108;
    else if (b >= 251 && b <= 254)
      cursor.skip(1); // below zero: nothing that is wanted here
  }
  return top;
}

} // namespace

std::optional<std::vector<std::uint16_t>> cids_of(std::string_view cff) {
  const std::size_t header = Cursor(cff, 2).next(1);
  const Index tops = index_at(cff, index_at(cff, header).end);
  if (tops.count == 0 || tops.first >= tops.first_end || tops.first_end > cff.size()) return std::nullopt;
  const TopDict top = top_dict(cff.substr(tops.first, tops.first_end - tops.first));
  std::vector<std::uint16_t> cids;
  if (!top.by_cid) return cids;

  constexpr std::size_t most_predefined = 2; // charsets of names
  const std::uint32_t count = index_at(cff, top.char_strings).count;
  Cursor cursor(cff, top.charset);
  const std::uint32_t format = cursor.next(1);
  if (count == 0 || top.charset <= most_predefined || format > 2) return std::nullopt;
  cids.push_back(0); // the missing glyph is in no charset
  while (cids.size() < count && cursor.good()) {
    std::uint32_t cid = cursor.next(2);
    for (std::uint32_t left = format == 0 ? 0 : cursor.next(format); cids.size() < count; --left, ++cid) {
      cids.push_back(static_cast<std::uint16_t>(cid));
      if (left == 0) break;
    }
  }
  if (!cursor.good()) return std::nullopt;
  return cids;
}

} // namespace stoneproof
