// Strokes and filled outlines with smoothed edges. Only way in: canvas.h. What it paints is looked at by eye.
#include "demo/paint/canvas.h"

#include "demo/paint/noise.h"

namespace stoneproof::demo {

Canvas::Canvas(int width, int height, Colour ground)
    : width_(width), height_(height),
      pixels_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height),
              Pixel{channel(ground.r), channel(ground.g), channel(ground.b)}) {}

namespace {

constexpr int sub_rows = 4; // scan lines a pixel row

/// Where the outline crosses the level y, in pixels from the left, sorted.
void crossings(const Outline &outline, double y, double scale, std::vector<double> &out) {
  out.clear();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec a = outline[i], b = outline[(i + 1) % outline.size()];
    if ((a.y <= y) == (b.y <= y)) continue;
    out.push_back((a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x)) * scale);
  }
  std::sort(out.begin(), out.end());
}

/// Adds one scan line from left to right, in pixels, to the shares that begin at pixel `first`.
void add_span(std::vector<float> &shares, int first, double left, double right) {
  left = std::max(left - first, 0.0);
  right = std::min(right - first, static_cast<double>(shares.size()));
  if (left >= right) return;
  const auto from = static_cast<std::size_t>(left);
  for (std::size_t x = from; x < shares.size() && static_cast<double>(x) < right; ++x) {
    const double part = std::min(right, static_cast<double>(x + 1)) - std::max(left, static_cast<double>(x));
    shares[x] += static_cast<float>(part / sub_rows);
  }
}

/// Calls visit(x, y, distance to the segment in pixels) for the pixels around it.
template <class Visit>
void around(const Canvas &canvas, Vec from, Vec to, double reach, Visit visit) {
  const double scale = canvas.height();
  const Vec a = from * scale, b = to * scale, d = b - a;
  const double r = reach * scale + 1, square = std::max(d.x * d.x + d.y * d.y, 1e-9);
  const int top = std::max(0, whole(std::min(a.y, b.y) - r));
  const int bottom = std::min(canvas.height() - 1, whole(std::max(a.y, b.y) + r));
  for (int y = top; y <= bottom; ++y) {
    // Only the stretch of the row that the slanted stroke can touch.
    double low = std::min(a.x, b.x), high = std::max(a.x, b.x);
    if (std::abs(d.y) > 1e-6) {
      const double t0 = clamp01((y + 0.5 - r - a.y) / d.y), t1 = clamp01((y + 0.5 + r - a.y) / d.y);
      low = std::min(a.x + t0 * d.x, a.x + t1 * d.x);
      high = std::max(a.x + t0 * d.x, a.x + t1 * d.x);
    }
    const int left = std::max(0, whole(low - r)), right = std::min(canvas.width() - 1, whole(high + r));
    for (int x = left; x <= right; ++x) {
      const Vec p = Vec{x + 0.5, y + 0.5} - a;
      const double t = clamp01((p.x * d.x + p.y * d.y) / square);
      visit(x, y, length(p - d * t));
    }
  }
}

} // namespace

void cover(const Canvas &canvas, const Outline &outline,
           const std::function<void(int, int, std::span<const float>)> &visit) {
  if (outline.size() < 3) return;
  const double scale = canvas.height();
  Vec low = outline.front(), high = low;
  for (const Vec p : outline) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  const int left = std::max(0, whole(low.x * scale));
  const int right = std::min(canvas.width() - 1, whole(high.x * scale));
  const int top = std::max(0, whole(low.y * scale));
  const int bottom = std::min(canvas.height() - 1, whole(high.y * scale));
  if (right < left) return;
  std::vector<float> shares(static_cast<std::size_t>(right - left + 1));
  std::vector<double> xs;
  for (int y = top; y <= bottom; ++y) {
    std::fill(shares.begin(), shares.end(), 0.0F);
    for (int s = 0; s < sub_rows; ++s) {
      crossings(outline, (y + (s + 0.5) / sub_rows) / scale, scale, xs);
      for (std::size_t i = 0; i + 1 < xs.size(); i += 2) add_span(shares, left, xs[i], xs[i + 1]);
    }
    visit(y, left, shares);
  }
}

void fill(Canvas &canvas, const Outline &outline, Colour colour, double opacity) {
  fill_with(
      canvas, outline, [&](Vec) { return colour; }, opacity);
}

void line(Canvas &canvas, Vec from, Vec to, double width, Colour colour, double opacity) {
  const double half = width / 2 * canvas.height();
  // A stroke thinner than a pixel keeps its pixel and grows fainter instead.
  const double weight = half < 0.5 ? opacity * half * 2 : opacity, shown = std::max(half, 0.5);
  around(canvas, from, to, width / 2, [&](int x, int y, double distance) {
    const double share = clamp01(shown + 0.5 - distance);
    if (share > 0) canvas.blend(x, y, colour, weight * share);
  });
}

void lines(Canvas &canvas, const Outline &points, double width, Colour colour, double opacity) {
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    line(canvas, points[i], points[i + 1], width, colour, opacity);
}

void disc(Canvas &canvas, Vec centre, double radius, Colour colour, double opacity) {
  line(canvas, centre, centre, radius * 2, colour, opacity);
}

void ring(Canvas &canvas, Vec centre, double radius, double width, Colour colour, double opacity) {
  Outline points = ellipse(centre, radius, radius);
  points.push_back(points.front());
  lines(canvas, points, width, colour, opacity);
}

void glow(Canvas &canvas, Vec centre, double radius, Colour colour, double opacity) {
  const double reach = radius * canvas.height();
  around(canvas, centre, centre, radius, [&](int x, int y, double distance) {
    const double near = clamp01(1 - distance / reach);
    canvas.blend(x, y, colour, opacity * near * near);
  });
}

Outline box(double left, double top, double right, double bottom) {
  return {{left, top}, {right, top}, {right, bottom}, {left, bottom}};
}

Outline ellipse(Vec centre, double radius_x, double radius_y, double turn) {
  constexpr int steps = 72;
  Outline points;
  for (int i = 0; i < steps; ++i) {
    const double a = 2 * pi * i / steps, x = std::cos(a) * radius_x, y = std::sin(a) * radius_y;
    points.push_back(centre +
                     Vec{x * std::cos(turn) - y * std::sin(turn), x * std::sin(turn) + y * std::cos(turn)});
  }
  return points;
}

Outline curve(const Outline &points, bool closed) {
  constexpr int steps = 8;
  const auto count = static_cast<int>(points.size());
  const auto at = [&](int i) {
    const int j = closed ? (i + count) % count : std::clamp(i, 0, count - 1);
    return points[static_cast<std::size_t>(j)];
  };
  Outline out;
  for (int i = 0; i < (closed ? count : count - 1); ++i)
    for (int s = 0; s < steps; ++s) {
      const double t = static_cast<double>(s) / steps, t2 = t * t, t3 = t2 * t;
      out.push_back((at(i - 1) * (-t3 + 2 * t2 - t) + at(i) * (3 * t3 - 5 * t2 + 2) +
                     at(i + 1) * (-3 * t3 + 4 * t2 + t) + at(i + 2) * (t3 - t2)) *
                    0.5);
    }
  if (!closed && count > 0) out.push_back(points.back());
  return out;
}

} // namespace stoneproof::demo
