// What the finished PDF of a book tells beyond its pictures and texts: of the file, and of each of its pages.
// ISO 32000-1 names the terms.
#pragma once

#include "engine/units/geometry.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof {

struct PrintFont {
  std::string name;
  bool embedded = false;
  int first_page = 1; ///< Page::number of the first page that shows it
};

/// The file as a whole.
struct PrintFile {
  std::string file;    ///< as it was named
  std::string version; ///< of PDF, e.g. "1.6"
  bool encrypted = false;
  std::string output_intent; ///< the printing condition that it names; empty: none
  std::vector<PrintFont> fonts;
  bool mended = false;          ///< it could be read only after its table of objects had been rebuilt
  bool cut_short = false;       ///< it has more pages than are read
  bool binding_guessed = false; ///< nobody said how it will be bound, which no PDF tells
};

/// The boxes of a page (ISO 32000-1, 14.11.2) in its own coordinates: from the top left corner of the trim as
/// it is seen; none: the page does not name it.
struct PageBoxes {
  Rect media;
  std::optional<Rect> crop, bleed, trim, art;
};

/// A line that was stroked, or a bar that was filled.
struct ThinLine {
  Length width; ///< 0: as thin as the device can
  Rect rect;
};

struct PageNote {
  std::string kind; ///< of the annotation, e.g. "Text"
  Rect rect;
  bool prints = false;
};

/// The colour spaces in which something other than a picture is painted.
struct PaintedIn {
  bool rgb = false, cmyk = false, gray = false, spot = false;
};

struct PrintPage {
  std::string label; ///< as the file counts; empty: it names none
  PageBoxes boxes;
  std::optional<Rect> painted; ///< round all that touches the trim and is neither picture nor text
  PaintedIn painted_in;
  bool transparent = false; ///< something is blended, masked softly or see-through
  bool broken = false;      ///< some of its content could not be decoded
  bool cut_short = false;   ///< it draws more than is followed
  std::vector<ThinLine> lines;
  std::vector<PageNote> notes;
  std::vector<Rect> hidden_pictures; ///< where pictures lie that the page's edge or a clip hides wholly
};

} // namespace stoneproof
