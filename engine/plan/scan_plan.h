// What each original is to be scanned at, reckoned from the originals and the frames before any scan exists.
// Pure arithmetic: no file is looked at.
#pragma once

#include "engine/placement/rescue.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace stoneproof {

/// What makes the picture file: the glass of a flatbed for prints and papers, a film scanner (or a flatbed
/// with a light in its lid and a film holder) for slides and negatives, a camera for objects.
enum class ScanWay { flatbed, film, camera };
inline constexpr Word<ScanWay> scan_way_words[] = {
    {ScanWay::flatbed, "flatbed"}, {ScanWay::film, "film"}, {ScanWay::camera, "camera"}};

enum class ScanState {
  to_scan,   ///< the setting is known and enough for every frame
  beyond,    ///< the highest usual setting is too low for a frame; it is planned all the same
  at_hand,   ///< there is a file with pixels enough for every frame: nothing to do
  lost,      ///< nobody can scan the original, and no file with pixels enough is there
  no_size,   ///< the book does not tell how large the original is
  no_crop,   ///< every crop is told in pixels of a file that is not there
  not_shown, ///< no frame shows the picture
};
inline constexpr Word<ScanState> scan_state_words[] = {
    {ScanState::to_scan, "to-scan"},    {ScanState::beyond, "beyond"},   {ScanState::at_hand, "at-hand"},
    {ScanState::lost, "lost"},          {ScanState::no_size, "no-size"}, {ScanState::no_crop, "no-crop"},
    {ScanState::not_shown, "not-shown"}};

/// By what a film scanner must take in: an image of 36 x 24 mm (135 film, ISO 1007) or smaller; images up to
/// 56 mm wide, any length (120 film); anything wider. Each with 1 mm to spare, since people measure by eye.
enum class FilmSize { small, roll, sheet };
constexpr FilmSize film_size(Size image) {
  const Length shorter = std::min(image.width, image.height), longer = std::max(image.width, image.height);
  if (shorter <= Length::of_mm(25) && longer <= Length::of_mm(37)) return FilmSize::small;
  return shorter <= Length::of_mm(57) ? FilmSize::roll : FilmSize::sheet;
}

/// The glass of a usual flatbed scanner: a little more than A4 (ISO 216), 8.5 inches wide (common practice).
inline constexpr Size flatbed_glass{Length::of_mm(216), Length::of_mm(297)};
constexpr bool fits_glass(Size original) {
  return std::min(original.width, original.height) <= flatbed_glass.width &&
         std::max(original.width, original.height) <= flatbed_glass.height;
}

/// A picture file that is there already.
struct FileAtHand {
  PixelSize size;       ///< as the picture is seen; positive
  bool bilevel = false; ///< it has no tones: a photo then counts as line art, as in the proof
};

/// A frame, and what it asks of its original.
struct FrameNeed {
  std::size_t page = 0, frame = 0;  ///< index into Book::pages, and into that page's frames
  Size printed;                     ///< of the part that the frame shows
  std::optional<double> needed_ppi; ///< of the original; none: its size or the crop is not known
  std::optional<Size> largest;      ///< the largest print of that part that PlannedPicture::limit_ppi (or the
                                    ///< file at hand of a lost original) is enough for; none: it is enough
};

/// What comes out when the whole original is scanned: the crop sets the density, not the pixels.
struct Scan {
  std::optional<int> setting; ///< ppi; none: for a camera only
  PixelSize pixels;           ///< original x setting to the nearest pixel; for a camera the least that serves
  int channels = 3;           ///< 1 for line art, which has no colours
  std::uint64_t bytes = 0;    ///< pixels without compression, 8 bits a channel
};

struct PlannedPicture {
  std::size_t picture = 0; ///< index into Book::pictures
  ScanState state = ScanState::to_scan;
  ScanWay way = ScanWay::flatbed;
  Density wanted;                     ///< the press sheet's for its use
  std::vector<FrameNeed> frames;      ///< every one that shows something of it, in book order
  std::optional<std::size_t> hardest; ///< index into `frames`: the one that needs the most
  std::optional<Scan> scan;           ///< there when `state` is to_scan or beyond
  bool beyond_flatbed = false;        ///< the setting is above what a usual flatbed resolves
  int limit_ppi = 0;                  ///< the setting that FrameNeed::largest is reckoned for
  std::optional<FileAtHand> at_hand;
};

/// What comes out of a whole original of that size at a setting of so many ppi, to the nearest pixel, as the
/// file that is there lies.
PixelSize scanned_pixels(Size original, const std::optional<FileAtHand> &at_hand, int setting);

/// One for each of Book::pictures.
using ScanPlan = std::vector<PlannedPicture>;

/// `at_hand` holds one entry for each of Book::pictures. Settings are reckoned as for a rescan
/// (engine/placement/rescue.h): wanted density x placed size / (original x share shown), the larger axis, the
/// largest among the frames, less the press sheet's tolerance, rounded up to a usual step. Where a file is
/// there its shape tells how the picture lies and where its crops are, as in the proof.
ScanPlan plan_scans(const Book &book, const PressSheet &press,
                    std::span<const std::optional<FileAtHand>> at_hand);

} // namespace stoneproof
