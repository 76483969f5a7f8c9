// The scanning plan as a table for programs. schema/plan.md describes the columns.
#pragma once

#include "engine/plan/scan_plan.h"

#include <string>

namespace stoneproof::record {

/// RFC 4180, UTF-8 without a byte order mark: a header line, then a line for each picture of the book, in its
/// order. A field that has nothing to tell is empty. The same input gives the same bytes.
std::string plan_csv(const Book &book, const ScanPlan &plan);

} // namespace stoneproof::record
