// Which reader gives the rows of a file, by signature. Only way in: open_rows.
// Tested through read_preview in tests/engine/picture/preview.test.cpp.
#include "engine/picture/rows.h"

#include "engine/picture/bounded_rows.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/signature.h"

#include <utility>

namespace stoneproof {

namespace {

Outcome<Rows> rows_of(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  const auto format = format_of(file);
  if (!format) return format.fault();
  switch (format.value()) {
  case Format::jpeg: return jpeg_rows(std::move(file), order, limits);
  case Format::tiff: return tiff_rows(std::move(file), order, limits);
  case Format::png: return png_rows(std::move(file), order, limits);
  case Format::gif: return gif_rows(std::move(file), order, limits);
  case Format::webp: return webp_rows(std::move(file), order, limits);
  case Format::heic:
  case Format::avif: return heif_rows(std::move(file), format.value(), order, limits);
  }
  return faults::unknown_format(file.path());
}

} // namespace

Outcome<Rows> open_rows(const std::filesystem::path &path, const RowOrder &order,
                        const PictureLimits &limits) {
  auto opened = PictureFile::open(path);
  if (!opened) return opened.fault();
  const std::uint64_t bytes = opened.value().size();
  Outcome<Rows> rows = rows_of(std::move(opened).value(), order, limits);
  if (!rows) return rows;
  // Only now: opening may wait for memory that other pictures hold, which is no fault of this one.
  return bounded(std::move(rows).value(), path, bytes, std::chrono::steady_clock::now(), limits);
}

} // namespace stoneproof
