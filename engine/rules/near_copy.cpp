// One picture came in two files that differ. The only way in is near_copy_rule; tested by
// tests/rules/near-copy.
#include "engine/rules/about.h"

#include <optional>

namespace stoneproof {

namespace {

/// For each picture the first frame that names it; null: none does.
std::vector<const PlacedFrame *> first_frames(const Evidence &evidence) {
  std::vector<const PlacedFrame *> first(evidence.pictures.size());
  for (const PlacedFrame &placed : evidence.frames)
    if (placed.picture && !first[*placed.picture]) first[*placed.picture] = &placed;
  return first;
}

/// The picture of a pair that should be looked at: the one that stands in the book and is not the better one;
/// of two that are worth the same the one that stands later. None: the only one in the book is no worse.
std::optional<std::size_t> lesser_of(const CopyPair &pair, const std::vector<const PlacedFrame *> &first) {
  const std::size_t a = pair.copy.whole, b = pair.copy.other;
  if (first[a] && first[b] && pair.better == BetterCopy::alike) return first[a] < first[b] ? b : a;
  for (const std::size_t picture : {a, b})
    if (first[picture] && pair.is_better(pair.partner_of(picture))) return picture;
  return std::nullopt;
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const auto first = first_frames(evidence);
  std::vector<bool> told(evidence.pictures.size());
  for (const CopyPair &pair : evidence.copies) {
    const auto lesser = lesser_of(pair, first);
    if (!lesser || told[*lesser]) continue;
    const std::size_t partner = pair.partner_of(*lesser);
    if (evidence.pictures[*lesser].sha256 == evidence.pictures[partner].sha256) continue; // picture-twice
    told[*lesser] = true;
    Finding finding = about_frame(Grade::query, evidence, *first[*lesser]);
    finding.with_picture = partner;
    for (const std::size_t picture : {*lesser, partner})
      if (first[picture]) finding.same_picture.push_back({first[picture]->page, first[picture]->frame});
    findings.push_back(std::move(finding));
  }
}

} // namespace

extern const Rule near_copy_rule = {
    "near-copy",
    Grade::query,
    "The same picture came in two files",
    "Families send one picture twice: the scan, and what was left of it after a message or a crop. Either "
    "the "
    "lesser one is in the book, or both are, and readers notice.",
    "Small gray copies of all pictures are compared, by signs of their low frequencies (a perceptual hash) "
    "and "
    "then by correlation, in any orientation and with up to a tenth cropped at each edge. The better copy is "
    "the one with more pixels for what both show, less what enlarging in software added; where these are "
    "alike, "
    "the one whose detail reaches further by a tenth. Drawings that differ little may be taken for copies.",
    "Use the better copy. If both are in the book, look whether that is meant.",
    check,
    true,
};

} // namespace stoneproof
