// The sheets of the scanning plan while they are filled from top to bottom. Used by its parts only.
#pragma once

#include "reports/layout/canvas.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

struct PlanSheets {
  static constexpr Length right = style::sheet.width - style::margin;
  static constexpr Length bottom = style::sheet.height - style::foot;
  static constexpr Length width = style::sheet.width - style::margin * 2;

  const Typesetter &type;
  std::vector<DocumentPage> pages = {};
  Length y = {}; ///< where the next thing goes

  Canvas canvas() { return {type, pages.back()}; }
  bool has_room(Length height) const { return y + height <= bottom; }
  void begin() {
    pages.emplace_back();
    pages.back().size = style::sheet;
    y = style::margin;
  }
  void rule(const Stroke &stroke) { canvas().line({style::margin, y}, {right, y}, stroke); }
  /// The text broken to a width; no lines where it is empty.
  std::vector<std::string> type_lines(const TypeStyle &style, Length room, std::string_view text) {
    return text.empty() ? std::vector<std::string>() : canvas().wrap(style, room, text);
  }
  /// Three lines of a very long name tell it apart; its middle is left out.
  std::vector<std::string> few_lines(const TypeStyle &style, Length room, std::string_view text) {
    return type_lines(style, room, canvas().shortened(style, room * 2.7, text));
  }
  /// A heading over the whole width, in two lines at most: one that runs on is cut short.
  void two_lines(const TypeStyle &style, std::string_view text) {
    constexpr std::size_t most = 2;
    std::vector<std::string> lines = canvas().wrap(style, width, text);
    if (lines.size() > most) {
      lines.resize(most);
      lines.back() = canvas().shortened(style, width, lines.back() + " …");
    }
    y = canvas().lines({style::margin, y}, style, lines);
  }
  /// A paragraph over the whole width.
  void paragraph(const TypeStyle &style, std::string_view text) {
    Canvas on = canvas();
    y = on.lines({style::margin, y}, style, on.wrap(style, width, text));
  }
};

} // namespace stoneproof::layout
