// The press sheet that a book was checked against, as rows of a table.
#pragma once

#include "engine/rules/evidence.h"

#include <string>
#include <vector>

namespace stoneproof::content {

/// "Photos": "300 ppi wanted, 200 ppi at the least".
struct Requirement {
  std::string name, asks;
};

struct RequirementGroup {
  std::string heading;
  std::vector<Requirement> rows;
};

/// What the sheet asks of this book: of its binding and of its number of pages where the sheet tells them
/// apart.
std::vector<RequirementGroup> press_words(const PressSheet &press, const Book &book);

} // namespace stoneproof::content
