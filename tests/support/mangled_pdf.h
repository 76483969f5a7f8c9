// PDFs that are broken: real ones with something done to them, and ones that are made to do harm.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::test {

/// A PDF with one to four changes: bytes flipped, a piece cut out, put in, doubled or its end cut off,
/// numbers replaced, objects swapped. The same seed gives the same file on every machine.
std::string mangled(std::string pdf, std::uint64_t seed);

struct CraftedPdf {
  const char *name;
  std::string bytes;
};

/// PDFs that ask for endless time, memory or depth, or hold what cannot be.
std::vector<CraftedPdf> crafted_pdfs();

} // namespace stoneproof::test
