// What a picture file says about itself, read from its header without decoding a pixel.
#pragma once

#include "engine/colour/profile.h"
#include "engine/outcome.h"
#include "engine/picture/memory_budget.h"
#include "engine/press/press_sheet.h"
#include "engine/units/density.h"
#include "engine/units/geometry.h"

#include <array>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace stoneproof {

/// The 64 quantization steps of a JPEG table in the natural order, row by row; a sound one has no 0.
using QuantTable = std::array<std::uint16_t, 64>;

/// How a JPEG was saved.
struct JpegFacts {
  std::optional<QuantTable> luma;   ///< of the first channel; none: the header defines none
  std::optional<QuantTable> chroma; ///< of the second channel, where that is another table
  std::string subsampling;          ///< of Y, Cb, Cr: "4:4:4", "4:2:2", "4:2:0", "4:4:0", "4:1:1", "4:1:0" or
                                    ///< "other"; empty: the colours are not stored apart from the brightness
};

/// What a file says of the colours that its samples stand for.
enum class ColourTag {
  none,    ///< nothing: RGB is taken as sRGB (IEC 61966-2-1), as the trade does
  srgb,    ///< sRGB by name: a PNG's sRGB chunk, or Exif's colour space 1
  adobe,   ///< Adobe RGB (1998) by Exif's interoperability index R03
  coded,   ///< a cICP chunk or an nclx box of wider primaries than sRGB's (ITU-T H.273)
  gamma,   ///< only the tone curve or the primaries, as a PNG's gAMA and cHRM
  profile, ///< an embedded ICC profile; it goes before all others
};
inline constexpr Word<ColourTag> tag_words[] = {
    {ColourTag::none, "none"},   {ColourTag::srgb, "srgb"},   {ColourTag::adobe, "adobe-rgb"},
    {ColourTag::coded, "coded"}, {ColourTag::gamma, "gamma"}, {ColourTag::profile, "profile"}};

/// Facts of one picture file. The signature decides the format, never the file name.
struct Facts {
  Format format = Format::jpeg;
  std::uint64_t bytes = 0; ///< file size
  PixelSize size;          ///< as the picture is seen, after orientation
  int orientation = 1;     ///< 1 to 8 as in Exif and TIFF tag 274; 5 to 8 swap width and height
  std::optional<Density> stored_x, stored_y; ///< as the picture is seen; none where the file names no unit
  int bits = 8;                              ///< a channel
  int channels = 3;                          ///< as stored, alpha and extra samples included
  ColourModel colour = ColourModel::rgb;
  bool alpha = false;
  std::string compression; ///< e.g. "JPEG baseline", "JPEG progressive", "LZW", "none", "Deflate"
  bool floating = false;   ///< samples are floating-point numbers
  ColourTag tag = ColourTag::none;
  std::optional<ProfileFacts> profile; ///< of the embedded ICC profile; none: there is none
  int pages = 1;                       ///< pictures in the file; the first is used
  bool tiled = false, big_tiff = false, interlaced = false;
  std::string
      device; ///< maker and model of the scanner or camera, printable ASCII; empty: the file names none
  bool camera = false;           ///< it tells of an exposure: no scanner's glass
  std::optional<JpegFacts> jpeg; ///< of a JPEG file; none for other formats, whatever they hold
};

/// Bounds on what a picture may ask of the machine. Beyond them reading gives a Fault.
struct PictureLimits {
  std::int64_t most_pixels = 1'000'000'000;         ///< width x height
  std::uint64_t most_memory = 512ull * 1024 * 1024; ///< bytes that decoding one picture may hold at a time
  /// Bytes of pixels for one byte of the file, asked only beyond 256 MB of pixels. A blank page packed by
  /// Deflate comes to 1,030, by CCITT Group 4 to several thousand.
  double most_expansion = 20'000;
  std::chrono::seconds most_time{120}; ///< that decoding one picture may take
  /// What all pictures that are decoded at the same time may hold together; none: no common limit.
  std::shared_ptr<MemoryBudget> budget;
};

/// Reads the facts of one file, opened read-only. Faults: not a regular file, not readable, empty, unknown
/// format, a broken header, or beyond the limits; `where` is the path.
Outcome<Facts> read_facts(const std::filesystem::path &file, const PictureLimits &limits = {});

/// SHA-256 of the whole file (FIPS 180-4) as 64 lower-case hexadecimal digits.
Outcome<std::string> sha256_of(const std::filesystem::path &file);

/// The same of a text in memory.
std::string sha256_of_text(std::string_view text);

} // namespace stoneproof
