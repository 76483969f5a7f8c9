// What contributors are asked for as a table for programs. schema/rescans.md describes the columns.
#pragma once

#include "reports/content/letter_asks.h"

#include <string>

namespace stoneproof::record {

/// RFC 4180, UTF-8 without a byte order mark: a header line, then a line for each picture of each
/// contributor, in the order and with the sentences of the letters; then those of nobody. The same input
/// gives the same bytes.
std::string rescans_csv(const Book &book, const content::Asks &asks);

} // namespace stoneproof::record
