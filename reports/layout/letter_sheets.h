// The sheets of a letter while they are filled from top to bottom. Used by its parts only.
#pragma once

#include "engine/picture/small_copy.h"
#include "reports/content/letter_content.h"
#include "reports/layout/canvas.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

class LetterSheets {
public:
  static constexpr Length left = style::letter_margin;
  static constexpr Length right = style::letter_sheet.width - style::letter_margin;
  static constexpr Length width = right - left;
  static constexpr Length bottom = style::letter_sheet.height - style::foot;
  static constexpr Length box = Length::of_mm(5); ///< to tick

  LetterSheets(const Typesetter &type, std::span<const std::optional<SmallCopy>> copies)
      : type_(type), copies_(copies), images_(copies.size()) {}

  Document document;
  Length y; ///< where the next thing goes

  Canvas canvas() { return {type_, document.pages.back()}; }
  bool has_room(Length height) const { return y + height <= bottom; }
  void begin();
  std::size_t page() const { return document.pages.size() - 1; }
  /// The text broken to a width, its figures whole; no lines where it is empty.
  std::vector<std::string> type_lines(const TypeStyle &style, Length room, std::string_view text);
  void paragraph(const TypeStyle &style, std::string_view text, Role role = Role::paragraph);
  void heading(std::string_view text);
  void tick_box(Point at);
  void rule();

  /// How large the picture's small copy is drawn in a room; none: there is no copy of it.
  std::optional<Size> thumbnail_size(std::size_t picture, Size room) const;
  /// Draws it; a grey field with `instead` in it where there is no copy.
  void thumbnail(const Rect &place, const content::LetterPicture &picture, std::string_view instead);

private:
  std::size_t image_of(std::size_t picture);

  const Typesetter &type_;
  std::span<const std::optional<SmallCopy>> copies_;
  std::vector<std::optional<std::size_t>> images_; ///< index into Document::images
};

/// Greeting, what to do at a glance, and the glass where it is dirty. Short letters have no glance: the
/// pictures follow at once.
void lay_out_letter_front(LetterSheets &sheets, const content::LetterContent &content);

/// The glass, where it is dirty, to scale with its specks circled.
void lay_out_letter_glass(LetterSheets &sheets, const content::LetterGlass &glass);

/// Each picture with the one thing to do.
void lay_out_letter_pictures(LetterSheets &sheets, const content::LetterContent &content);

/// How to scan and the reply slip, on one sheet, which they are short enough for (tested).
void lay_out_letter_back(LetterSheets &sheets, const content::LetterContent &content);

} // namespace stoneproof::layout
