// The scanning plan of a book, with what the picture files that are there already say in their headers.
#pragma once

#include "engine/picture/facts.h"
#include "engine/plan/scan_plan.h"

namespace stoneproof {

/// Never fails: a file that is missing or cannot be read counts as not there. Only headers are read.
ScanPlan plan_book(const Book &book, const PressSheet &press, const PictureLimits &limits = {});

} // namespace stoneproof
