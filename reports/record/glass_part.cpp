// Dirt on scanners' glass. The only ways in are glass_part and dirt_part; tested in tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

Json shares_of(const GlassSpot &spot) {
  return {{"left", spot.left}, {"top", spot.top}, {"right", spot.right}, {"bottom", spot.bottom}};
}

Json spot_part(const GlassSpot &spot, const std::optional<Rect> &place) {
  return {{"kind", word_of(spot_words, spot.kind)},
          {"found", word_of(certainty_words, spot.certainty)},
          {"place_mm", in_mm_or_null(place)},
          {"place_shares", shares_of(spot)},
          {"contrast", spot.contrast}};
}

Json ids_of(const Book &book, const std::vector<std::size_t> &pictures) {
  Json ids = Json::array();
  for (const std::size_t picture : pictures) ids.push_back(book.pictures[picture].id);
  return ids;
}

} // namespace

Json glass_part(const Evidence &evidence, const Glass &glass) {
  Json part = {{"scans", ids_of(evidence.book, glass.scans)},
               {"area_mm", in_mm_or_null(glass.area)},
               {"spots", Json::array()}};
  for (const GlassSpot &spot : glass.spots) {
    part["spots"].push_back(spot_part(spot, glass.place_of(spot)));
    part["spots"].back()["pictures"] = ids_of(evidence.book, spot.carriers);
  }
  return part;
}

Json dirt_part(const std::vector<DirtOn> &dirt) {
  Json part = Json::array();
  for (const DirtOn &one : dirt) {
    part.push_back(spot_part(one.spot, one.place));
    part.back()["also"] = Json::array();
    for (const auto &file : one.also) part.back()["also"].push_back(file.string());
  }
  return part;
}

} // namespace stoneproof::record
