// Places on the glass that more scans mark than chance would have it. Used by the measures of dirt only.
#pragma once

#include "engine/measure/glass_chance.h"

#include <cstddef>
#include <vector>

namespace stoneproof {

/// How far a scan has moved against the glass, in reduced pixels.
struct Shift {
  int x = 0, y = 0;
  friend bool operator==(const Shift &, const Shift &) = default;
};

/// The marks of all scans of a batch, each scan with its shift: a mark at (x, y) tells of (x, y) less the
/// shift.
struct MarkedScans {
  std::int64_t width = 0, height = 0; ///< of the glass, in reduced pixels
  std::vector<std::vector<PlacedMark>> marks;
  std::vector<Shift> shifts; ///< one for each scan
  int reach = 0;             ///< pixels around a mark that it stands for, as placed_marks was told
};

struct Place {
  int x = 0, y = 0;
  double beyond_chance = 0; ///< ln: so much less likely than once in the whole glass
};

/// At least so many of a batch must mark a place: four, and a third of it.
std::size_t least_carriers(std::size_t scans);

/// How unlikely it is that independent scans agree at one place as these do. A surprise is the -ln of a
/// chance, and so exponentially distributed where there is no dirt. Of the largest `carriers` of them the two
/// largest are left out (one in a batch of four), so that what two pictures show of their own cannot make a
/// speck; the sum of the rest is judged, at its most unlikely number of carriers. The sum's parts are
/// independent by Renyi's representation (Acta Math. Hung. 4, 1953: the i-th gap of n ordered exponential
/// values is X / i), its tail is Chernoff's bound (Ann. Math. Stat. 23, 1952).
class Agreement {
public:
  explicit Agreement(std::size_t scans);
  struct Found {
    double surprise = 0;      ///< -ln of the chance, at least
    std::size_t carriers = 0; ///< 0: too few scans mark the place
  };
  /// Surprises of the scans that mark the place, the largest first.
  Found operator()(const std::vector<double> &surprises) const;

private:
  double of_sum(double sum, std::size_t carriers) const;
  std::size_t scans_, least_, left_out_;
};

/// Places that are at least so far beyond chance, row by row.
std::vector<Place> unlikely_places(const MarkedScans &scans, double least_beyond_chance);

/// The strongest mark of a scan that tells of a place, or null.
const PlacedMark *mark_at(const MarkedScans &scans, std::size_t scan, const Place &place);

/// The shifts, of up to two pixels, at which the scans agree best around some places that are known to be
/// dirt.
std::vector<Shift> best_shifts(MarkedScans scans, const std::vector<Place> &places);

} // namespace stoneproof
