// Writes CSV (RFC 4180, section 2). The only way in is csv_line; tested in
// tests/reports/record/plan_csv.test.cpp, which reads it back with Python.
#include "reports/record/csv.h"

namespace stoneproof::record {

namespace {

std::string quoted(std::string_view field) {
  std::string text = "\"";
  for (const char c : field) text.append(c == '"' ? 2 : 1, c);
  return text + '"';
}

} // namespace

std::string csv_line(const std::vector<std::string> &fields) {
  std::string line;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const bool plain = fields[i].find_first_of(",\"\r\n") == std::string::npos;
    line += (i == 0 ? "" : ",") + (plain ? fields[i] : quoted(fields[i]));
  }
  return line + "\r\n";
}

} // namespace stoneproof::record
