// Writes CSV (RFC 4180, section 2). The only ways in are those of csv.h; tested in
// tests/reports/record/plan_csv.test.cpp, which reads it back with Python.
#include "reports/record/csv.h"

#include <cmath>

namespace stoneproof::record {

namespace {

std::string in_quotes(std::string_view field) {
  std::string text = "\"";
  for (const char c : field) text.append(c == '"' ? 2 : 1, c);
  return text + '"';
}

} // namespace

std::string csv_line(const std::vector<std::string> &fields) {
  std::string line;
  for (std::size_t i = 0; i < fields.size(); ++i) {
    const bool plain = fields[i].find_first_of(",\"\r\n") == std::string::npos;
    line += (i == 0 ? "" : ",") + (plain ? fields[i] : in_quotes(fields[i]));
  }
  return line + "\r\n";
}

void CsvRow::add(std::string_view name, std::string value) {
  names.emplace_back(name);
  values.push_back(std::move(value));
}

void CsvRow::add_size(std::string_view name, const std::optional<Size> &size) {
  const auto mm = [&](Length Size::*side) {
    return size ? std::optional(std::floor((*size.*side).mm() * 1000 + 1e-6) / 1000) : std::nullopt;
  };
  add_number(fmt::format("{}_width_mm", name), mm(&Size::width));
  add_number(fmt::format("{}_height_mm", name), mm(&Size::height));
}

} // namespace stoneproof::record
