// Sorts a batch and asks for specks and streaks. Only way in: glass_dirt. Tested in
// tests/engine/measure/glass_dirt.test.cpp; rates in tests/bench/detail.
#include "engine/measure/glass_dirt.h"

#include "engine/measure/glass_specks.h"
#include "engine/measure/glass_streaks.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Different subjects for a hint, and for more than that.
constexpr std::size_t least_for_hint = 4, least_for_firm = 5;

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
  if (pictures.size() < least_for_hint) return dirt;

  auto specks = common_specks(batch, pictures, dirt.streaks);
  if (!specks) return dirt;
  dirt.specks = std::move(*specks);
  const Certainty certainty = pictures.size() >= least_for_firm ? Certainty::firm : Certainty::hint;
  for (GlassSpeck &speck : dirt.specks) speck.certainty = certainty;
  dirt.specks_certainty = dirt.specks.empty() ? Certainty::no : certainty;
  return dirt;
}

} // namespace stoneproof
