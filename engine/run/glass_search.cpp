// Batches of scans and what stays in its place in them. The only way in is GlassSearch; tested in
// tests/engine/run.
#include "engine/run/glass_search.h"

#include "engine/measure/glass_dirt.h"
#include "engine/measure/scan_batches.h"
#include "engine/picture/orientation.h"

#include <algorithm>

namespace stoneproof {

namespace {

constexpr std::size_t least_scans = 4, most_scans = 64;

/// A scan stores its density along its own axes, whatever way it is seen.
ScanOrigin scan_origin(const GlassOrigin &origin) {
  const Facts &facts = *origin.facts;
  const Orientation orientation(facts.orientation);
  ScanOrigin scan{orientation.stored(facts.size),
                  facts.stored_x,
                  facts.stored_y,
                  facts.device,
                  origin.contributor,
                  facts.camera};
  if (orientation.swaps()) std::swap(scan.across, scan.down);
  return scan;
}

std::optional<Size> area_of(const ScanOrigin &scan) {
  if (!scan.across || !scan.down) return std::nullopt;
  return Size{Pixels{static_cast<double>(scan.stored.width)} / *scan.across,
              Pixels{static_cast<double>(scan.stored.height)} / *scan.down};
}

GlassSpot spot_of(const GlassSpeck &speck, PixelSize stored) {
  const auto width = static_cast<double>(stored.width), height = static_cast<double>(stored.height);
  const PixelPart &at = speck.where;
  return {speck.hair ? GlassSpotKind::hair : GlassSpotKind::speck,
          static_cast<double>(at.x) / width,
          static_cast<double>(at.y) / height,
          static_cast<double>(at.x + at.width) / width,
          static_cast<double>(at.y + at.height) / height,
          speck.contrast,
          speck.carriers,
          speck.certainty};
}

GlassSpot spot_of(const GlassStreak &streak, PixelSize stored) {
  GlassSpot spot{streak.column ? GlassSpotKind::streak_down : GlassSpotKind::streak_across,
                 0,
                 0,
                 1,
                 1,
                 streak.strength,
                 streak.carriers,
                 streak.certainty};
  const double share = streak.at / static_cast<double>(streak.column ? stored.width : stored.height);
  (streak.column ? spot.left : spot.top) = share;
  (streak.column ? spot.right : spot.bottom) = share;
  return spot;
}

/// The same dirt, found in two parts of a batch, or in two pieces.
bool same_place(const GlassSpot &a, const GlassSpot &b) {
  constexpr double near = 0.001; // of the scan: a few reduced pixels
  return a.kind == b.kind && a.left <= b.right + near && b.left <= a.right + near &&
         a.top <= b.bottom + near && b.top <= a.bottom + near;
}

void add_spot(Glass &glass, GlassSpot spot) {
  const auto known = std::find_if(glass.spots.begin(), glass.spots.end(),
                                  [&](const GlassSpot &one) { return same_place(one, spot); });
  if (known == glass.spots.end()) {
    glass.spots.push_back(std::move(spot));
    return;
  }
  known->carriers.insert(known->carriers.end(), spot.carriers.begin(), spot.carriers.end());
  known->certainty = std::max(known->certainty, spot.certainty);
}

} // namespace

GlassSearch::GlassSearch(const std::vector<GlassOrigin> &origins, GlassScope scope)
    : part_of_(origins.size()) {
  std::vector<ScanOrigin> scans;
  std::vector<std::size_t> pictures;
  for (std::size_t i = 0; i < origins.size(); ++i)
    if (origins[i].facts && origins[i].facts->colour != ColourModel::bilevel) {
      scans.push_back(scan_origin(origins[i]));
      pictures.push_back(i);
    }
  for (const auto &batch : scan_batches(scans)) {
    if (batch.size() < least_scans) continue;
    std::vector<std::size_t> of_batch;
    for (const std::size_t scan : batch) of_batch.push_back(pictures[scan]);
    add_batch(of_batch, area_of(scans[batch.front()]));
  }
  if (scope == GlassScope::compared) return;
  for (std::size_t i = 0; i < scans.size(); ++i)
    if (!scans[i].camera && !wants(pictures[i])) add_batch({pictures[i]}, area_of(scans[i]));
}

void GlassSearch::add_batch(const std::vector<std::size_t> &pictures, std::optional<Size> area) {
  const std::size_t parts = (pictures.size() + most_scans - 1) / most_scans;
  for (std::size_t part = 0; part < parts; ++part) {
    Part made{glasses_.size(), {}, {}, 0, {}};
    for (std::size_t i = part; i < pictures.size(); i += parts) {
      part_of_[pictures[i]] = Place{parts_.size(), made.scans.size()};
      made.scans.push_back(pictures[i]);
    }
    made.missing = made.scans.size();
    made.maps.resize(made.scans.size());
    parts_.push_back(std::move(made));
  }
  glasses_.push_back({pictures, area, {}});
}

void GlassSearch::add(std::size_t picture, std::optional<GlassMap> map) {
  const Place place = part_of_[picture].value();
  Part &part = parts_[place.part];
  {
    const std::lock_guard lock(mutex_);
    part.maps[place.scan] = std::move(map);
    if (--part.missing > 0) return;
  }
  compare(part); // whole: nobody else will touch it
}

void GlassSearch::compare(Part &part) {
  std::vector<const GlassMap *> maps;
  std::vector<std::size_t> pictures;
  for (std::size_t i = 0; i < part.maps.size(); ++i)
    if (part.maps[i] && part.maps[i]->width > 0) {
      maps.push_back(&*part.maps[i]);
      pictures.push_back(part.scans[i]);
    }
  if (maps.empty()) return;
  const GlassDirt dirt = glass_dirt(maps);
  const PixelSize stored = maps.front()->stored;
  for (const GlassSpeck &speck : dirt.specks) part.spots.push_back(spot_of(speck, stored));
  for (const GlassStreak &streak : dirt.streaks) part.spots.push_back(spot_of(streak, stored));
  for (GlassSpot &spot : part.spots)
    for (std::size_t &carrier : spot.carriers) carrier = pictures[carrier];
  part.maps.clear();
}

/// In the order of the parts, whichever was compared first.
std::vector<Glass> GlassSearch::take() {
  for (Part &part : parts_)
    for (GlassSpot &spot : part.spots) add_spot(glasses_[part.glass], std::move(spot));
  std::erase_if(glasses_, [](const Glass &glass) { return glass.spots.empty(); });
  for (Glass &glass : glasses_) {
    for (GlassSpot &spot : glass.spots) {
      std::sort(spot.carriers.begin(), spot.carriers.end());
      spot.carriers.erase(std::unique(spot.carriers.begin(), spot.carriers.end()), spot.carriers.end());
    }
    std::stable_sort(glass.spots.begin(), glass.spots.end(),
                     [](const GlassSpot &a, const GlassSpot &b) { return a.certainty > b.certainty; });
  }
  return std::move(glasses_);
}

} // namespace stoneproof
