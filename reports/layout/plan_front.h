// The front of the scanning plan: totals, who has how much to do, what must be decided first. Used by the
// plan only.
#pragma once

#include "reports/content/plan_content.h"
#include "reports/layout/sheets.h"

#include <string>
#include <vector>

namespace stoneproof::layout {

/// A row of the table of people, so that it can lead to that person's sheets.
struct PersonRow {
  std::size_t sheet;
  Rect area;
};

/// At least one sheet; gives a row for each of PlanContent::table.
std::vector<PersonRow> lay_out_plan_front(Sheets &sheets, const content::PlanContent &content);

} // namespace stoneproof::layout
