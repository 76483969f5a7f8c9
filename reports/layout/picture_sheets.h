// Every picture of the book: what a frame shows of it, a patch at true size, its facts, its uses, and how
// large it may be printed.
#pragma once

#include "reports/content/proof_content.h"
#include "reports/layout/frame_drawing.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace stoneproof::layout {

/// What a patch in the list of pictures shows: what to ask of the engine.
inline constexpr PatchWish true_size_patch{Length::of_mm(25), Density::of_ppi(300)};

/// Where a picture is told of.
struct PicturePlace {
  std::size_t picture; ///< index into Book::pictures
  std::size_t sheet;   ///< index into PictureSheets::sheets
  Rect area;
};

/// Where a use of a picture is told of, so that it can lead to its page.
struct UsePlace {
  std::size_t page;  ///< index into Book::pages
  std::size_t sheet; ///< index into PictureSheets::sheets
  Rect area;
};

struct PictureSheets {
  std::vector<DocumentPage> sheets; ///< none: the book has no picture
  std::vector<PicturePlace> places; ///< one for each picture
  std::vector<UsePlace> uses;
};

/// `patches` are the images of the document that show each picture's patch, as `images` its small copy.
PictureSheets lay_out_pictures(const content::ProofContent &content, const Checked &checked,
                               const ImageOf &images, const ImageOf &patches, const Typesetter &type);

} // namespace stoneproof::layout
