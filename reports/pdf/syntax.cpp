// Writes PDF values as text. The only ways in are the functions of syntax.h; tested in
// tests/reports/pdf/syntax.test.cpp.
#include "reports/pdf/syntax.h"

#include "reports/type/unicode.h"

#include <algorithm>
#include <cmath>
#include <ctime>
#include <fmt/format.h>

namespace stoneproof::pdf {
namespace {

std::tm utc(std::int64_t seconds) {
  constexpr std::int64_t end_of_9999 = 253'402'300'799;
  const std::time_t moment = std::clamp<std::int64_t>(seconds, 0, end_of_9999);
  std::tm parts{};
  gmtime_r(&moment, &parts);
  return parts;
}

std::string formatted(const std::tm &t, const char *format) {
  return fmt::format(fmt::runtime(format), t.tm_year + 1900, t.tm_mon + 1, t.tm_mday, t.tm_hour, t.tm_min,
                     t.tm_sec);
}

} // namespace

std::string number(double value) {
  constexpr double end = 9e15; // thousandths that a double still counts one by one
  const double bounded = std::isnan(value) ? 0 : std::clamp(value * 1000, -end, end);
  const auto thousandths = static_cast<std::int64_t>(std::llround(bounded));
  const std::int64_t size = std::abs(thousandths);
  std::string text = fmt::format("{}{}.{:03}", thousandths < 0 ? "-" : "", size / 1000, size % 1000);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string points(Length length) { return number(length.pt()); }

std::string hex_digits(std::string_view bytes) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string out;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    out += digits[byte >> 4];
    out += digits[byte & 15];
  }
  return out;
}

std::string unicode_string(std::u32string_view text) { return "<FEFF" + hex_digits(utf16_be(text)) + ">"; }

std::string text_string(std::string_view utf8) {
  const bool plain = std::all_of(utf8.begin(), utf8.end(), [](char c) { return c >= 0x20 && c < 0x7F; });
  if (!plain) return unicode_string(code_points(utf8));
  std::string out = "(";
  for (const char c : utf8) {
    if (c == '(' || c == ')' || c == '\\') out += '\\';
    out += c;
  }
  return out + ")";
}

std::string name(std::string_view bytes) {
  constexpr std::string_view special = "()<>[]{}/%#";
  std::string out = "/";
  for (const char c : bytes)
    if (c > 0x20 && c < 0x7F && special.find(c) == std::string_view::npos)
      out += c;
    else
      out += "#" + hex_digits({&c, 1});
  return out;
}

std::string date_string(std::int64_t seconds_since_1970) {
  return formatted(utc(seconds_since_1970), "(D:{:04}{:02}{:02}{:02}{:02}{:02}Z)");
}

std::string xmp_date(std::int64_t seconds_since_1970) {
  return formatted(utc(seconds_since_1970), "{:04}-{:02}-{:02}T{:02}:{:02}:{:02}Z");
}

std::string reference(ObjectNumber object) { return fmt::format("{} 0 R", object); }

std::string rectangle(const Rect &rect, Length page_height) {
  return "[" + points(rect.left()) + " " + points(page_height - rect.bottom()) + " " + points(rect.right()) +
         " " + points(page_height - rect.top()) + "]";
}

} // namespace stoneproof::pdf
