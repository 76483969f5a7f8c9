// Gathering pages. The only ways in are the functions of signatures.h; tested in tests/engine/binding.
#include "engine/binding/signatures.h"

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

} // namespace stoneproof
