// Which parts of each picture are to be measured: what its frames show; of one that no frame shows all, as it
// may be the better copy of another.

#pragma once

#include "engine/measure/pixel_pass.h"
#include "engine/rules/evidence.h"

#include <cstddef>
#include <vector>

namespace stoneproof {

/// The looks of one picture, each once, and the frames (index into Evidence::frames) that each stands for.
struct PictureLooks {
  std::vector<Look> looks;
  std::vector<std::vector<std::size_t>> frames; ///< one entry for each look, empty where no frame shows it
};

/// One entry for each of Book::pictures; ink is averaged over the press sheet's square as each frame prints
/// it.
std::vector<PictureLooks> picture_looks(const Evidence &evidence);

} // namespace stoneproof
