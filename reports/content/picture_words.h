// What the proof tells of each picture of the book: its facts, where it is used, and how large it may be.
#pragma once

#include "engine/run/run.h"
#include "reports/content/picture_facts.h"

#include <cstddef>
#include <string>
#include <vector>

namespace stoneproof::content {

/// One frame that shows the picture.
struct PictureUse {
  std::string place;     ///< "Page 7, f7"
  std::string figures;   ///< "84 × 60 mm, 212 ppi"; what it shows nothing of is told instead
  std::size_t page = 0;  ///< index into Book::pages
  std::size_t frame = 0; ///< index into Evidence::frames
};

struct PictureWords {
  std::size_t picture = 0; ///< index into Book::pictures
  std::string file;        ///< as the book names it
  std::string about;       ///< "print, 150 × 100 mm · Maud Hale"; empty: nothing is told of it
  std::vector<FactRow> facts;
  std::vector<PictureUse> uses;
  std::string largest; ///< how large it may be printed; empty: nobody knows its size
};

/// One entry for each of Book::pictures, in their order.
std::vector<PictureWords> picture_words(const Evidence &evidence);

/// What a true-size patch shows: "25 × 25 mm of page 7, 212 ppi".
std::string patch_words(const Evidence &evidence, const Patch &patch);

} // namespace stoneproof::content
