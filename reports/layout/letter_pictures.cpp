// Each picture of a letter beside the one thing to do. The only way in is lay_out_letter_pictures; tested in
// tests/reports/layout/letter.test.cpp.
#include "reports/layout/letter_sheets.h"

#include <algorithm>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Size picture_room{64_mm, 56_mm};
constexpr Length words_left = LetterSheets::left + picture_room.width + 8_mm,
                 words_width = LetterSheets::right - words_left;

/// A picture's words, broken into lines.
struct Block {
  std::vector<std::string> badge, instruction, how, why, if_lost, caption, file;
  Size picture;
  Length height;
};

Length after(const std::vector<std::string> &lines, Length gap) { return lines.empty() ? Length{} : gap; }

Block broken(LetterSheets &sheets, const content::LetterPicture &picture) {
  Block block;
  block.badge =
      sheets.type_lines(style::letter_badge, words_width - 8_mm, picture.number + " · " + picture.badge);
  block.instruction = sheets.type_lines(style::letter_strong, words_width, picture.instruction);
  block.how = sheets.type_lines(style::advice, words_width, picture.how);
  block.why = sheets.type_lines(style::advice, words_width, picture.why);
  block.if_lost = sheets.type_lines(style::letter_aside, words_width, picture.if_lost);
  block.caption = sheets.type_lines(style::letter_caption, picture_room.width, picture.caption);
  Canvas on = sheets.canvas();
  block.file = sheets.type_lines(style::letter_caption, picture_room.width,
                                 on.shortened(style::letter_caption, picture_room.width * 1.8, picture.file));
  block.picture =
      sheets.thumbnail_size(picture.picture, picture_room).value_or(Size{picture_room.width, 32_mm});
  const Length words = height_of(style::letter_badge, block.badge.size()) + 1_mm +
                       height_of(style::letter_strong, block.instruction.size()) + 1.5_mm +
                       height_of(style::advice, block.how.size()) + after(block.how, 1.5_mm) +
                       height_of(style::advice, block.why.size()) + 1.5_mm +
                       height_of(style::letter_aside, block.if_lost.size());
  const Length seen = block.picture.height + 1.5_mm +
                      height_of(style::letter_caption, block.caption.size() + block.file.size());
  block.height = std::max(words, seen);
  return block;
}

void write_block(LetterSheets &sheets, const content::LetterPicture &picture, const Block &block,
                 std::string_view instead) {
  const Length top = sheets.y;
  Canvas on = sheets.canvas();
  const auto write = [&](Role role, Point at, const TypeStyle &style, const std::vector<std::string> &lines) {
    return on.as(role).lines(at, style, lines);
  };
  sheets.tick_box({LetterSheets::right - LetterSheets::box, top});
  Length y = write(Role::heading3, {words_left, top}, style::letter_badge, block.badge) + 1_mm;
  sheets.thumbnail({LetterSheets::left, top, block.picture.width, block.picture.height}, picture, instead);
  const Point below{LetterSheets::left, top + block.picture.height + 1.5_mm};
  const Length captions = write(Role::paragraph, below, style::letter_caption, block.caption);
  write(Role::paragraph, {LetterSheets::left, captions}, style::letter_caption, block.file);

  y = write(Role::paragraph, {words_left, y}, style::letter_strong, block.instruction) + 1.5_mm;
  y = write(Role::paragraph, {words_left, y}, style::advice, block.how) + after(block.how, 1.5_mm);
  y = write(Role::paragraph, {words_left, y}, style::advice, block.why) + 1.5_mm;
  write(Role::paragraph, {words_left, y}, style::letter_aside, block.if_lost);
}

} // namespace

void lay_out_letter_pictures(LetterSheets &sheets, const content::LetterContent &content) {
  constexpr Length between = 5_mm;
  bool first = true;
  if (content.listed()) {
    const Length head = style::heading.leading + 5_mm;
    if (!sheets.has_room(head + broken(sheets, content.pictures.front()).height)) sheets.begin();
    sheets.heading(content.details);
    sheets.y += 1.5_mm;
  }
  for (const content::LetterPicture &picture : content.pictures) {
    const Block block = broken(sheets, picture);
    if (!first) {
      if (sheets.has_room(between * 2 + block.height)) {
        sheets.y += between;
        sheets.rule();
        sheets.y += between;
      } else {
        sheets.begin();
      }
    } else if (!sheets.has_room(block.height)) {
      sheets.begin();
    }
    first = false;
    write_block(sheets, picture, block, content.no_picture);
    sheets.y += block.height;
  }
}

} // namespace stoneproof::layout
