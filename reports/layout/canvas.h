// Putting words and lines on a page of a document.
#pragma once

#include "reports/layout/style.h"
#include "reports/type/typesetter.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

/// Draws on one page; keeps nothing but a reference to it.
class Canvas {
public:
  Canvas(const Typesetter &type, DocumentPage &page) : type_(type), page_(page) {}

  const Typesetter &type() const { return type_; }
  DocumentPage &page() { return page_; }

  /// `top` is the top of the line; the baseline is set so that the line is centred in its leading.
  void text(Point top_left, const TypeStyle &style, std::string_view text);
  void text_to_right(Point top_right, const TypeStyle &style, std::string_view text);
  void text_centred(Point top_centre, const TypeStyle &style, std::string_view text);
  /// Turned a quarter clockwise; `centre` is the middle of the line.
  void text_down(Point centre, const TypeStyle &style, std::string_view text);
  /// Draws lines under each other; gives the y under the last.
  Length lines(Point top_left, const TypeStyle &style, const std::vector<std::string> &lines);

  void line(Point from, Point to, const Stroke &stroke);
  void shape(std::vector<Point> corners, std::optional<Ink> fill, std::optional<Stroke> stroke,
             double opacity = 1);
  void box(const Rect &rect, std::optional<Ink> fill, std::optional<Stroke> stroke, double opacity = 1);

  Length width(const TypeStyle &style, std::string_view text) const {
    return type_.width(style.face, style.size, text);
  }
  std::vector<std::string> wrap(const TypeStyle &style, Length width, std::string_view text) const;
  std::string shortened(const TypeStyle &style, Length width, std::string_view text) const;

private:
  const Typesetter &type_;
  DocumentPage &page_;
};

std::vector<Point> corners_of(const Rect &rect);

/// The height of so many lines.
inline Length height_of(const TypeStyle &style, std::size_t lines) {
  return style.leading * static_cast<std::int64_t>(lines);
}

} // namespace stoneproof::layout
