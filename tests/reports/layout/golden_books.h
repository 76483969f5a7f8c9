// Books of different shape, each with what is hard about it and little else: the golden proofs are theirs.
#pragma once

#include "engine/run/run.h"

#include <string>
#include <vector>

namespace stoneproof::test {

struct GoldenBook {
  std::string name;     ///< of the golden text
  Checked (*checked)(); ///< the book, checked
};

extern const std::vector<GoldenBook> golden_books;

} // namespace stoneproof::test
