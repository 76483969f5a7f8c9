// Looks through the directories of a TIFF for reduced copies. Only ways in: find_reduced and
// TiffReduced::order. Tested in tests/engine/picture/tiff_reduced.test.cpp.
#include "engine/picture/tiff_reduced.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace stoneproof {

namespace {

constexpr int most_looked_at = 100; // as many directories as TiffSession looks through

/// The places of all directories: those of the chain, and those below the picture's own.
std::vector<std::uint64_t> directories(const PictureFile &file, const TiffSession &picture,
                                       const PictureLimits &limits) {
  std::vector<std::uint64_t> places;
  std::uint16_t count = 0;
  const std::uint64_t *below = nullptr;
  if (TIFFGetField(picture.tiff(), TIFFTAG_SUBIFD, &count, &below) == 1 && below)
    places.assign(below, below + std::min<int>(count, most_looked_at));
  // A session of its own, so that the other one stays where it is.
  const auto walk = TiffSession::open(file, limits);
  if (!walk) return places;
  TIFF *tiff = walk.value()->tiff();
  for (int i = 0; i < most_looked_at && TIFFReadDirectory(tiff) == 1; ++i)
    places.push_back(TIFFCurrentDirOffset(tiff));
  return places;
}

std::optional<TiffReduced> reduced_at(const PictureFile &file, std::uint64_t directory,
                                      const TiffHeader &picture, const PictureLimits &limits) {
  const auto opened = TiffSession::open(file, limits, directory);
  if (!opened) return std::nullopt;
  const TiffHeader &copy = opened.value()->header();
  const auto kind = opened.value()->tag<std::uint32_t>(TIFFTAG_SUBFILETYPE, 0);
  if ((kind & FILETYPE_REDUCEDIMAGE) == 0 || copy.orientation != picture.orientation ||
      tiff_colour(copy) != tiff_colour(picture) || copy.width >= picture.width)
    return std::nullopt;
  const double scale = static_cast<double>(copy.width) / static_cast<double>(picture.width);
  if (std::abs(static_cast<double>(picture.height) * scale - static_cast<double>(copy.height)) > 1)
    return std::nullopt;
  return TiffReduced{directory, scale, {picture.width, picture.height}, {copy.width, copy.height}};
}

bool is_enough(const TiffReduced &copy, const RowOrder &order) {
  return static_cast<double>(order.width) * copy.scale >= static_cast<double>(order.least_width) &&
         static_cast<double>(order.height) * copy.scale >= static_cast<double>(order.least_height);
}

struct Span {
  std::int64_t first, count;
};

/// The pixels of the copy that hold a part of the picture, along one axis; at least one.
Span scaled(std::int64_t first, std::int64_t count, double scale, std::int64_t whole) {
  const auto begin = static_cast<std::int64_t>(std::floor(static_cast<double>(first) * scale));
  const auto end = static_cast<std::int64_t>(std::ceil(static_cast<double>(first + count) * scale));
  const std::int64_t from = std::min(begin, whole - 1);
  return {from, std::clamp<std::int64_t>(end, from + 1, whole) - from};
}

} // namespace

RowOrder TiffReduced::order(const RowOrder &of_picture) const {
  const Span x = scaled(of_picture.x, of_picture.width, scale, size.width);
  const Span y = scaled(of_picture.y, of_picture.height, scale, size.height);
  return {x.first, y.first, x.count, y.count, x.count, y.count};
}

std::optional<TiffReduced> find_reduced(const PictureFile &file, const TiffSession &session,
                                        const RowOrder &order, const PictureLimits &limits) {
  if (order.least_width >= order.width || order.least_height >= order.height) return std::nullopt;
  std::optional<TiffReduced> best;
  for (const std::uint64_t directory : directories(file, session, limits)) {
    const auto copy = reduced_at(file, directory, session.header(), limits);
    if (copy && is_enough(*copy, order) && (!best || copy->scale < best->scale)) best = copy;
  }
  return best;
}

} // namespace stoneproof
