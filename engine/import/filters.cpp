// Encoded bytes -> bytes. The only ways in are the functions of filters.h but unpredicted; tested in
// tests/engine/import/filters.test.cpp.
#include "engine/import/filters.h"

#include "engine/import/syntax.h"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <memory>

namespace stoneproof::finished {

namespace {

/// Adds to the bytes; false where the limit is reached.
bool give(Filtered &filtered, std::string_view bytes, std::size_t limit) {
  const std::size_t room = limit - filtered.bytes.size();
  filtered.bytes.append(bytes.substr(0, room));
  if (bytes.size() <= room) return true;
  filtered.whole = false;
  filtered.beyond_limit = true;
  return false;
}

/// Reads codes of LZW, the highest bit first.
class CodeReader {
public:
  explicit CodeReader(std::string_view data) : data_(data) {}
  /// The next code, or -1 at the end.
  int next(int bits) {
    while (held_ < bits) {
      if (at_ >= data_.size()) return -1;
      window_ = (window_ << 8 | static_cast<unsigned char>(data_[at_++])) & 0xffffffu;
      held_ += 8;
    }
    held_ -= bits;
    return static_cast<int>(window_ >> held_ & ((1u << bits) - 1));
  }

private:
  std::string_view data_;
  std::size_t at_ = 0;
  std::uint32_t window_ = 0;
  int held_ = 0;
};

/// The strings of LZW, each a shorter one and a byte.
class CodeTable {
public:
  void clear() { next_ = first_free; }
  bool full() const { return next_ >= 4096; }
  int next() const { return next_; }
  void add(int prefix, unsigned char last) { entries_[static_cast<std::size_t>(next_++)] = {prefix, last}; }
  /// The string of a code, which must be in the table.
  std::string_view string_of(int code) {
    std::size_t at = buffer_.size();
    for (; code >= first_free; code = entries_[static_cast<std::size_t>(code)].prefix)
      buffer_[--at] = static_cast<char>(entries_[static_cast<std::size_t>(code)].last);
    buffer_[--at] = static_cast<char>(code);
    return std::string_view(buffer_).substr(at);
  }
  static constexpr int clear_code = 256, end_code = 257, first_free = 258;

private:
  struct Entry {
    int prefix;
    unsigned char last;
  };
  std::array<Entry, 4096> entries_{};
  std::string buffer_ = std::string(4097, '\0');
  int next_ = first_free;
};

} // namespace

Filtered inflated(std::string_view data, std::size_t limit) {
  Filtered filtered;
  z_stream stream{};
  if (inflateInit(&stream) != Z_OK) return {{}, false, false};
  constexpr std::size_t part_size = 1 << 16;
  const auto part = std::make_unique_for_overwrite<char[]>(part_size);
  // zlib reads through a pointer that is not const and writes nothing there.
  stream.next_in = const_cast<Bytef *>(reinterpret_cast<const Bytef *>(data.data()));
  stream.avail_in = static_cast<uInt>(std::min<std::size_t>(data.size(), UINT32_MAX));
  int state = Z_OK;
  while (state == Z_OK) {
    stream.next_out = reinterpret_cast<Bytef *>(part.get());
    stream.avail_out = static_cast<uInt>(part_size);
    state = inflate(&stream, Z_NO_FLUSH);
    if (!give(filtered, {part.get(), part_size - stream.avail_out}, limit)) break;
    if (stream.avail_in == 0 && stream.avail_out > 0) break;
  }
  inflateEnd(&stream);
  if (state != Z_STREAM_END) filtered.whole = false;
  return filtered;
}

Filtered unpacked_lzw(std::string_view data, bool early, std::size_t limit) {
  Filtered filtered;
  CodeReader codes(data);
  CodeTable table;
  int bits = 9, before = -1;
  while (true) {
    const int code = codes.next(bits);
    if (code < 0 || code == CodeTable::end_code) break;
    if (code == CodeTable::clear_code) {
      table.clear();
      bits = 9;
      before = -1;
      continue;
    }
    const bool known = code < CodeTable::clear_code || code < table.next();
    if (!known && (before < 0 || code > table.next())) return filtered.whole = false, filtered;
    std::string text(table.string_of(known ? code : before));
    if (!known) text += text[0];
    if (before >= 0 && !table.full()) table.add(before, static_cast<unsigned char>(text[0]));
    before = code;
    if (!give(filtered, text, limit)) break;
    const int grown = table.next() + (early ? 1 : 0);
    bits = grown >= 2048 ? 12 : grown >= 1024 ? 11 : grown >= 512 ? 10 : 9;
  }
  return filtered;
}

Filtered unpacked_runs(std::string_view data, std::size_t limit) {
  Filtered filtered;
  for (std::size_t at = 0; at < data.size();) {
    const auto length = static_cast<unsigned char>(data[at++]);
    if (length == 128) return filtered;
    bool room = true;
    if (length < 128) {
      room = give(filtered, data.substr(at, length + 1u), limit);
      at += length + 1u;
    } else if (at < data.size())
      room = give(filtered, std::string(257u - length, data[at++]), limit);
    if (!room) return filtered;
  }
  return filtered;
}

Filtered from_hex(std::string_view data, std::size_t limit) {
  Filtered filtered;
  int digits = 0, value = 0;
  for (const char c : data) {
    if (c == '>') break;
    if (is_space(c)) continue;
    const int digit = hex_value(c);
    if (digit < 0) return filtered.whole = false, filtered;
    value = value * 16 + digit;
    if (++digits < 2) continue;
    const char byte = static_cast<char>(value);
    if (!give(filtered, {&byte, 1}, limit)) return filtered;
    digits = value = 0;
  }
  const char last = static_cast<char>(value * 16);
  if (digits == 1) give(filtered, {&last, 1}, limit);
  return filtered;
}

Filtered from_ascii85(std::string_view data, std::size_t limit) {
  Filtered filtered;
  std::uint32_t value = 0;
  int digits = 0;
  const auto flush = [&](int bytes) {
    const char four[4] = {static_cast<char>(value >> 24), static_cast<char>(value >> 16),
                          static_cast<char>(value >> 8), static_cast<char>(value)};
    value = 0;
    digits = 0;
    return give(filtered, {four, static_cast<std::size_t>(bytes)}, limit);
  };
  for (const char c : data) {
    if (c == '~') break;
    if (is_space(c)) continue;
    if (c == 'z' && digits == 0) {
      if (!flush(4)) return filtered;
      continue;
    }
    if (c < '!' || c > 'u') return filtered.whole = false, filtered;
    value = value * 85 + static_cast<std::uint32_t>(c - '!');
    if (++digits == 5 && !flush(4)) return filtered;
  }
  if (digits > 1) {
    const int bytes = digits - 1;
    for (; digits < 5; ++digits) value = value * 85 + 84;
    flush(bytes);
  }
  return filtered;
}

} // namespace stoneproof::finished
