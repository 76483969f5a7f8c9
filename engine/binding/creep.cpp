// Creep. The only ways in are the functions of creep.h; tested in tests/engine/binding.
#include "engine/binding/creep.h"

#include <algorithm>

namespace stoneproof {

std::size_t sheets_of(std::size_t pages) { return (pages + 3) / 4; }

std::size_t sheet_of(std::size_t page, std::size_t pages) {
  return (std::min(page, pages + 1 - page) - 1) / 2;
}

Length creep_of(std::size_t page, std::size_t pages, Length leaf) {
  return leaf * static_cast<std::int64_t>(sheet_of(page, pages));
}

} // namespace stoneproof
