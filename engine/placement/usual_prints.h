// The sizes of paper on which pictures are usually printed, and what a picture comes to when it fills one.
// Pure arithmetic.
#pragma once

#include "engine/units/density.h"
#include "engine/units/geometry.h"

#include <algorithm>
#include <string_view>

namespace stoneproof {

struct UsualPrint {
  std::string_view name;
  Size size; ///< upright
};

/// Photographs as the trade names them, in whole centimetres (common practice; prints come out a few
/// millimetres larger or smaller), then the trimmed sizes A6 to A3 of ISO 216:2007, table 1.
inline constexpr UsualPrint usual_prints[] = {
    {"9 × 13 cm", {Length::of_mm(90), Length::of_mm(130)}},
    {"10 × 15 cm", {Length::of_mm(100), Length::of_mm(150)}},
    {"13 × 18 cm", {Length::of_mm(130), Length::of_mm(180)}},
    {"20 × 25 cm", {Length::of_mm(200), Length::of_mm(250)}},
    {"A6", {Length::of_mm(105), Length::of_mm(148)}},
    {"A5", {Length::of_mm(148), Length::of_mm(210)}},
    {"A4", {Length::of_mm(210), Length::of_mm(297)}},
    {"A3", {Length::of_mm(297), Length::of_mm(420)}},
};

/// The paper turned as the picture is: a picture that is wider than high lies across.
constexpr Size turned_to_suit(Size paper, PixelSize picture) {
  const bool across = picture.width > picture.height;
  return across ? Size{paper.height, paper.width} : paper;
}

/// The density of a picture that fills the paper; what hangs over is cut. The axis with fewer pixels an inch
/// counts.
constexpr Density filling(Size paper, PixelSize picture) {
  return std::min(Pixels{static_cast<double>(picture.width)} / paper.width,
                  Pixels{static_cast<double>(picture.height)} / paper.height);
}

/// The size of the whole picture at a density, which must not be zero.
constexpr Size printed_at(Density density, PixelSize picture) {
  return {Pixels{static_cast<double>(picture.width)} / density,
          Pixels{static_cast<double>(picture.height)} / density};
}

} // namespace stoneproof
