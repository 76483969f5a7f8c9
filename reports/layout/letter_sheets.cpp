// What the parts of a letter share: paragraphs, boxes, thumbnails. The only way in is LetterSheets; tested in
// tests/reports/layout/letter.test.cpp.
#include "reports/layout/letter_sheets.h"

#include <algorithm>

namespace stoneproof::layout {

using namespace literals;

void LetterSheets::begin() {
  document.pages.emplace_back();
  document.pages.back().size = style::letter_sheet;
  y = style::letter_margin;
}

std::vector<std::string> LetterSheets::type_lines(const TypeStyle &style, Length room,
                                                  std::string_view text) {
  if (text.empty()) return {};
  return canvas().wrap(style, room, content::with_letter_figures_kept_whole(std::string(text)));
}

void LetterSheets::paragraph(const TypeStyle &style, std::string_view text, Role role) {
  y = canvas().as(role).lines({left, y}, style, type_lines(style, width, text));
}

void LetterSheets::heading(std::string_view text) {
  paragraph(style::heading, text, Role::heading2);
  y += 1_mm;
  rule();
  y += 2.5_mm;
}

void LetterSheets::tick_box(Point at) { canvas().box({at.x, at.y, box, box}, {}, style::trim_line); }

void LetterSheets::rule() { canvas().line({left, y}, {right, y}, style::row_rule); }

std::optional<Size> LetterSheets::thumbnail_size(std::size_t picture, Size room) const {
  if (picture >= copies_.size() || !copies_[picture]) return std::nullopt;
  const PixelRect &part = copies_[picture]->part;
  const double shape = std::clamp(part.height / part.width, 0.05, 20.0); // a sliver stays to be seen
  const Length height = room.width * shape;
  return height <= room.height ? Size{room.width, height} : Size{room.height * (1 / shape), room.height};
}

std::size_t LetterSheets::image_of(std::size_t picture) {
  auto &image = images_[picture];
  if (!image) {
    image = document.images.size();
    const SmallCopy &copy = *copies_[picture];
    document.images.push_back({copy.width, copy.height, copy.jpeg});
  }
  return *image;
}

void LetterSheets::thumbnail(const Rect &place, const content::LetterPicture &picture,
                             std::string_view instead) {
  const auto size = thumbnail_size(picture.picture, place.size());
  Canvas on = canvas();
  if (!size) {
    on.box(place, style::gap_fill, {});
    const auto lines = type_lines(style::letter_caption, place.width - 4_mm, instead);
    const Length high = height_of(style::letter_caption, lines.size());
    if (high <= place.height)
      on.as(Role::paragraph)
          .lines({place.x + 2_mm, place.y + (place.height - high) / 2}, style::letter_caption, lines);
    return;
  }
  const Rect drawn{place.x, place.y, size->width, size->height};
  const std::vector<Point> corners = corners_of(drawn);
  on.page().items.push_back(PictureItem{
      image_of(picture.picture), {corners[0], corners[1], corners[2], corners[3]}, corners, picture.name});
  on.box(drawn, {}, style::row_rule);
}

} // namespace stoneproof::layout
