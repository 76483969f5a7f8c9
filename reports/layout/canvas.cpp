// The few ways in which anything gets onto a page. The only way in is Canvas; tested through the documents.
#include "reports/layout/canvas.h"

#include "reports/layout/text_fit.h"

#include <limits>

namespace stoneproof::layout {

namespace {

/// The end of an element that is still drawn.
constexpr std::size_t open = std::numeric_limits<std::size_t>::max();

/// The innermost element that is still drawn.
std::optional<std::size_t> innermost(const std::vector<Element> &elements) {
  if (elements.empty()) return std::nullopt;
  std::optional<std::size_t> index = elements.size() - 1;
  while (index && elements[*index].end != open) index = elements[*index].parent;
  return index;
}

} // namespace

ElementScope::ElementScope(DocumentPage &page, Role role, std::string_view alternative)
    : page_(page), index_(page.elements.size()) {
  page.elements.push_back(
      {role, innermost(page.elements), page.items.size(), open, std::string(alternative)});
}

ElementScope::~ElementScope() {
  Element &element = page_.elements[index_];
  element.end = page_.items.size();
  const bool empty = index_ + 1 == page_.elements.size() && element.first == element.end;
  if (empty && !is_cell(element.role)) page_.elements.pop_back();
}

void Canvas::text(Point top_left, const TypeStyle &style, std::string_view text) {
  if (text.empty()) return;
  page_.items.emplace_back(TextItem{
      {top_left.x, top_left.y + baseline(style)}, style.face, style.size, style.ink, std::string(text)});
}

Length Canvas::baseline(const TypeStyle &style) const {
  const Length ascent = type_.ascent(style.face, style.size), descent = type_.descent(style.face, style.size);
  return (style.leading - ascent - descent) / 2 + ascent;
}

void Canvas::text_beside(Point top_left, const TypeStyle &style, const TypeStyle &line,
                         std::string_view text) {
  this->text({top_left.x, top_left.y + baseline(line) - baseline(style)}, style, text);
}

void Canvas::text_to_right(Point top_right, const TypeStyle &style, std::string_view text) {
  this->text({top_right.x - width(style, text), top_right.y}, style, text);
}

void Canvas::text_centred(Point top_centre, const TypeStyle &style, std::string_view text) {
  this->text({top_centre.x - width(style, text) / 2, top_centre.y}, style, text);
}

void Canvas::text_down(Point centre, const TypeStyle &style, std::string_view text) {
  if (text.empty()) return;
  const Length ascent = type_.ascent(style.face, style.size), descent = type_.descent(style.face, style.size);
  const Point begin{centre.x - (ascent - descent) / 2, centre.y - width(style, text) / 2};
  page_.items.emplace_back(TextItem{begin, style.face, style.size, style.ink, std::string(text), true});
}

Length Canvas::lines(Point top_left, const TypeStyle &style, const std::vector<std::string> &lines) {
  for (const std::string &line : lines) {
    text(top_left, style, line);
    top_left.y += style.leading;
  }
  return top_left.y;
}

void Canvas::line(Point from, Point to, const Stroke &stroke) {
  page_.items.emplace_back(LineItem{from, to, stroke});
}

void Canvas::shape(std::vector<Point> corners, std::optional<Ink> fill, std::optional<Stroke> stroke,
                   double opacity) {
  if (corners.size() < 3) return;
  page_.items.emplace_back(ShapeItem{std::move(corners), fill, std::move(stroke), opacity});
}

void Canvas::box(const Rect &rect, std::optional<Ink> fill, std::optional<Stroke> stroke, double opacity) {
  shape(corners_of(rect), fill, std::move(stroke), opacity);
}

std::vector<std::string> Canvas::wrap(const TypeStyle &style, Length width, std::string_view text) const {
  return layout::wrap(type_, style.face, style.size, width, text);
}

std::vector<std::string> Canvas::wrap_at_most(const TypeStyle &style, Length width, std::string_view text,
                                              std::size_t most) const {
  std::vector<std::string> lines = wrap(style, width, text);
  if (lines.size() <= most) return lines;
  lines.resize(most);
  lines.back() = shortened(style, width, lines.back() + " …");
  return lines;
}

std::string Canvas::shortened(const TypeStyle &style, Length width, std::string_view text) const {
  return layout::shortened(type_, style.face, style.size, width, text);
}

std::vector<Point> corners_of(const Rect &rect) {
  return {{rect.left(), rect.top()},
          {rect.right(), rect.top()},
          {rect.right(), rect.bottom()},
          {rect.left(), rect.bottom()}};
}

} // namespace stoneproof::layout
