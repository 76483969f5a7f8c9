// Sheets of a document that lie on their side, while they are filled from top to bottom.
#pragma once

#include "reports/layout/canvas.h"

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

struct Sheets {
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
  void two_lines(const TypeStyle &style, std::string_view text, Role role) {
    const auto lines = canvas().wrap_at_most(style, width, text, 2);
    y = canvas().as(role).lines({style::margin, y}, style, lines);
  }
  /// Lines over as many sheets as they need; `next_sheet` begins one.
  template <class NextSheet>
  void broken_paragraph(const TypeStyle &style, std::span<const std::string> lines, NextSheet next_sheet) {
    while (!lines.empty()) {
      if (!has_room(style.leading)) next_sheet();
      const auto room = static_cast<std::size_t>(std::max(1.0, (bottom - y) / style.leading));
      const auto now = lines.first(std::min(room, lines.size()));
      y = canvas().as(Role::paragraph).lines({style::margin, y}, style, {now.begin(), now.end()});
      lines = lines.subspan(now.size());
    }
  }
  /// The cell that heads a row: a name, and what is small below it.
  void name_cell(Length x, const std::vector<std::string> &name, const std::vector<std::string> &below) {
    Canvas on = canvas();
    const auto cell = on.begin(Role::row_header);
    on.lines({x, on.lines({x, y}, style::plan_strong, name)}, style::plan_label, below);
  }
  /// A paragraph over the whole width.
  void paragraph(const TypeStyle &style, std::string_view text) {
    Canvas on = canvas();
    y = on.as(Role::paragraph).lines({style::margin, y}, style, on.wrap(style, width, text));
  }
};

} // namespace stoneproof::layout
