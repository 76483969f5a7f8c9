// How a picture sits in its frame, before the frame is turned. Everything else about a placement follows from
// this.
#pragma once

#include "engine/book/book.h"
#include "engine/units/density.h"

#include <optional>

namespace stoneproof {

/// Where the whole picture would lie on the page, and the part of it that the frame shows.
struct Laid {
  Rect picture;                ///< the whole picture, unclipped, before the turn
  std::optional<Rect> visible; ///< the part inside the frame; none: the frame shows nothing of the picture
  PixelRect shown; ///< the same part in pixels of the picture as it is seen (empty when nothing is)
  Density density_x, density_y; ///< picture pixels per printed inch along the picture's own axes

  /// Per axis, the smaller one counts.
  constexpr Density effective() const { return density_x < density_y ? density_x : density_y; }
};

namespace fit_detail {

constexpr Rect scaled_about(const Rect &frame, PixelSize picture, double scale, double focus_x,
                            double focus_y, bool keep_covered) {
  const Length width = Length::nearest(static_cast<double>(picture.width) * scale);
  const Length height = Length::nearest(static_cast<double>(picture.height) * scale);
  const Point centre = frame.centre();
  Length x = centre.x - width * focus_x, y = centre.y - height * focus_y;
  if (keep_covered) {
    x = std::clamp(x, std::min(frame.right() - width, frame.left()), frame.left());
    y = std::clamp(y, std::min(frame.bottom() - height, frame.top()), frame.top());
  }
  return {x, y, width, height};
}

/// Lays the picture so that the given share of it covers the frame exactly.
constexpr Rect around_crop(const Rect &frame, double x, double y, double width, double height) {
  const Length whole_width = frame.width / width, whole_height = frame.height / height;
  return {frame.x - whole_width * x, frame.y - whole_height * y, whole_width, whole_height};
}

constexpr Rect mirrored_in(const Rect &frame, Rect picture, Mirror mirror) {
  if (mirror == Mirror::horizontal) picture.x = frame.left() + frame.right() - picture.right();
  if (mirror == Mirror::vertical) picture.y = frame.top() + frame.bottom() - picture.bottom();
  return picture;
}

struct RectFor {
  const Rect &frame;
  PixelSize size;
  Mirror mirror;

  constexpr double scale_x() const {
    return static_cast<double>(frame.width.ticks()) / static_cast<double>(size.width);
  }
  constexpr double scale_y() const {
    return static_cast<double>(frame.height.ticks()) / static_cast<double>(size.height);
  }
  constexpr Rect operator()(const Fill &fill) const {
    const double scale = std::max(scale_x(), scale_y());
    return mirrored_in(frame, scaled_about(frame, size, scale, fill.focus_x, fill.focus_y, true), mirror);
  }
  constexpr Rect operator()(const Inside &) const {
    return scaled_about(frame, size, std::min(scale_x(), scale_y()), 0.5, 0.5, false);
  }
  constexpr Rect operator()(const CropShare &crop) const {
    return mirrored_in(frame, around_crop(frame, crop.x, crop.y, crop.width, crop.height), mirror);
  }
  constexpr Rect operator()(const CropPixels &crop) const {
    const double width = static_cast<double>(size.width), height = static_cast<double>(size.height);
    return (*this)(CropShare{crop.part.x / width, crop.part.y / height, crop.part.width / width,
                             crop.part.height / height});
  }
  constexpr Rect operator()(const PictureAt &at) const { return at.rect; }
};

/// Densities along the picture's axes, each from the length that is exact in the description, so that
/// rounding the picture's rectangle to ticks never decides whether a bar is met.
struct Densities {
  Density x, y;
};
struct DensitiesFor {
  const Rect &frame;
  PixelSize size;

  constexpr Densities over(double pixels_x, double pixels_y, Size length) const {
    return {Pixels{pixels_x} / length.width, Pixels{pixels_y} / length.height};
  }
  constexpr Densities whole_over(Size length) const {
    return over(static_cast<double>(size.width), static_cast<double>(size.height), length);
  }
  constexpr Densities operator()(const Fill &) const {
    const Densities bare = whole_over(frame.size());
    return {std::min(bare.x, bare.y), std::min(bare.x, bare.y)};
  }
  constexpr Densities operator()(const Inside &) const {
    const Densities bare = whole_over(frame.size());
    return {std::max(bare.x, bare.y), std::max(bare.x, bare.y)};
  }
  constexpr Densities operator()(const CropShare &crop) const {
    return over(static_cast<double>(size.width) * crop.width, static_cast<double>(size.height) * crop.height,
                frame.size());
  }
  constexpr Densities operator()(const CropPixels &crop) const {
    return over(crop.part.width, crop.part.height, frame.size());
  }
  constexpr Densities operator()(const PictureAt &at) const { return whole_over(at.rect.size()); }
};

/// The pixels under `visible`: the page is read off the picture's rectangle, backwards along a mirrored axis.
constexpr PixelRect pixels_under(const Rect &visible, const Rect &picture, PixelSize size, Mirror mirror) {
  const double per_x = static_cast<double>(size.width) / static_cast<double>(picture.width.ticks());
  const double per_y = static_cast<double>(size.height) / static_cast<double>(picture.height.ticks());
  const Length from_left =
      mirror == Mirror::horizontal ? picture.right() - visible.right() : visible.left() - picture.left();
  const Length from_top =
      mirror == Mirror::vertical ? picture.bottom() - visible.bottom() : visible.top() - picture.top();
  return {static_cast<double>(from_left.ticks()) * per_x, static_cast<double>(from_top.ticks()) * per_y,
          static_cast<double>(visible.width.ticks()) * per_x,
          static_cast<double>(visible.height.ticks()) * per_y};
}

} // namespace fit_detail

/// Lays a picture of `size` pixels into a frame. Sizes must be positive. A picture is laid at least one tick
/// wide and high, so that no share of it divides by zero.
constexpr Laid lay_picture(const Rect &frame, PixelSize size, const Fit &fit, Mirror mirror = Mirror::none) {
  Laid laid;
  laid.picture = std::visit(fit_detail::RectFor{frame, size, mirror}, fit);
  laid.picture.width = std::max(laid.picture.width, Length::of_ticks(1));
  laid.picture.height = std::max(laid.picture.height, Length::of_ticks(1));
  const auto densities = std::visit(fit_detail::DensitiesFor{frame, size}, fit);
  laid.density_x = densities.x;
  laid.density_y = densities.y;
  laid.visible = shared_part(frame, laid.picture);
  if (laid.visible) laid.shown = fit_detail::pixels_under(*laid.visible, laid.picture, size, mirror);
  return laid;
}

} // namespace stoneproof
