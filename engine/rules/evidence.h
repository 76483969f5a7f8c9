// All that the rules look at: the book, the press sheet, what is known of each picture file, and every frame
// placed.
#pragma once

#include "engine/binding/bound_book.h"
#include "engine/measure/detail.h"
#include "engine/measure/glass.h"

#include "engine/measure/ink_meter.h"
#include "engine/measure/near_copy.h"
#include "engine/measure/tone.h"
#include "engine/measure/whole_picture.h"

#include "engine/picture/facts.h"
#include "engine/placement/placed.h"

#include <optional>
#include <string>
#include <vector>

namespace stoneproof {

/// What came of one picture file.
struct PictureState {
  bool missing = false;       ///< there is no file of that name
  std::optional<Fault> fault; ///< why the file cannot be used; also set when it is missing
  std::optional<Facts> facts; ///< there when the header could be read, even if decoding failed later
  std::string sha256;         ///< empty when the file could not be read
                              /// Whether it is stored as RGB, though it holds no colour; none: nobody looked.
  std::optional<bool> neutral;
  std::optional<Bed> bed; ///< what lies round the original; none: nobody looked
};

/// A file on disk that a picture of a finished PDF was made from, found by what it shows.
struct Master {
  std::string file;    ///< its path; below the folder that was looked through, where one was named
  PixelSize size;      ///< as stored
  int orientation = 1; ///< Exif's number for how it is seen
  PixelRect part;      ///< of it as stored, that the picture shows; beyond it where the picture shows more
  /// Exif's number for how the picture must be turned to stand as the part does, both as stored.
  int turned = 1;
  double finer = 1;    ///< pixels of it for one of the picture, along the axis where that is less
  double likeness = 0; ///< correlation of the two, 0 to 1
  bool sure = false;   ///< else somebody must look
};

/// Two pictures that show the same, by their places in Book::pictures.
struct CopyPair {
  NearCopy copy;
  BetterCopy better = BetterCopy::alike;

  bool has(std::size_t picture) const { return copy.whole == picture || copy.other == picture; }
  std::size_t partner_of(std::size_t picture) const {
    return copy.whole == picture ? copy.other : copy.whole;
  }
  bool is_better(std::size_t picture) const {
    return better == (copy.whole == picture ? BetterCopy::whole : BetterCopy::other);
  }
};

/// What a frame shows of its picture, measured in the pixels.
struct Shown {
  Tone tone;
  Detail detail;
  std::optional<Ink> ink;        ///< none: the picture has no inks, and the press sheet no profile
  std::optional<Rect> ink_place; ///< on the page, where most ink lies
};

struct Evidence {
  Book book;
  PressSheet press;
  std::vector<PictureState> pictures; ///< one for each of Book::pictures
  std::vector<PlacedFrame> frames;    ///< every frame in book order
  std::vector<PageSpace> spaces;      ///< one for each of Book::pages
  BoundBook bound;
  /// One for each of `frames`, none where nothing shows; or none at all where nobody looked.
  std::vector<std::optional<Shown>> shown;
  bool pixels_measured = true;  ///< false: nobody looked at tones and inks
  std::vector<Glass> glasses;   ///< scanners with dirt on them, and the book's pictures that came from each
  std::vector<CopyPair> copies; ///< of the book's pictures, files that are the same to the byte among them
  /// One for each of `pictures`, none where no file was found; or none at all where nobody looked.
  std::vector<std::optional<Master>> masters;
  std::size_t files_searched = 0; ///< for those
  std::size_t files_unread = 0;   ///< of them, that are no pictures, or broken

  /// What a picture is used as. One without tones of its own, black and white only, is line art, whatever the
  /// book calls it: its edges are hard.
  Use use_of(std::size_t picture) const {
    const Use use = book.pictures[picture].use;
    const auto &facts = pictures[picture].facts;
    return use == Use::photo && facts && facts->colour == ColourModel::bilevel ? Use::line_art : use;
  }
  /// What was measured of the picture in a frame, by its place in `frames`; null: nothing shows, or nobody
  /// looked.
  const Shown *shown_at(std::size_t frame) const {
    return frame < shown.size() && shown[frame] ? &*shown[frame] : nullptr;
  }
  /// The file that a picture was made from, by its place in Book::pictures; null: none is known.
  const Master *master_of(std::size_t picture) const {
    return picture < masters.size() && masters[picture] ? &*masters[picture] : nullptr;
  }
  const Page &page_of(const PlacedFrame &placed) const { return book.pages[placed.page]; }
  const Frame &frame_of(const PlacedFrame &placed) const { return page_of(placed).frames[placed.frame]; }
  const PageSpace &space_of(const PlacedFrame &placed) const { return spaces[placed.page]; }
};

} // namespace stoneproof
