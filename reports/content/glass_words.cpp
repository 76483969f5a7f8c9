// Sentences about dirt on a scanner's glass. The only ways in are the functions of glass_words.h; tested in
// tests/reports/content.
#include "reports/content/glass_words.h"

#include "reports/content/figures.h"

#include <fmt/format.h>

#include <cmath>
#include <set>

namespace stoneproof::content {

namespace {

constexpr std::size_t most_named = 4;

std::string whole_mm(Length length) { return fmt::format("{:.0f} mm", length.mm()); }
std::string share(double value) { return fmt::format("{:.0f} %", value * 100); }

/// The middle of a spot, in millimetres where these are known.
std::string from_left(const GlassSpot &spot, const std::optional<Rect> &place) {
  return place ? whole_mm(place->centre().x) : share((spot.left + spot.right) / 2) + " of its width";
}
std::string from_top(const GlassSpot &spot, const std::optional<Rect> &place) {
  return place ? whole_mm(place->centre().y) : share((spot.top + spot.bottom) / 2) + " of its height";
}

/// The first few, and how many more there are.
std::string first_few(std::vector<std::string> names) {
  if (names.size() > most_named + 1) {
    const std::size_t more = names.size() - most_named;
    names.resize(most_named);
    names.push_back(fmt::format("{} more", more));
  }
  return listed(names);
}

std::vector<std::string> carriers_of(const Evidence &evidence, const Glass &glass) {
  std::set<std::size_t> carriers;
  for (const GlassSpot &spot : glass.spots)
    if (spot.certainty == Certainty::firm) carriers.insert(spot.carriers.begin(), spot.carriers.end());
  std::vector<std::string> files;
  for (const std::size_t carrier : carriers) files.push_back(evidence.book.pictures[carrier].file);
  return files;
}

} // namespace

std::string spot_phrase(const GlassSpot &spot, const std::optional<Rect> &place) {
  switch (spot.kind) {
  case GlassSpotKind::streak_down:
    return fmt::format("a line down the whole scan, {} from its left", from_left(spot, place));
  case GlassSpotKind::streak_across:
    return fmt::format("a line across the whole scan, {} from its top", from_top(spot, place));
  case GlassSpotKind::speck:
  case GlassSpotKind::hair: break;
  }
  return fmt::format("{} {} from the left and {} from the top",
                     spot.kind == GlassSpotKind::hair ? "a hair" : "a speck", from_left(spot, place),
                     from_top(spot, place));
}

std::string dirty_glass_words(const Evidence &evidence, const Finding &finding) {
  if (!finding.glass) return {};
  const Glass &glass = evidence.glasses[*finding.glass];
  std::vector<std::string> spots;
  for (const GlassSpot &spot : glass.spots)
    if (spot.certainty == Certainty::firm) spots.push_back(spot_phrase(spot, glass.place_of(spot)));
  const auto carriers = carriers_of(evidence, glass);
  return fmt::format("The glass of the scanner was dirty: {}, in {} of {} scans ({}).", first_few(spots),
                     carriers.size(), glass.scans.size(), first_few(carriers));
}

std::string dirt_fact(const DirtOn &dirt) {
  std::vector<std::string> files;
  for (const auto &file : dirt.also) files.push_back(file.string());
  return fmt::format("{}{}, as in {}", dirt.spot.certainty == Certainty::firm ? "" : "perhaps ",
                     spot_phrase(dirt.spot, dirt.place), first_few(files));
}

} // namespace stoneproof::content
