// The pixels of a picture as rows, top to bottom as stored. Readers hold a few of them; those of
// WebP, HEIC and AVIF, of progressive JPEGs and of interlaced PNGs and GIFs hold the whole picture, whose
// rows are complete only at its end, and stay within the limits.
#pragma once

#include "engine/outcome.h"
#include "engine/picture/facts.h"

#include <array>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <vector>

namespace stoneproof {

/// What is wanted of a picture, in stored pixels (before orientation).
struct RowOrder {
  std::int64_t x = 0, y = 0, width = 0, height = 0; ///< whole pixels inside the picture
  /// The source may come reduced, but the part must keep at least this many pixels; a JPEG reduces in eighths
  /// while it decodes, a TIFF may hold a reduced copy. The part's own size, or more, asks for every pixel.
  std::int64_t least_width = 0, least_height = 0;
};

/// How to read the rows of a source. Samples are interleaved; those of up to 8 bits take one byte, others two
/// in the machine's own order. Sample values are as stored, but that wider ones give their 16 highest bits,
/// floating ones their share of the range from black to white (0 to 1, where a TIFF names no other) as 0 to
/// 65535, and signed ones are moved up to begin at 0; Facts tells what the file holds.
struct RowLayout {
  PixelSize stored;          ///< of the whole picture, before orientation
  double scale = 1;          ///< rows' pixels for one stored pixel
  std::int64_t x = 0, y = 0; ///< where the rows begin, in scaled pixels; at or before the part asked for
  std::int64_t width = 0, height = 0; ///< of the rows: at least the part asked for, in scaled pixels
  int channels = 0;
  int bits = 8; ///< a sample lies from 0 to 2^bits - 1
  ColourModel colour =
      ColourModel::rgb;    ///< bilevel and gray 1, rgb and lab 3, cmyk 4, indexed 1 leading channels
  bool inverted = false;   ///< gray: 0 is white; cmyk: 0 is full ink
  bool signed_ab = false;  ///< lab: a and b as two's complement (CIE), else shifted by half (ICC)
  int alpha = -1;          ///< the channel that holds opacity, or -1
  bool multiplied = false; ///< the colours are already multiplied by the opacity
  std::vector<std::array<std::uint8_t, 3>> palette; ///< indexed: colours by sample value
  std::vector<std::uint8_t> icc; ///< the embedded ICC profile as the file holds it; empty: none
};

class RowSource {
public:
  RowSource() = default;
  RowSource(const RowSource &) = delete;
  RowSource &operator=(const RowSource &) = delete;
  virtual ~RowSource() = default;

  const RowLayout &layout() const { return layout_; }
  /// The next row; valid until the next call. To be called at most layout().height times. Fault: damage in
  /// the file.
  virtual Outcome<std::span<const std::uint8_t>> next() = 0;

protected:
  RowLayout layout_;
};

/// Opens a file for its rows. Memory: a few rows for strips, a row of tiles for tiles; more is a Fault beyond
/// limits.most_memory. Faults: as read_facts, and kinds of picture that are not decoded.
Outcome<std::unique_ptr<RowSource>> open_rows(const std::filesystem::path &file, const RowOrder &order,
                                              const PictureLimits &limits = {});

} // namespace stoneproof
