// The book as an object in words: each figure with how it was reckoned, from what, and after whom.
#pragma once

#include "engine/rules/evidence.h"

#include <string>
#include <vector>

namespace stoneproof::content {

/// "Spine": "7.68 mm ± 0.84 mm", "64 leaves × 0.12 mm; ...", "Pages / 2 × thickness of a leaf, ...".
struct Reckoning {
  std::string name, figure, how, source;
};

/// A run of signatures of the same size.
struct SignatureRow {
  std::string signatures; ///< "1 to 6"
  std::string size;       ///< "16 pages"
  std::string pages;      ///< "1–96", counted through the block
  std::string blanks;     ///< "2 blank", or empty
};

/// A sheet of a stapled book.
struct CreepRow {
  std::string sheet; ///< "1, outermost"
  std::string pages; ///< "1–2 and 31–32"
  std::string shift; ///< "0.1 mm"
};

struct ObjectWords {
  std::vector<Reckoning> reckonings; ///< in reading order
  std::vector<SignatureRow> signatures;
  std::vector<CreepRow> creep; ///< none: nothing creeps
  std::string unknown;         ///< what could not be reckoned, and what would tell it; empty: nothing
};

ObjectWords object_words(const Evidence &evidence);

/// "0.105 mm": to the nearest thousandth, for the thickness of paper.
std::string thickness(Length length);
/// "7.68 mm", to the nearest hundredth: for what was reckoned and has a tolerance beside it.
std::string nearest_millimetres(Length length);
/// "210 × 279.5 mm", to the nearest hundredth.
std::string exact_size(const Size &size);
/// "7.68 mm ± 0.84 mm": the tolerance is rounded up.
std::string banded(const Banded &length);

} // namespace stoneproof::content
