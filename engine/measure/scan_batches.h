// Which pictures may come from the same glass, and so may be compared.
#pragma once

#include "engine/units/density.h"
#include "engine/units/geometry.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof {

/// What a file says of where it comes from.
struct ScanOrigin {
  PixelSize stored; ///< before orientation: the glass knows nothing of how a picture is turned
  std::optional<Density> across, down;    ///< stored density along the stored axes; none: the file names none
  std::string device;                     ///< make and model by Exif or TIFF; empty: the file names none
  std::optional<std::size_t> contributor; ///< who sent it; none: nobody is named
  bool camera = false; ///< it names an exposure time, an aperture or a focal length: no glass
};

/// Batches of pictures that lie on the same grid: of one stored size and density, and of one device or, where
/// none is named, of one contributor. At least two in each, in their order; pictures of cameras, and such as
/// name neither device nor contributor, are in none. Batches stand in the order of their first pictures.
std::vector<std::vector<std::size_t>> scan_batches(const std::vector<ScanOrigin> &origins);

} // namespace stoneproof
