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

/// Hold below the least density, query below the wanted one, each less the press sheet's tolerance; else
/// none.
inline std::optional<Grade> pixel_shortfall(const Evidence &evidence, const PlacedFrame &placed) {
  const DensityBar &bar = bar_of(evidence, placed);
  const Density effective = placed.laid->effective();
  if (evidence.press.falls_short(effective, bar.least)) return Grade::hold;
  if (evidence.press.falls_short(effective, bar.wanted)) return Grade::query;
  return std::nullopt;
}

/// A finding with everything that can be done for the picture computed.
inline Finding about_shortfall(Grade grade, const Evidence &evidence, const PlacedFrame &placed) {
  Finding finding = about_frame(grade, evidence, placed);
  const Laid &laid = *placed.laid;
  const Frame &frame = evidence.frame_of(placed);
  const PixelSize size = evidence.pictures[*placed.picture].facts->size;
  const Density wanted = bar_of(evidence, placed).wanted;
  finding.measured = laid.effective();
  finding.wanted = wanted;
  if (const auto &original = evidence.book.pictures[*placed.picture].original)
    finding.rescue.rescan =
        rescan(laid, *original, size, wanted, evidence.press.flatbed_limit, evidence.press.density_tolerance);
  finding.rescue.print_no_larger = largest_print(laid, wanted);
  finding.rescue.looser_crop = looser_crop(frame.rect, size, wanted);
  return finding;
}

} // namespace stoneproof
