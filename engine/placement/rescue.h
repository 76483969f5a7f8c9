// What can be done for a picture with too few pixels: a rescan, a smaller print, a looser crop. Pure
// arithmetic.
#pragma once

#include "engine/placement/fit.h"
#include "engine/press/press_sheet.h"

#include <cmath>
#include <optional>

namespace stoneproof {

/// The usual settings of scanner software, ppi (common practice).
inline constexpr int scanner_steps[] = {150, 200, 300, 400, 600, 800, 1200, 1600, 2400, 3200, 4800};

/// The smallest usual setting that is no lower than needed; none above the last.
constexpr std::optional<int> scanner_step(double needed_ppi) {
  for (const int step : scanner_steps)
    if (static_cast<double>(step) >= needed_ppi * (1 - 1e-9))
      return step; // 1e-9: below any tick of the lengths
  return std::nullopt;
}

/// A scan of the original that would reach the wanted density in this frame.
struct Rescan {
  double needed_ppi = 0;       ///< wanted x placed / (original x crop share), the larger axis
  std::optional<int> setting;  ///< rounded up to a usual step; none: beyond every usual scanner
  bool beyond_flatbed = false; ///< a flatbed gains no detail at this setting
  bool film = false;           ///< slide or negative: wants a film scanner or a film holder
};

/// How many times larger than the original the picture is printed, per axis.
struct Enlargement {
  double x = 1, y = 1;
};

/// The original as the picture is seen: a size given lying on its side is set upright.
constexpr Size upright(Size original, PixelSize picture) {
  const bool disagree = (original.width > original.height && picture.width < picture.height) ||
                        (original.width < original.height && picture.width > picture.height);
  return disagree ? Size{original.height, original.width} : original;
}

/// None where the original's size is not told.
constexpr std::optional<Enlargement> enlargement(const Laid &laid, const Original &original,
                                                 PixelSize picture) {
  if (!original.size) return std::nullopt;
  const Size size = upright(*original.size, picture);
  return Enlargement{laid.picture.width / size.width, laid.picture.height / size.height};
}

/// `tolerance` is the share by which the new scan's density may fall short, as in the press sheet. None where
/// the original's size is not told.
constexpr std::optional<Rescan> rescan(const Laid &laid, const Original &original, PixelSize picture,
                                       Density wanted, Density flatbed_limit, double tolerance = 0) {
  const auto enlarged = enlargement(laid, original, picture);
  if (!enlarged) return std::nullopt;
  Rescan answer;
  answer.needed_ppi = wanted.ppi() * std::max(enlarged->x, enlarged->y);
  answer.setting = scanner_step(answer.needed_ppi * (1 - tolerance));
  answer.beyond_flatbed = !answer.setting || *answer.setting > flatbed_limit.ppi();
  answer.film = original.kind == OriginalKind::slide || original.kind == OriginalKind::negative;
  return answer;
}

/// The largest size, in the shape it is printed in now, at which the part shown reaches a density.
constexpr Size largest_print(const Laid &laid, Density wanted) {
  if (!laid.visible) return {};
  const double factor = laid.effective() / wanted;
  return {laid.visible->width * factor, laid.visible->height * factor};
}

/// The least part of the picture that fills the frame at a density, as shares of the picture's width and
/// height.
struct LooserCrop {
  double width_share = 1, height_share = 1;
};

/// None where even the whole picture, filling the frame, stays below the density.
constexpr std::optional<LooserCrop> looser_crop(const Rect &frame, PixelSize picture, Density wanted) {
  const double width = (wanted * frame.width).count / static_cast<double>(picture.width);
  const double height = (wanted * frame.height).count / static_cast<double>(picture.height);
  if (width > 1 || height > 1) return std::nullopt;
  return LooserCrop{width, height};
}

} // namespace stoneproof
