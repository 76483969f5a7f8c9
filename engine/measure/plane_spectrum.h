// The power spectrum of tiles in both directions at once.
#pragma once

#include "engine/measure/tile.h"

#include <vector>

namespace stoneproof {

/// ln(power / the tile's own mean power above `fine` cycles a pixel), of a tile from which its mean is taken
/// and which is then weighted by a Hann window in both directions. A mean of logarithms over several tiles
/// lets nothing stand out that does not stand in most of them, in the same bin.
class PlaneSpectrum {
public:
  static constexpr double fine = 0.08;

  explicit PlaneSpectrum(const Tile &tile);
  /// The mean; at least one, all of one side.
  explicit PlaneSpectrum(const std::vector<PlaneSpectrum> &spectra);

  int side() const { return side_; }
  /// `across` and `down` are bins, each k / side cycles a pixel; any whole numbers, as the spectrum goes on
  /// periodically and is the same at opposite frequencies.
  double at(int across, int down) const;
  /// The same, less the mean over the 21 x 21 bins round it.
  double above_ground(int across, int down) const;

private:
  static constexpr int reach = 10;
  std::size_t index(int across, int down) const;
  void continued(int down, std::vector<double> &row) const;
  void find_ground();

  int side_;
  std::vector<float> powers_;     ///< side / 2 + 1 bins across, side down; of a tile
  std::vector<float> logarithms_; ///< the same; of a mean
  std::vector<float> ground_;     ///< the same; of a mean only, in which every bin is looked at
};

} // namespace stoneproof
