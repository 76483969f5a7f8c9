// Comma-separated values as RFC 4180 describes them.
#pragma once

#include "engine/units/geometry.h"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::record {

/// One record, ended by CR LF. A field with a comma, a quote, a CR or an LF stands in quotes, its own quotes
/// doubled; all others stand as they are.
std::string csv_line(const std::vector<std::string> &fields);

/// The fields of one record of a table; the names of the columns are collected in the same place as their
/// values.
struct CsvRow {
  void add(std::string_view name, std::string value);
  template <class Number>
  void add_number(std::string_view name, const std::optional<Number> &number) {
    add(name, number ? fmt::format("{}", *number) : std::string());
  }
  /// Millimetres, down to a thousandth, as NAME_width_mm and NAME_height_mm.
  void add_size(std::string_view name, const std::optional<Size> &size);

  std::vector<std::string> names, values;
};

} // namespace stoneproof::record
