// The drawing of a finished PDF -> the values of a Book.
#pragma once

#include "engine/book/book.h"
#include "engine/import/read_pages.h"

#include <string>
#include <vector>

namespace stoneproof::finished {

/// What is known of a picture once it has been written out.
struct WrittenPicture {
  std::string file;      ///< relative to the folder of the description; empty: it could not be written
  std::string profile;   ///< likewise, of its ICC profile; empty: none
  int orientation = 1;   ///< that the written file asks for, 1 to 8 as in Exif
  bool line_art = false; ///< a stencil, or one bit a sample
};

/// `pictures`: one for each of Drawn's images. Those that no frame shows are left out of the book. `file`
/// names the PDF.
Book layout_of(const Drawn &drawn, const std::vector<WrittenPicture> &pictures, const std::string &file,
               const PrintFile &print_file);

/// Maps the user space of a page to points from the top left corner of its trim as it is seen, y downwards.
Matrix to_trim(const SheetBoxes &boxes);

/// So many points, to whole micrometres: what is finer is left of the decimals that programs write.
Length micrometres_of(double points);

/// Places beyond it, about 10 m in points, are on no page; a description bounds its lengths likewise.
inline constexpr double largest_page = 28'000;

/// How a picture lies on a page. `place` maps its unit square, y upwards, to the page's points, y downwards,
/// and `visible` is what shows of it there. None where it has no area or a place that is not a number.
struct Laying {
  Rect rect;
  Turn turn;
  Mirror mirror = Mirror::none;
  CropShare crop;
};
std::optional<Laying> laying_of(const Matrix &place, const Outline &visible, int orientation);

/// The texts of a page: lines that follow each other in one size and direction make one block. `map` leads to
/// points from the trim. What lies wholly beyond `printed` is left out: file names and dates that programs
/// set beside the crop marks are the printer's.
std::vector<TextBlock> text_blocks(const PageDrawing &drawing, const Matrix &map, const Box &printed,
                                   const std::string &label);

} // namespace stoneproof::finished
