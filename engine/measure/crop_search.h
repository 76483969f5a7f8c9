// Which part of a picture another one shows, however little of it that is.
#pragma once

#include "engine/measure/copy_alignment.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace stoneproof {

/// A picture that crops are looked for in: gray, in its own shape, its longer side 256 pixels or fewer.
/// About 50 KiB.
struct CropGround {
  int width = 0, height = 0;
  std::vector<std::uint8_t> gray; ///< row by row
  SmallGray small;                ///< the same for a first look
};

CropGround crop_ground(const SmallPicture &picture);

/// A picture that may be a crop of another, made ready for many comparisons: about 250 KiB.
class CropSought {
public:
  explicit CropSought(const CopyFingerprint &print);

  /// It at one size and one of Exif's orientations, less its mean.
  struct Stencil {
    int orientation = 1, width = 0, height = 0;
    /// Pixels of the ground that all of it spans, where the ground's longer side is 32 of them.
    double span_x = 0, span_y = 0;
    std::vector<float> values;
    double norm = 0; ///< root of the sum of their squares
  };
  const std::vector<Stencil> &stencils() const { return stencils_; }
  const SmallGray &turned(int orientation) const {
    return turned_[static_cast<std::size_t>(orientation - 1)];
  }

private:
  std::array<SmallGray, 8> turned_;
  std::vector<Stencil> stencils_; ///< none of a blank picture
};

struct FoundCrop {
  std::size_t ground = 0; ///< place in the list
  GrayPart part;          ///< of the ground, as stored
  /// Exif's number for how the crop must be turned to stand as the ground does, both as stored.
  int orientation = 1;
  double likeness = 0, detail = 0; ///< as in CopyAlignment

  /// Else it may be another shot of the same scene, or one edge on another.
  bool sure() const { return likeness >= sure_likeness && detail >= 0.85; }
};

/// The grounds that the crop shows a part of: its longer side at least a quarter of the ground's, its pixels
/// as high as wide. At sizes a twelfth apart the crop, small, is laid on every place of the ground, smaller
/// still, and correlated (normalized cross-correlation, J. P. Lewis, 1995); the likeliest places are then
/// aligned. Turned or mirrored crops are looked for where none surely stands as the ground does. Time: half a
/// millisecond for a ground, four where the crop is turned or nowhere.
std::vector<FoundCrop> find_crops(const std::vector<CropGround> &grounds, const CropSought &crop);

} // namespace stoneproof
