// Choosing tiles. The only ways in are those of tile.h; tested in tests/engine/measure/tile.test.cpp.
#include "engine/measure/tile.h"

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <utility>

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

/// The same, but a sum, of gray or of the green in RGB, of one row and in every second column: enough to
/// choose by. `bytes` a pixel.
template <int bytes>
std::int32_t rough_detail(const std::uint8_t *here, int side) {
  here += bytes / 2;
  const std::uint8_t *above = here - side * bytes, *below = here + side * bytes;
  const int last = (side - 1) * bytes;
  std::int32_t sum = 0;
  for (int x = bytes; x < last; x += 2 * bytes)
    sum += std::abs(4 * here[x] - here[x - bytes] - here[x + bytes] - above[x] - below[x]);
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
  const auto across = static_cast<std::size_t>(grid_.width / side_);
  pixels_ = std::make_unique_for_overwrite<std::uint8_t[]>((across + most_) * tile_bytes());
  for (std::size_t i = 0; i < across; ++i)
    row_.push_back({grid_.x + static_cast<std::int64_t>(i) * side_, 0, 0, pixels_.get() + i * tile_bytes()});
}

void TileSampler::add(std::int64_t y, const std::uint8_t *row) {
  if (side_ == 0 || !grid_.has_row(y) || (y - grid_.y) / side_ % row_step_ != 0) return;
  const std::int64_t line = (y - grid_.y) % side_, stride = side_ * bytes_;
  for (Candidate &tile : row_) {
    std::uint8_t *to = tile.pixels + line * stride;
    if (plain_gray_ || plain_rgb_)
      std::memcpy(to, row + (tile.x - layout_.x) * bytes_, static_cast<std::size_t>(stride));
    else
      to_rgb_.convert(row, tile.x - layout_.x, side_, to);
    if (line % 4 == 2) // while the rows are still near at hand
      tile.rough += bytes_ == 1 ? rough_detail<1>(to - stride, side_) : rough_detail<3>(to - stride, side_);
  }
  if (line + 1 == side_) judge_row_of_tiles(y + 1 - side_);
}

/// What is kept changes its room with what it drives out.
void TileSampler::judge_row_of_tiles(std::int64_t y) {
  for (Candidate &tile : row_) {
    Candidate best{tile.x, y, std::exchange(tile.rough, 0), nullptr};
    const bool full = kept_.size() == most_;
    if (full && best.rough <= kept_.back().rough) continue;
    std::uint8_t *room = pixels_.get() + (row_.size() + kept_.size()) * tile_bytes();
    if (full) {
      room = kept_.back().pixels;
      kept_.pop_back();
    }
    best.pixels = std::exchange(tile.pixels, room);
    const auto place = std::upper_bound(kept_.begin(), kept_.end(), best,
                                        [](const auto &a, const auto &b) { return a.rough > b.rough; });
    kept_.insert(place, best);
  }
}

Tile TileSampler::tile_of(const Candidate &kept) const {
  const auto side = static_cast<std::size_t>(side_);
  Tile tile{kept.x, kept.y, side_, std::vector<std::uint8_t>(side * side), 0};
  for (std::size_t i = 0; i < tile.luma.size(); ++i)
    tile.luma[i] = plain_gray_ ? kept.pixels[i] : luma_of(kept.pixels + 3 * i);
  tile.detail = detail_of(tile.luma.data(), side, side_);
  return tile;
}

std::vector<Tile> TileSampler::take() {
  std::vector<Tile> tiles;
  for (const Candidate &kept : kept_) tiles.push_back(tile_of(kept));
  std::stable_sort(tiles.begin(), tiles.end(),
                   [](const Tile &a, const Tile &b) { return a.detail > b.detail; });
  return tiles;
}

Tile transposed(const Tile &tile) {
  Tile turned{tile.y, tile.x, tile.side, std::vector<std::uint8_t>(tile.luma.size()), tile.detail};
  const auto side = static_cast<std::size_t>(tile.side);
  constexpr std::size_t strip = 16; // so many rows at a time stay in the cache
  for (std::size_t first = 0; first < side; first += strip)
    for (std::size_t column = 0; column < side; ++column)
      for (std::size_t row = first; row < std::min(first + strip, side); ++row)
        turned.luma[column * side + row] = tile.luma[row * side + column];
  return turned;
}

} // namespace stoneproof
