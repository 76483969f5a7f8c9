// How large a small copy of each picture must be for all the frames that show it.
#pragma once

#include "engine/picture/preview.h"
#include "engine/rules/evidence.h"

#include <optional>
#include <vector>

namespace stoneproof {

/// One entry for each of Book::pictures: the part that its frames show together, at `density` small pixels
/// per inch of the printed page, or at the picture's own density where that is lower. None: no frame shows
/// it, or no density.
std::vector<std::optional<PreviewOrder>> copy_orders(const Evidence &evidence,
                                                     std::optional<Density> density);

} // namespace stoneproof
