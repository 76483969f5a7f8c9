// Sorts a batch and asks for specks and streaks. Only ways in: glass_dirt, on_glass. Tested in
// tests/engine/measure/glass_dirt.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_dirt.h"

#include "engine/measure/glass_specks.h"
#include "engine/measure/glass_streaks.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Fewer different subjects cannot tell of specks.
constexpr std::size_t least_subjects = 4;

Length along(double pixels, Density density) { return Pixels{pixels} / density; }

} // namespace

GlassDirt glass_dirt(const std::vector<const GlassMap *> &batch) {
  std::vector<std::size_t> pictures;
  for (std::size_t i = 0; i < batch.size(); ++i)
    if (batch[i]->width > 0 && batch[i]->stored == batch[pictures.empty() ? i : pictures[0]]->stored)
      pictures.push_back(i);
  GlassDirt dirt;
  if (pictures.empty()) return dirt;

  dirt.repeats = repeats_in(batch, pictures);
  for (const std::size_t repeat : dirt.repeats)
    pictures.erase(std::find(pictures.begin(), pictures.end(), repeat));
  dirt.streaks = common_streaks(batch, pictures);
  if (pictures.size() < least_subjects) return dirt;

  auto specks = common_specks(batch, pictures, dirt.streaks);
  if (!specks) return dirt;
  dirt.specks = std::move(*specks);
  dirt.specks_certainty = Certainty::no;
  for (const GlassSpeck &speck : dirt.specks)
    dirt.specks_certainty = std::max(dirt.specks_certainty, speck.certainty);
  return dirt;
}

Rect on_glass(const GlassSpeck &speck, Density across, Density down) {
  const auto &[x, y, width, height] = speck.where;
  return {along(static_cast<double>(x), across), along(static_cast<double>(y), down),
          along(static_cast<double>(width), across), along(static_cast<double>(height), down)};
}

Length on_glass(const GlassStreak &streak, Density across, Density down) {
  return along(streak.at, streak.column ? across : down);
}

} // namespace stoneproof
