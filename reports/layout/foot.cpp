// Numbers the sheets. The only way in is number_sheets; tested through the documents.
#include "reports/layout/foot.h"

#include <fmt/format.h>

namespace stoneproof::layout {

namespace {

using namespace literals;

void draw_sheet_number(Canvas &canvas, std::string_view title, std::size_t number, std::size_t count) {
  const Point corner{style::sheet.width - style::margin, style::sheet.height - style::margin + 1_mm};
  const std::string words = fmt::format("{} / {}", number, count);
  canvas.text_to_right(corner, style::label, words);
  const Length room = 110_mm;
  canvas.text_to_right({corner.x - canvas.width(style::label, words) - 4_mm, corner.y}, style::label,
                       canvas.shortened(style::label, room, title));
}

} // namespace

void number_sheets(Document &document, const Typesetter &type, std::string_view title) {
  for (std::size_t i = 0; i < document.pages.size(); ++i) {
    DocumentPage &page = document.pages[i];
    Canvas canvas(type, page);
    page.label = fmt::format("{}", i + 1);
    draw_sheet_number(canvas, title, i + 1, document.pages.size());
  }
}

} // namespace stoneproof::layout
