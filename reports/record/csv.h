// Comma-separated values as RFC 4180 describes them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::record {

/// One record, ended by CR LF. A field with a comma, a quote, a CR or an LF stands in quotes, its own quotes
/// doubled; all others stand as they are.
std::string csv_line(const std::vector<std::string> &fields);

} // namespace stoneproof::record
