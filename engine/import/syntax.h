// The characters of PDF's syntax (ISO 32000-1, 7.2.2).
#pragma once

namespace stoneproof::finished {

constexpr bool is_space(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0';
}

constexpr bool is_delimiter(char c) {
  return c == '(' || c == ')' || c == '<' || c == '>' || c == '[' || c == ']' || c == '{' || c == '}' ||
         c == '/' || c == '%';
}

constexpr bool is_regular(char c) { return !is_space(c) && !is_delimiter(c); }

/// -1 where it is no hexadecimal digit.
constexpr int hex_value(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

} // namespace stoneproof::finished
