// One picture file of the record. The only way in is picture_part; tested in tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

Json original_part(const std::optional<Original> &original) {
  if (!original) return nullptr;
  return {{"kind", word_of(original_words, original->kind)},
          {"size_mm", in_mm_or_null(original->size)},
          {"lost", original->lost}};
}

Json master_part(const Evidence &evidence, std::size_t picture) {
  const Master *master = evidence.master_of(picture);
  if (!master) return nullptr;
  const PixelRect &part = master->part;
  return {{"file", master->file},
          {"width_px", master->size.width},
          {"height_px", master->size.height},
          {"part_px", {{"x", part.x}, {"y", part.y}, {"width", part.width}, {"height", part.height}}},
          {"finer", master->finer},
          {"likeness", master->likeness},
          {"sure", master->sure}};
}

Json copies_part(const Evidence &evidence, std::size_t picture) {
  Json part = Json::array();
  for (const CopyPair &pair : evidence.copies) {
    if (!pair.has(picture)) continue;
    const std::size_t partner = pair.partner_of(picture);
    const char *better = pair.is_better(picture) ? "this" : pair.is_better(partner) ? "that" : "alike";
    part.push_back({{"picture", evidence.book.pictures[partner].id}, {"better", better}});
  }
  return part;
}

} // namespace

Json picture_part(const Evidence &evidence, std::size_t picture) {
  const Picture &listed = evidence.book.pictures[picture];
  Json part = {
      {"id", listed.id},
      {"file", listed.file},
      {"use", word_of(use_words, listed.use)},
      {"contributor", id_or_null(evidence.book.contributors, listed.contributor)},
      {"original", original_part(listed.original)},
  };
  add_state(part, evidence.pictures[picture]);
  part["copies"] = copies_part(evidence, picture);
  part["master"] = master_part(evidence, picture);

  return part;
}

} // namespace stoneproof::record
