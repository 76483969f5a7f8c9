// Bands from places and trails. The only ways in are the functions of leader_bands.h; tested through the
// leaders in tests/reports/layout.
#include "reports/layout/leader_bands.h"

#include <algorithm>

namespace stoneproof::layout {

namespace {

constexpr Length smallest = Length::of_ticks(1);

/// On the same level track the next leader is below this one, and so crosses its rise only if it comes from
/// below.
void add_rise(Band &band, Length level, const Rect &place) {
  const bool up = level < place.centre().y;
  band.along_from = std::min(band.along_from, up ? level : place.bottom());
  band.along_to = std::max(band.along_to, up ? place.top() : level - smallest);
}

} // namespace

std::vector<Band> bands_beside(std::span<const Rect> places, std::size_t own, const std::vector<Length> &xs) {
  std::vector<Band> bands(xs.size());
  for (std::size_t other = 0; other < places.size(); ++other) {
    const Rect &place = places[other];
    if (other == own || shared_part(place, places[own])) continue;
    for (std::size_t x = 0; x + 1 < xs.size(); ++x) {
      if (xs[x + 1] <= place.left() || xs[x] >= place.right()) continue;
      if (other < own) bands[x].top = std::max(bands[x].top, place.top());
      if (other > own) bands[x].bottom = std::min(bands[x].bottom, place.bottom());
    }
  }
  return bands;
}

void TakenBands::add(const Trail &trail, const Rect &place) {
  std::size_t level = 0;
  for (std::size_t x = 0; x < xs_.size(); ++x) {
    if (xs_[x] < trail.rise.value_or(place.right())) continue;
    const Length before = trail.levels[level];
    while (level < trail.uprights.size() && trail.uprights[level] <= xs_[x]) ++level;
    bands_[x].top = std::max(bands_[x].top, trail.levels[level]);
    bands_[x].across = std::max(bands_[x].across, std::min(before, trail.levels[level]));
    if (trail.rise == xs_[x]) add_rise(bands_[x], trail.levels[0], place);
  }
}

std::vector<Band> TakenBands::narrowed(std::vector<Band> bands) const {
  for (std::size_t x = 0; x < bands.size(); ++x) {
    const Band left = bands[x];
    bands[x] = bands_[x];
    bands[x].top = std::max(left.top, bands_[x].top);
    bands[x].bottom = left.bottom;
  }
  return bands;
}

} // namespace stoneproof::layout
