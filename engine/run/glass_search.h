// Dirt on the glass of scanners, looked for in all pictures of a list that came from the same one.
#pragma once

#include "engine/measure/glass.h"
#include "engine/measure/glass_meter.h"
#include "engine/picture/facts.h"

#include <mutex>
#include <optional>
#include <vector>

namespace stoneproof {

/// What is known of a picture before its pixels are read.
struct GlassOrigin {
  const Facts *facts = nullptr; ///< null: the file cannot be used
  std::optional<std::size_t> contributor;
};

/// Which pictures are looked at: those that can be compared, or each scan by itself too, for streaks.
enum class GlassScope { compared, all_scans };

/// Takes the maps of pictures in any order and from any thread, and compares those of a batch as soon as it
/// has them all: no more are kept than are needed. Batches of more than 64 are compared in parts.
class GlassSearch {
public:
  GlassSearch(const std::vector<GlassOrigin> &origins, GlassScope scope);
  /// Whether a map of the picture is of use: it is one of at least four of its kind, or every scan is.

  bool wants(std::size_t picture) const { return part_of_[picture].has_value(); }
  /// Once for each picture that is wanted; none: it could not be read.
  void add(std::size_t picture, std::optional<GlassMap> map);
  /// Those with dirt on them, by their first picture; when all were added.
  std::vector<Glass> take();

private:
  struct Part {
    std::size_t glass = 0;
    std::vector<std::size_t> scans;
    std::vector<std::optional<GlassMap>> maps;
    std::size_t missing = 0;
    std::vector<GlassSpot> spots; ///< once it was compared
  };
  struct Place {
    std::size_t part, scan;
  };
  void add_batch(const std::vector<std::size_t> &pictures, std::optional<Size> area);
  static void compare(Part &part);

  std::mutex mutex_;
  std::vector<Glass> glasses_;
  std::vector<Part> parts_;
  std::vector<std::optional<Place>> part_of_;
};

} // namespace stoneproof
