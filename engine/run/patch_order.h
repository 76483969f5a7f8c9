// A small part of each picture as it comes out on paper: where it is taken from, and how many pixels it gets.
#pragma once

#include "engine/picture/small_copy.h"
#include "engine/rules/evidence.h"

#include <optional>
#include <vector>

namespace stoneproof {

/// What a patch is to show.
struct PatchWish {
  Length side;  ///< of the square of the printed page
  Density most; ///< pixels beyond it are averaged: the paper of the proof cannot show them
};

struct PatchOrder {
  PreviewOrder order;
  std::size_t frame = 0; ///< index into Evidence::frames: the one that prints the picture most coarsely
};

/// A patch as it was cut: `copy.part` of the picture, in the frame that prints it most coarsely.
struct Patch {
  SmallCopy copy;
  std::size_t frame = 0; ///< index into Evidence::frames
};

/// For each of Book::pictures the frame that prints it most coarsely, by index into Evidence::frames; none:
/// no frame shows it.
std::vector<std::optional<std::size_t>> coarsest_frames(const Evidence &evidence);

/// One entry for each of Book::pictures; none: no frame shows it, or no wish. The patch lies round the focus
/// point where the description names one, else round the middle of what the frame shows, and never passes the
/// edges of that.
std::vector<std::optional<PatchOrder>> patch_orders(const Evidence &evidence,
                                                    const std::optional<PatchWish> &wish);

/// How large the patch is on the printed page, along the picture's own axes.
Size printed_size(const Patch &patch, const Evidence &evidence);

} // namespace stoneproof
