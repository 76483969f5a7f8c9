// Putting words and lines on a page of a document.
#pragma once

#include "reports/layout/style.h"
#include "reports/type/typesetter.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

/// What is drawn while it lives belongs to one element of the page. Ends before the page is moved, and after
/// all that began later. An element in which nothing was drawn is taken back, unless it is a cell, whose
/// neighbours count on it.
class ElementScope {
public:
  ElementScope(DocumentPage &page, Role role, std::string_view alternative);
  ElementScope(const ElementScope &) = delete;
  ElementScope &operator=(const ElementScope &) = delete;
  ~ElementScope();

private:
  DocumentPage &page_;
  std::size_t index_;
};

class CanvasOfElement;

/// Draws on one page; keeps nothing but a reference to it.
class Canvas {
public:
  Canvas(const Typesetter &type, DocumentPage &page) : type_(type), page_(page) {}

  const Typesetter &type() const { return type_; }
  DocumentPage &page() { return page_; }

  /// Says what is drawn from now on, until the scope ends; inside another scope it is a part of that element.
  [[nodiscard]] ElementScope begin(Role role, std::string_view alternative = "") {
    return {page_, role, alternative};
  }
  /// The same for what is drawn on the result: `canvas.as(Role::cell).text(...)`.
  CanvasOfElement as(Role role);

  /// `top` is the top of the line; the baseline is set so that the line is centred in its leading.
  void text(Point top_left, const TypeStyle &style, std::string_view text);
  /// On the baseline of a line of another style that begins at the same top: a label beside its text.
  void text_beside(Point top_left, const TypeStyle &style, const TypeStyle &line, std::string_view text);
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
  /// So many lines at the most: of a text that runs on the last ends in an ellipsis.
  std::vector<std::string> wrap_at_most(const TypeStyle &style, Length width, std::string_view text,
                                        std::size_t most) const;
  std::string shortened(const TypeStyle &style, Length width, std::string_view text) const;

private:
  Length baseline(const TypeStyle &style) const; ///< from the top of a line

  const Typesetter &type_;
  DocumentPage &page_;
};

class CanvasOfElement : public Canvas {
public:
  CanvasOfElement(const Typesetter &type, DocumentPage &page, Role role)
      : Canvas(type, page), scope_(page, role, "") {}

private:
  ElementScope scope_;
};

inline CanvasOfElement Canvas::as(Role role) { return {type_, page_, role}; }

std::vector<Point> corners_of(const Rect &rect);

/// The height of so many lines.
inline Length height_of(const TypeStyle &style, std::size_t lines) {
  return style.leading * static_cast<std::int64_t>(lines);
}

} // namespace stoneproof::layout
