// Converts between UTF-8, code points and UTF-16. The only ways in are the functions of unicode.h; tested in
// tests/reports/type/unicode.test.cpp.
#include "reports/type/unicode.h"

#include <utility>

namespace stoneproof {
namespace {

constexpr char32_t replacement = 0xFFFD;

bool is_scalar(char32_t c) { return c < 0xD800 || (c > 0xDFFF && c <= 0x10FFFF); }

/// How many bytes the sequence has that starts with `lead`, and the least code point that may be written so
/// long.
struct Form {
  std::size_t length;
  char32_t least, lead_bits;
};

Form form_of(unsigned char lead) {
  if (lead < 0x80) return {1, 0, lead};
  if (lead >= 0xC2 && lead < 0xE0) return {2, 0x80, lead & 0x1Fu};
  if (lead >= 0xE0 && lead < 0xF0) return {3, 0x800, lead & 0x0Fu};
  if (lead >= 0xF0 && lead < 0xF5) return {4, 0x10000, lead & 0x07u};
  return {0, 0, 0};
}

/// The code point at the start of `text` and how many bytes it takes; one byte of rubbish is U+FFFD.
std::pair<char32_t, std::size_t> first_of(std::string_view text) {
  const Form form = form_of(static_cast<unsigned char>(text[0]));
  if (form.length == 0 || form.length > text.size()) return {replacement, 1};
  char32_t c = form.lead_bits;
  for (std::size_t i = 1; i < form.length; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if ((byte & 0xC0) != 0x80) return {replacement, 1};
    c = c << 6 | (byte & 0x3Fu);
  }
  if (c < form.least || !is_scalar(c)) return {replacement, 1};
  return {c, form.length};
}

void append_unit(std::string &out, char32_t unit) {
  out += static_cast<char>(unit >> 8 & 0xFF);
  out += static_cast<char>(unit & 0xFF);
}

} // namespace

std::u32string code_points(std::string_view utf8) {
  std::u32string out;
  out.reserve(utf8.size());
  while (!utf8.empty()) {
    const auto [c, length] = first_of(utf8);
    out += c;
    utf8.remove_prefix(length);
  }
  return out;
}

std::string utf8(std::u32string_view text) {
  std::string out;
  const auto tail = [&out](char32_t c, int shift) { out += static_cast<char>(0x80 | (c >> shift & 0x3F)); };
  for (char32_t c : text) {
    if (!is_scalar(c)) c = replacement;
    if (c < 0x80) {
      out += static_cast<char>(c);
    } else if (c < 0x800) {
      out += static_cast<char>(0xC0 | c >> 6);
      tail(c, 0);
    } else if (c < 0x10000) {
      out += static_cast<char>(0xE0 | c >> 12);
      tail(c, 6), tail(c, 0);
    } else {
      out += static_cast<char>(0xF0 | c >> 18);
      tail(c, 12), tail(c, 6), tail(c, 0);
    }
  }
  return out;
}

std::string utf16_be(std::u32string_view text) {
  std::string out;
  for (char32_t c : text) {
    if (!is_scalar(c)) c = replacement;
    if (c < 0x10000) {
      append_unit(out, c);
    } else {
      append_unit(out, 0xD800 + ((c - 0x10000) >> 10));
      append_unit(out, 0xDC00 + ((c - 0x10000) & 0x3FF));
    }
  }
  return out;
}

} // namespace stoneproof
