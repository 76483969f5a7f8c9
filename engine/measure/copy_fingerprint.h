// What two copies of one picture have in common, whatever their size, quality and tones: a small gray
// picture, and hashes of parts of it.
//
// A hash is the signs of the 63 lowest frequencies of a 32 x 32 cosine transform against their median;
// compare C. Zauner, Implementation and Benchmarking of Perceptual Image Hash Functions, 2010.
#pragma once

#include "engine/measure/small_picture.h"

#include <array>
#include <cstdint>
#include <vector>

namespace stoneproof {

/// 96 x 96 pixels, whatever the picture's shape; brightness 0 to 255.
struct SmallGray {
  static constexpr int side = 96;
  std::array<std::uint8_t, static_cast<std::size_t>(side) * side> pixels{};
  int at(int x, int y) const { return pixels[static_cast<std::size_t>(y * side + x)]; }
  /// As it is seen at one of Exif's orientations, 1 to 8.
  SmallGray turned(int orientation) const;
};

/// About 9 KiB.
struct CopyFingerprint {
  double aspect = 1; ///< width / height
  SmallGray gray;
  bool blank = true; ///< hardly any shapes: nothing to tell pictures apart by
};

CopyFingerprint copy_fingerprint(const SmallPicture &picture);

/// Hardly any shapes stand in its middle: it can be laid over anything.
bool is_blank(const SmallGray &gray);

/// Its brightness (luma of ITU-T T.871), reduced to so many pixels, row by row.
std::vector<std::uint8_t> gray_means(const SmallPicture &picture, int width, int height);

/// A part of a SmallGray, as shares of its sides.
struct GrayPart {
  double left = 0, top = 0, right = 1, bottom = 1;
  double aspect() const { return (right - left) / (bottom - top); }
};

using CopyHash = std::uint64_t;

/// Means over a grid of cells of any part, quickly.
class GrayCells {
public:
  static constexpr int side = 32;
  using Cells = std::array<float, static_cast<std::size_t>(side) * side>;

  explicit GrayCells(const SmallGray &gray)
      : GrayCells(gray.pixels.data(), SmallGray::side, SmallGray::side) {}
  /// Of a picture of any size, row by row.
  GrayCells(const std::uint8_t *gray, int width, int height);
  Cells of(const GrayPart &part) const;
  /// Of another grid of cells.
  std::vector<float> means(const GrayPart &part, int across, int down) const;

private:
  void put_means(const GrayPart &part, std::size_t across, std::size_t down, float *cells) const;
  double sum_before(double x, double y) const;
  std::size_t width_, height_;
  std::vector<double> sums_; ///< of all pixels to the left and above
};

/// As they are seen at one of Exif's orientations.
GrayCells::Cells turned(const GrayCells::Cells &cells, int orientation);

CopyHash copy_hash(const GrayCells::Cells &cells);

/// From -1 to 1.
double correlation(const GrayCells::Cells &a, const GrayCells::Cells &b);

} // namespace stoneproof
