// What is told of a picture file to people: rows of facts, and tables of the prints that it is good for.
#pragma once

#include "engine/run/measure_files.h"
#include "reports/content/picture_facts.h"

#include <string>
#include <vector>

namespace stoneproof::content {

/// Cells that stand in columns; every row has as many.
struct PrintTable {
  std::vector<bool> to_the_right; ///< one for each column: figures that end at the same place
  std::vector<std::vector<std::string>> rows;
};

struct MeasureWords {
  std::string name;           ///< the file as it was given
  std::vector<FactRow> facts; ///< in reading order; a fault first
  PrintTable largest;         ///< with a head; no rows where the file cannot be used
  std::string filling;        ///< head of the next table; empty as the former
  PrintTable filled;          ///< usual papers two by two: name, density, what that is
};

/// Every bound that is told is the press sheet's.
MeasureWords measure_words(const MeasuredFile &measured, const PressSheet &press);

} // namespace stoneproof::content
