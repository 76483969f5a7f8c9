// Choosing tiles. The only ways in are those of tile.h; tested in tests/engine/measure/tile.test.cpp.
#include "engine/measure/tile.h"

#include <algorithm>
#include <cstdlib>
#include <cstring>

namespace stoneproof {

namespace {

constexpr std::int64_t jpeg_block = 8;
constexpr std::int64_t enough_pixels = 8'000'000;

std::int64_t up_to_block(std::int64_t x) { return (x + jpeg_block - 1) / jpeg_block * jpeg_block; }

struct Stretch {
  std::int64_t begin = 0, length = 0;
};

/// The tiles of one axis, in the middle of what there is.
Stretch tiles_along(std::int64_t begin, std::int64_t length, std::int64_t side) {
  const std::int64_t first = up_to_block(begin), room = std::max<std::int64_t>(0, begin + length - first);
  const std::int64_t covered = room / side * side;
  return {first + (room - covered) / 2 / jpeg_block * jpeg_block, covered};
}

std::uint8_t luma_of(const std::uint8_t *rgb) {
  // 0.299, 0.587 and 0.114 in 65,536ths (ITU-T T.871).
  return static_cast<std::uint8_t>((19595u * rgb[0] + 38470u * rgb[1] + 7471u * rgb[2] + 32768u) >> 16);
}

/// Mean |4-neighbour Laplacian| of a square, on every second row; `stride` bytes from row to row.
double detail_of(const std::uint8_t *pixels, std::size_t stride, int side) {
  std::int64_t sum = 0, count = 0;
  for (int row = 1; row + 1 < side; row += 2) {
    const std::uint8_t *here = pixels + static_cast<std::size_t>(row) * stride;
    const std::uint8_t *above = here - stride, *below = here + stride;
    std::int32_t of_row = 0;
    for (int x = 1; x + 1 < side; ++x)
      of_row += std::abs(4 * here[x] - here[x - 1] - here[x + 1] - above[x] - below[x]);
    sum += of_row;
    count += side - 2;
  }
  return static_cast<double>(sum) / static_cast<double>(count);
}

/// The same, but a sum, of gray or of the green in RGB, on every fourth row and in every second column:
/// enough to choose by. `bytes` a pixel.
std::int64_t rough_detail(const std::uint8_t *pixels, std::size_t stride, int side, int bytes) {
  const int last = (side - 1) * bytes;
  std::int64_t sum = 0;
  for (int row = 1; row + 1 < side; row += 4) {
    const std::uint8_t *here = pixels + static_cast<std::size_t>(row) * stride + bytes / 2;
    const std::uint8_t *above = here - stride, *below = here + stride;
    std::int32_t of_row = 0;
    for (int x = bytes; x < last; x += 2 * bytes)
      of_row += std::abs(4 * here[x] - here[x - bytes] - here[x + bytes] - above[x] - below[x]);
    sum += of_row;
  }
  return sum;
}

} // namespace

TileSampler::TileSampler(const PixelPart &part, const RowLayout &layout, std::size_t most)
    : most_(most), layout_(layout), to_rgb_(layout),
      plain_gray_(layout.colour == ColourModel::gray && layout.channels == 1 && layout.bits == 8 &&
                  !layout.inverted),
      plain_rgb_(to_rgb_.is_plain()) {
  for (const int side : {large, small}) {
    const Stretch across = tiles_along(part.x, part.width, side),
                  down = tiles_along(part.y, part.height, side);
    if (across.length == 0 || down.length == 0) continue;
    side_ = side;
    grid_ = {across.begin, down.begin, across.length, down.length};
    break;
  }
  if (side_ == 0) return;
  row_step_ = std::max<std::int64_t>(1, part.pixels() / enough_pixels);
  bytes_ = plain_gray_ ? 1 : 3;
  band_.resize(static_cast<std::size_t>(grid_.width * bytes_) * static_cast<std::size_t>(side_));
}

void TileSampler::add(std::int64_t y, const std::uint8_t *row) {
  if (side_ == 0 || !grid_.has_row(y) || (y - grid_.y) / side_ % row_step_ != 0) return;
  const std::int64_t line = (y - grid_.y) % side_, first = grid_.x - layout_.x;
  std::uint8_t *to = band_.data() + line * grid_.width * bytes_;
  if (plain_gray_ || plain_rgb_)
    std::memcpy(to, row + first * bytes_, static_cast<std::size_t>(grid_.width * bytes_));
  else
    to_rgb_.convert(row, first, grid_.width, to);
  if (line + 1 == side_) judge_row_of_tiles(y + 1 - side_);
}

Tile TileSampler::tile_at(std::int64_t x, std::int64_t y) const {
  const auto side = static_cast<std::size_t>(side_);
  Tile tile{grid_.x + x, y, side_, std::vector<std::uint8_t>(side * side), 0};
  const std::uint8_t *pixels = band_.data() + x * bytes_;
  std::uint8_t *to = tile.luma.data();
  for (int row = 0; row < side_; ++row, pixels += grid_.width * bytes_, to += side_) {
    if (plain_gray_)
      std::memcpy(to, pixels, side);
    else
      for (std::size_t column = 0; column < side; ++column) to[column] = luma_of(pixels + 3 * column);
  }
  tile.detail = detail_of(tile.luma.data(), side, side_);
  return tile;
}

/// The best of the row first, so that none is cut out that another drives out again.
void TileSampler::judge_row_of_tiles(std::int64_t y) {
  struct Candidate {
    std::int64_t rough, x;
  };
  const auto stride = static_cast<std::size_t>(grid_.width * bytes_);
  std::vector<Candidate> row;
  for (std::int64_t x = 0; x < grid_.width; x += side_)
    row.push_back({rough_detail(band_.data() + x * bytes_, stride, side_, static_cast<int>(bytes_)), x});
  const auto rougher = [](const auto &a, const auto &b) { return a.rough > b.rough; };
  std::stable_sort(row.begin(), row.end(), rougher);
  for (const Candidate &candidate : row) {
    if (kept_.size() == most_ && candidate.rough <= kept_.back().rough) break;
    if (kept_.size() == most_) kept_.pop_back();
    kept_.insert(std::upper_bound(kept_.begin(), kept_.end(), candidate, rougher),
                 {candidate.rough, tile_at(candidate.x, y)});
  }
}

std::vector<Tile> TileSampler::take() {
  std::vector<Tile> tiles;
  for (Kept &kept : kept_) tiles.push_back(std::move(kept.tile));
  std::stable_sort(tiles.begin(), tiles.end(),
                   [](const Tile &a, const Tile &b) { return a.detail > b.detail; });
  return tiles;
}

Tile transposed(const Tile &tile) {
  Tile turned{tile.y, tile.x, tile.side, std::vector<std::uint8_t>(tile.luma.size()), tile.detail};
  const auto side = static_cast<std::size_t>(tile.side);
  for (std::size_t row = 0; row < side; ++row)
    for (std::size_t column = 0; column < side; ++column)
      turned.luma[column * side + row] = tile.luma[row * side + column];
  return turned;
}

} // namespace stoneproof
