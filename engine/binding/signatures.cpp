// Gathering pages. The only ways in are the functions of signatures.h; tested in tests/engine/binding.
#include "engine/binding/signatures.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace stoneproof {

std::size_t blanks_to_multiple(std::size_t pages, std::size_t multiple) {
  return (multiple - pages % multiple) % multiple;
}

SignaturePlan signature_plan(std::size_t pages, std::size_t signature, std::size_t multiple) {
  const std::size_t fold = std::lcm(multiple, std::size_t{2});
  SignaturePlan plan{pages, blanks_to_multiple(pages, fold), {}};
  for (std::size_t first = 1; first <= plan.total(); first += signature) {
    const std::size_t size = std::min(signature, plan.total() + 1 - first);
    const std::size_t last = first + size - 1;
    const std::size_t blanks = last > pages ? std::min(size, last - pages) : 0;
    plan.signatures.push_back({first, size, blanks});
  }
  return plan;
}

bool is_usual_signature(std::size_t pages) {
  constexpr std::array<std::size_t, 6> usual = {4, 8, 12, 16, 24, 32};
  return std::find(usual.begin(), usual.end(), pages) != usual.end();
}

std::size_t blanks_described_at_end(const Book &book) {
  std::size_t blanks = 0;
  for (auto page = book.pages.rbegin(); page != book.pages.rend(); ++page) {
    if (!page->blank || page->kind == PageKind::cover) break;
    blanks += page->kind == PageKind::spread ? 2u : 1u;
  }
  return blanks;
}

} // namespace stoneproof
