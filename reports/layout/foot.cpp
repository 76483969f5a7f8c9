// Numbers the sheets. The only way in is number_sheets; tested through the documents.
#include "reports/layout/foot.h"

#include <fmt/format.h>

namespace stoneproof::layout {

namespace {

using namespace literals;

void draw_sheet_number(Canvas &canvas, std::string_view title, std::size_t number, std::size_t count,
                       const TypeStyle &style) {
  const Size sheet = canvas.page().size;
  const Point corner{sheet.width - style::margin, sheet.height - style::margin + 1_mm};
  const std::string words = fmt::format("{} / {}", number, count);
  canvas.text_to_right(corner, style, words);
  const Length room = 110_mm;
  canvas.text_to_right({corner.x - canvas.width(style, words) - 4_mm, corner.y}, style,
                       canvas.shortened(style, room, title));
}

} // namespace

void number_sheets(Document &document, const Typesetter &type, std::string_view title,
                   const TypeStyle &style) {
  for (std::size_t i = 0; i < document.pages.size(); ++i) {
    DocumentPage &page = document.pages[i];
    Canvas canvas(type, page);
    page.label = fmt::format("{}", i + 1);
    draw_sheet_number(canvas, title, i + 1, document.pages.size(), style);
  }
}

} // namespace stoneproof::layout
