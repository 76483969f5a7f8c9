// Whether a frame has too few pixels, shared by the rule for originals at hand and the rule for lost ones.
#pragma once

#include "engine/rules/about.h"

namespace stoneproof {

inline bool original_lost(const Evidence &evidence, const PlacedFrame &placed) {
  const auto &original = evidence.book.pictures[*placed.picture].original;
  return original && original->lost;
}

inline const DensityBar &bar_of(const Evidence &evidence, const PlacedFrame &placed) {
  return evidence.press.bar(evidence.use_of(*placed.picture));
}

/// How many times as many pixels the file gives that a picture of a finished PDF was surely made from; 1
/// where there is none, or where it is less than a tenth, the rounding of a crop.
inline double gain_of_master(const Evidence &evidence, const PlacedFrame &placed) {
  const Master *master = evidence.master_of(*placed.picture);
  return master && master->sure && master->finer >= 1.1 ? master->finer : 1;
}

/// Hold below the least density, query below the wanted one, each less the press sheet's tolerance; else
/// none.
inline std::optional<Grade> shortfall(const Evidence &evidence, const PlacedFrame &placed, Density density) {
  const DensityBar &bar = bar_of(evidence, placed);
  if (evidence.press.falls_short(density, bar.least)) return Grade::hold;
  if (evidence.press.falls_short(density, bar.wanted)) return Grade::query;
  return std::nullopt;
}

/// A finding with everything that can be done for the picture computed, with the pixels of the file that it
/// was made from where these are more.
inline Finding about_shortfall(Grade grade, const Evidence &evidence, const PlacedFrame &placed) {
  Finding finding = about_frame(grade, evidence, placed);
  const Laid &laid = *placed.laid;
  const Frame &frame = evidence.frame_of(placed);
  const PixelSize size = evidence.pictures[*placed.picture].facts->size;
  const Density wanted = bar_of(evidence, placed).wanted;
  const double gain = gain_of_master(evidence, placed);
  finding.measured = laid.effective() * gain;
  finding.wanted = wanted;
  if (const auto &original = evidence.book.pictures[*placed.picture].original)
    finding.rescue.rescan =
        rescan(laid, *original, size, wanted, evidence.press.flatbed_limit, evidence.press.density_tolerance);
  const Density wanted_here = wanted * (1 / gain); // of the pixels that are here
  finding.rescue.print_no_larger = largest_print(laid, wanted_here);
  finding.rescue.looser_crop = looser_crop(frame.rect, size, wanted_here);
  return finding;
}

} // namespace stoneproof
