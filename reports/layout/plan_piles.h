// What one person has to scan: piles by setting, each a table with boxes to tick. Used by the plan only.
#pragma once

#include "reports/content/plan_content.h"
#include "reports/layout/sheets.h"

namespace stoneproof::layout {

/// Begins a new sheet; gives on which of them each of the person's piles begins.
std::vector<std::size_t> lay_out_person(Sheets &sheets, const content::PersonPlan &person);

} // namespace stoneproof::layout
