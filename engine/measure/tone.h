// What the histograms of a picture say of its tones.
#pragma once

#include "engine/measure/tone_meter.h"

#include <vector>

namespace stoneproof {

/// Shares are of the pixels counted, 0 to 1.
struct ChannelTone {
  double clipped_highlights = 0; ///< share of samples above 250 of 255
  double clipped_shadows = 0;    ///< share of samples below 5 of 255
};

/// 250 and 5 are the bounds that FADGI, Technical Guidelines for Digitizing Cultural Heritage Materials
/// (2016), gives for 8-bit values of negatives; deeper samples are held to the same parts of their range.
struct Tone {
  std::vector<ChannelTone> channels; ///< gray, or red, green, blue
  /// The least of the channels' shares: so much at most lies beyond the bounds in every channel at once, and
  /// prints as bare paper or as one black.
  double white = 0, black = 0;
  /// From the 0.5th to the 99.5th percentile of all channels together, as a share of the whole range. Half a
  /// percent at each end is left out because of dust and reflections (our own choice).
  double range = 0;
  /// Share of values that are missing, up to seven in a row, between values that occur often: the teeth of a
  /// comb, as they stay after a strong correction in 8 bits. The largest of the channels. 0 where it cannot
  /// be told: fewer than 10,000 pixels, other depths than 8 bits, samples that are not the file's own, tones
  /// that span fewer than 32 values.
  double comb = 0;
};

/// `histograms` hold at least one pixel.
Tone tone_of(const Histograms &histograms);

} // namespace stoneproof
