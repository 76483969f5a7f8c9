// Which reader gives the rows of a file, by signature. Only way in: open_rows.
// Tested through read_preview in tests/engine/picture/preview.test.cpp.
#include "engine/picture/rows.h"

#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/signature.h"

namespace stoneproof {

Outcome<Rows> open_rows(const std::filesystem::path &path, const RowOrder &order,
                        const PictureLimits &limits) {
  auto opened = PictureFile::open(path);
  if (!opened) return opened.fault();
  PictureFile file = std::move(opened).value();
  const auto format = format_of(file);
  if (!format) return format.fault();
  switch (format.value()) {
  case Format::jpeg: return jpeg_rows(std::move(file), order, limits);
  case Format::tiff: return tiff_rows(std::move(file), order, limits);
  case Format::png: return png_rows(std::move(file), order, limits);
  default: return faults::unknown_format(file.path());
  }
  return faults::unknown_format(path);
}

} // namespace stoneproof
