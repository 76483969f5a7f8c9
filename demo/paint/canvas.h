// The pixels of a picture being painted, 16 bits a channel, and the ways to put colour on them.
#pragma once

#include "demo/paint/colour.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace stoneproof::demo {

class Canvas {
public:
  Canvas(int width, int height, Colour ground = {});

  int width() const { return width_; }
  int height() const { return height_; }
  double aspect() const { return static_cast<double>(width_) / height_; }
  double pixel() const { return 1.0 / height_; } ///< one pixel in picture units
  Vec place(int x, int y) const { return {(x + 0.5) / height_, (y + 0.5) / height_}; }

  Colour get(int x, int y) const {
    const Pixel &p = pixels_[index(x, y)];
    return {p[0] / full, p[1] / full, p[2] / full};
  }
  void set(int x, int y, Colour c) { pixels_[index(x, y)] = {channel(c.r), channel(c.g), channel(c.b)}; }
  void blend(int x, int y, Colour c, double share) { set(x, y, mix(get(x, y), c, share)); }
  Colour get_inside(int x, int y) const {
    return get(std::clamp(x, 0, width_ - 1), std::clamp(y, 0, height_ - 1));
  }

  /// Gives every pixel the colour shader(place, colour now).
  template <class Shader>
  void shade(Shader shader) {
    for (int y = 0; y < height_; ++y)
      for (int x = 0; x < width_; ++x) set(x, y, shader(place(x, y), get(x, y)));
  }

private:
  using Pixel = std::array<std::uint16_t, 3>;
  static constexpr double full = 65535;
  static std::uint16_t channel(double v) { return static_cast<std::uint16_t>(clamp01(v) * full + 0.5); }
  std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) + static_cast<std::size_t>(x);
  }

  int width_, height_;
  std::vector<Pixel> pixels_;
};

/// The canvas on another number of pixels, each mixed of the four that lie round it.
Canvas resized(const Canvas &canvas, int width, int height);
/// Every pixel mixed with those round it by a Gaussian of that deviation in pixels.
void blur(Canvas &canvas, double deviation);

/// Walks the rows that an outline covers: visit(y, first x, share covered of each pixel from there on).
void cover(const Canvas &canvas, const Outline &outline,
           const std::function<void(int, int, std::span<const float>)> &visit);

/// Fills an outline (even-odd, edges smoothed) with the colours of shader(place).
template <class Shader>
void fill_with(Canvas &canvas, const Outline &outline, Shader shader, double opacity = 1) {
  cover(canvas, outline, [&](int y, int first, std::span<const float> shares) {
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const int x = first + static_cast<int>(i);
      if (shares[i] > 0)
        canvas.blend(x, y, shader(canvas.place(x, y)), opacity * static_cast<double>(shares[i]));
    }
  });
}
void fill(Canvas &canvas, const Outline &outline, Colour colour, double opacity = 1);

/// A straight stroke with round ends.
void line(Canvas &canvas, Vec from, Vec to, double width, Colour colour, double opacity = 1);
void lines(Canvas &canvas, const Outline &points, double width, Colour colour, double opacity = 1);
void disc(Canvas &canvas, Vec centre, double radius, Colour colour, double opacity = 1);
void ring(Canvas &canvas, Vec centre, double radius, double width, Colour colour, double opacity = 1);
/// A soft spot of light or shadow, fading to nothing at the radius.
void glow(Canvas &canvas, Vec centre, double radius, Colour colour, double opacity);

Outline box(double left, double top, double right, double bottom);
Outline ellipse(Vec centre, double radius_x, double radius_y, double turn = 0);
/// A smooth curve through the points (Catmull-Rom); `closed` joins the last to the first.
Outline curve(const Outline &points, bool closed = false);

} // namespace stoneproof::demo
