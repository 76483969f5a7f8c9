// Near copies of a whole book or list of files. The only ways in are the functions of copies.h; tested in
// tests/engine/run.
#include "engine/run/copies.h"

#include "engine/picture/orientation.h"

namespace stoneproof {

CopyTraits copy_traits(const PassResult &result, const Facts &facts) {
  CopyTraits traits;
  if (!result.whole) return traits;
  const PixelSize stored = Orientation(facts.orientation).stored(facts.size);
  traits.print = result.whole->print;
  traits.worth.width = static_cast<double>(stored.width);
  traits.worth.height = static_cast<double>(stored.height);
  if (!result.looks.empty()) traits.worth.upsampling = result.looks.front().detail.upsampling;
  return traits;
}

std::vector<CopyPair> copies_among(const std::vector<CopyTraits> &traits) {
  std::vector<CopyFingerprint> prints;
  for (const CopyTraits &of_picture : traits) prints.push_back(of_picture.print);
  std::vector<CopyPair> copies;
  for (const NearCopy &found : near_copies(prints))
    copies.push_back({found, better_copy(found, traits[found.whole].worth, traits[found.other].worth)});
  return copies;
}

} // namespace stoneproof
