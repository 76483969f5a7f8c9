// Fingerprints and their hashes. The only ways in are those of copy_fingerprint.h; tested in
// tests/engine/measure/near_copy.test.cpp.
#include "engine/measure/copy_fingerprint.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace stoneproof {

namespace {

constexpr int low = 8; ///< frequencies along each axis

using Cosines = std::array<std::array<float, GrayCells::side>, low>;

Cosines cosines() {
  Cosines table;
  for (int k = 0; k < low; ++k)
    for (int x = 0; x < GrayCells::side; ++x)
      table[static_cast<std::size_t>(k)][static_cast<std::size_t>(x)] =
          static_cast<float>(std::cos(std::numbers::pi * k * (x + 0.5) / GrayCells::side));
  return table;
}

template <int side, class Grid>
Grid turned_grid(const Grid &grid, int orientation) {
  Grid out;
  constexpr int last = side - 1;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      int from_x = x, from_y = y;
      switch (orientation) {
      case 2: from_x = last - x; break;
      case 3: from_x = last - x, from_y = last - y; break;
      case 4: from_y = last - y; break;
      case 5: from_x = y, from_y = x; break;
      case 6: from_x = y, from_y = last - x; break;
      case 7: from_x = last - y, from_y = last - x; break;
      case 8: from_x = last - y, from_y = x; break;
      default: break;
      }
      out[static_cast<std::size_t>(y * side + x)] = grid[static_cast<std::size_t>(from_y * side + from_x)];
    }
  return out;
}

/// Share of squares of 6 pixels that hold shapes, in the middle three quarters: what lies outside may be a
/// frame. A shape spans a sixth of the standard deviation of all values, and at least three of 255.
double busy_share(const SmallGray &gray) {
  constexpr int square = 6, edge = SmallGray::side / 8, end = SmallGray::side - edge;
  double sum = 0, squares = 0;
  for (int y = edge; y < end; ++y)
    for (int x = edge; x < end; ++x) sum += gray.at(x, y), squares += gray.at(x, y) * gray.at(x, y);
  const double pixels = (end - edge) * (end - edge), mean = sum / pixels;
  const double shape = std::max(3.0, std::sqrt(std::max(0.0, squares / pixels - mean * mean)) / 6);
  int busy = 0, all = 0;
  for (int top = edge; top + square <= end; top += square)
    for (int left = edge; left + square <= end; left += square) {
      int least = 255, most = 0;
      for (int y = top; y < top + square; ++y)
        for (int x = left; x < left + square; ++x)
          least = std::min(least, gray.at(x, y)), most = std::max(most, gray.at(x, y));
      ++all, busy += most - least > shape ? 1 : 0;
    }
  return static_cast<double>(busy) / all;
}

/// Paper, fog, a single edge: any two of them can be laid over each other. Set on the half of the photographs
/// that scores nothing (tests/bench/detail).
constexpr double blank_below = 0.15;

} // namespace

SmallGray SmallGray::turned(int orientation) const { return {turned_grid<side>(pixels, orientation)}; }

GrayCells::Cells turned(const GrayCells::Cells &cells, int orientation) {
  return turned_grid<GrayCells::side>(cells, orientation);
}

bool is_blank(const SmallGray &gray) { return busy_share(gray) < blank_below; }

std::vector<std::uint8_t> gray_means(const SmallPicture &picture, int width, int height) {
  // A picture of fewer pixels than that is first made larger, pixel by pixel.
  const int wide = (width + picture.width - 1) / picture.width,
            high = (height + picture.height - 1) / picture.height;
  AreaAverage average({0, static_cast<double>(picture.width * wide)},
                      {0, static_cast<double>(picture.height * high)}, width, height);
  std::vector<std::uint8_t> row;
  for (int y = 0; y < picture.height; ++y) {
    const std::uint8_t *from = picture.at(0, y);
    if (wide > 1) {
      row.clear();
      for (int x = 0; x < picture.width; ++x)
        for (int i = 0; i < wide; ++i) row.insert(row.end(), picture.at(x, y), picture.at(x, y) + 3);
      from = row.data();
    }
    for (int i = 0; i < high; ++i) average.add(from);
  }
  const std::vector<std::uint8_t> rgb = average.take();
  std::vector<std::uint8_t> gray(rgb.size() / 3);
  for (std::size_t i = 0; i < gray.size(); ++i)
    gray[i] =
        static_cast<std::uint8_t>(0.299 * rgb[3 * i] + 0.587 * rgb[3 * i + 1] + 0.114 * rgb[3 * i + 2] + 0.5);
  return gray;
}

CopyFingerprint copy_fingerprint(const SmallPicture &picture) {
  CopyFingerprint print;
  if (picture.width < 1 || picture.height < 1) return print;
  print.aspect = static_cast<double>(picture.width) / picture.height;
  std::ranges::copy(gray_means(picture, SmallGray::side, SmallGray::side), print.gray.pixels.begin());
  print.blank = is_blank(print.gray);
  return print;
}

GrayCells::GrayCells(const std::uint8_t *gray, int width, int height)
    : width_(static_cast<std::size_t>(width)), height_(static_cast<std::size_t>(height)),
      sums_((width_ + 1) * (height_ + 1)) {
  const std::size_t stride = width_ + 1;
  for (std::size_t y = 1; y <= height_; ++y)
    for (std::size_t x = 1; x < stride; ++x)
      sums_[y * stride + x] = gray[(y - 1) * width_ + x - 1] + sums_[(y - 1) * stride + x] +
                              sums_[y * stride + x - 1] - sums_[(y - 1) * stride + x - 1];
}

double GrayCells::sum_before(double x, double y) const {
  const std::size_t stride = width_ + 1;
  const auto left = static_cast<std::size_t>(std::min(x, static_cast<double>(width_) - 1)),
             top = static_cast<std::size_t>(std::min(y, static_cast<double>(height_) - 1));
  const double u = x - static_cast<double>(left), v = y - static_cast<double>(top);
  const double *here = sums_.data() + top * stride + left;
  return (1 - v) * ((1 - u) * here[0] + u * here[1]) + v * ((1 - u) * here[stride] + u * here[stride + 1]);
}

void GrayCells::put_means(const GrayPart &part, std::size_t across, std::size_t down, float *cells) const {
  const auto wide = static_cast<double>(width_), high = static_cast<double>(height_);
  const double step_x = (part.right - part.left) * wide / static_cast<double>(across),
               step_y = (part.bottom - part.top) * high / static_cast<double>(down);
  const double left = part.left * wide, top = part.top * high;
  std::vector<double> above(across + 1), below(across + 1);
  for (std::size_t x = 0; x <= across; ++x)
    above[x] = sum_before(left + static_cast<double>(x) * step_x, top);
  for (std::size_t y = 0; y < down; ++y) {
    for (std::size_t x = 0; x <= across; ++x)
      below[x] =
          sum_before(left + static_cast<double>(x) * step_x, top + static_cast<double>(y + 1) * step_y);
    for (std::size_t x = 0; x < across; ++x)
      cells[y * across + x] =
          static_cast<float>((below[x + 1] - below[x] - above[x + 1] + above[x]) / (step_x * step_y));
    above.swap(below);
  }
}

GrayCells::Cells GrayCells::of(const GrayPart &part) const {
  Cells cells;
  put_means(part, side, side, cells.data());
  return cells;
}

std::vector<float> GrayCells::means(const GrayPart &part, int across, int down) const {
  std::vector<float> cells(static_cast<std::size_t>(across) * static_cast<std::size_t>(down));
  put_means(part, static_cast<std::size_t>(across), static_cast<std::size_t>(down), cells.data());
  return cells;
}

CopyHash copy_hash(const GrayCells::Cells &cells) {
  static const Cosines table = cosines();
  constexpr std::size_t side = GrayCells::side;
  std::array<std::array<float, side>, low> columns{};
  for (std::size_t k = 0; k < low; ++k)
    for (std::size_t y = 0; y < side; ++y)
      for (std::size_t x = 0; x < side; ++x) columns[k][x] += table[k][y] * cells[y * side + x];
  std::array<float, low * low> values{};
  for (std::size_t k = 0; k < low; ++k)
    for (std::size_t l = 0; l < low; ++l)
      for (std::size_t x = 0; x < side; ++x) values[k * low + l] += table[l][x] * columns[k][x];
  std::array<float, low * low - 1> sorted;
  std::copy(values.begin() + 1, values.end(), sorted.begin());
  std::nth_element(sorted.begin(), sorted.begin() + sorted.size() / 2, sorted.end());
  CopyHash hash = 0;
  for (std::size_t i = 1; i < values.size(); ++i)
    if (values[i] > sorted[sorted.size() / 2]) hash |= CopyHash{1} << i;
  return hash;
}

double correlation(const GrayCells::Cells &a, const GrayCells::Cells &b) {
  double sa = 0, sb = 0, saa = 0, sbb = 0, sab = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const double x = static_cast<double>(a[i]), y = static_cast<double>(b[i]);
    sa += x, sb += y, saa += x * x, sbb += y * y, sab += x * y;
  }
  const double count = static_cast<double>(a.size());
  const double of_a = saa - sa * sa / count, of_b = sbb - sb * sb / count;
  return of_a <= 0 || of_b <= 0 ? 0 : (sab - sa * sb / count) / std::sqrt(of_a * of_b);
}

} // namespace stoneproof
