// Reads what all pages of a finished PDF draw.
#pragma once

#include "engine/import/drawing.h"
#include "engine/import/drawn_parts.h"
#include "engine/import/notes.h"
#include "engine/import/page_tree.h"

#include <string>
#include <vector>

namespace stoneproof::finished {

struct Sheet {
  SheetBoxes boxes;
  std::string label; ///< empty: the file names none
  PageDrawing drawing;
  std::vector<ShownNote> notes;
};

/// The pages, and what they share. Must not outlive the file.
struct Drawn {
  std::vector<Sheet> sheets;
  DrawnParts parts;
  std::string title, language;
  std::string output_intent; ///< what it names the printing condition; empty: there is none
  bool cut_short = false;    ///< there were more pages than are read
};

/// Never fails; a file without a page gives none.
Drawn read_pages(const PdfFile &file);

} // namespace stoneproof::finished
