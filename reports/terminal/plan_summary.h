// The scanning plan on one screen of the terminal.
#pragma once

#include "reports/content/plan_content.h"

#include <filesystem>
#include <string>

namespace stoneproof::terminal {

/// What was written.
struct PlanFiles {
  std::filesystem::path plan, table;
};

/// How much there is to scan, what must be decided first as far as it fits, where the files are, which press
/// sheet was used: in at most most_summary_lines lines.
std::string plan_summary(const content::PlanContent &content, const PlanFiles &files, int width, bool bold);

} // namespace stoneproof::terminal
