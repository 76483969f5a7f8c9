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
  return part;
}

} // namespace stoneproof::record
