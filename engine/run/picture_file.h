// One picture file: its header first, then all of it. Used in this folder only.
#pragma once

#include "engine/measure/pixel_pass.h"
#include "engine/rules/evidence.h"
#include "engine/run/press_tables.h"

#include <filesystem>
#include <optional>
#include <vector>

namespace stoneproof {

/// The facts of a file, or why there are none. Its bytes are not hashed.
PictureState inspect(const std::filesystem::path &file, const PictureLimits &limits);

/// The ICC profile that a description names for a picture: it counts where the picture's own file has none,
/// and is then set in `state`. Its bytes; empty where it does not count.
std::vector<std::uint8_t> lend_profile(const std::filesystem::path &icc, PictureState &state);

/// What is wanted of one picture's pixels.
struct Wanted {
  std::optional<PreviewOrder> copy;
  std::optional<PreviewOrder> patch; ///< made only where there are looks
  std::vector<Look> looks;
  std::vector<std::uint8_t> profile; ///< lent to it; empty: none
  bool glass = false;                ///< what may be dirt on a scanner's glass
};

/// Hashes a file that was inspected, and decodes what is wanted of its pixels; what fails is set in `state`.
/// A file that is written to meanwhile is a fault: nobody could say which bytes were checked.
PassResult read_whole(const std::filesystem::path &file, const Wanted &wanted, const PictureLimits &limits,
                      PictureState &state, PressTables &tables);

} // namespace stoneproof
