// Marks beside the drawing. The only ways in are the functions of column.h; place_slots is pure and tested by
// itself in tests/reports/layout.
#include "reports/layout/column.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"
#include "reports/layout/clip.h"

#include <fmt/format.h>

#include <algorithm>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Length tag_gap = 2.5_mm; ///< between the tag and the words
constexpr Length remedy_indent = 3_mm;

/// One mark's words, broken to the column's width.
struct Entry {
  const content::Mark *mark;
  std::vector<std::string> message, remedy;
  Length height;
};

/// The frame, and whose picture it is: what is left of the line when the name of the file has its room.
std::string aside_line(const content::Mark &mark) {
  std::string line;
  for (const std::string &part : {mark.frame, mark.owner})
    if (!part.empty()) line += " · " + part;
  return line;
}

/// The file, the frame and the owner on one line; of a long file name the middle is left out.
std::string subject_line(const Canvas &canvas, const content::Mark &mark, Length width) {
  const Length for_subject = std::min(canvas.width(style::label, mark.subject), width / 2);
  const std::string aside = canvas.shortened(style::label, width - for_subject, aside_line(mark));
  return canvas.shortened(style::label, width - canvas.width(style::label, aside), mark.subject) + aside;
}

Entry entry_of(const Canvas &canvas, const content::Mark &mark, Length width) {
  Entry entry{&mark,
              canvas.wrap(style::body, width, content::with_figures_kept_whole(mark.message)),
              canvas.wrap(style::body, width - remedy_indent, content::with_figures_kept_whole(mark.remedy)),
              {}};
  const Length subject = mark.subject.empty() ? Length{} : style::label.leading;
  entry.height = style::label_strong.leading + subject +
                 height_of(style::body, entry.message.size() + entry.remedy.size()) + 1_mm;
  return entry;
}

void draw_entry(Canvas &canvas, const Entry &entry, Point top_left, Length width) {
  const content::Mark &mark = *entry.mark;
  draw_tag(canvas, {top_left.x - tag_gap - tag_size.width, top_left.y}, mark.number, mark.grade);
  const std::string heading =
      fmt::format("{}{} · {}", content::grade_name(mark.grade), mark.fresh ? " · new" : "", mark.title);
  canvas.text(top_left, style::label_strong, canvas.shortened(style::label_strong, width, heading));
  Length y = top_left.y + style::label_strong.leading;
  if (!mark.subject.empty()) {
    canvas.text({top_left.x, y}, style::label, subject_line(canvas, mark, width));
    y += style::label.leading;
  }
  y = canvas.lines({top_left.x, y}, style::body, entry.message) + 1_mm;
  const Length end = canvas.lines({top_left.x + remedy_indent, y}, style::body, entry.remedy);
  if (!entry.remedy.empty())
    canvas.line({top_left.x + 1_mm, y + 0.8_mm}, {top_left.x + 1_mm, end - 0.4_mm}, style::leader);
}

void draw_hairline(Canvas &canvas, const std::vector<Point> &way) {
  for (const Stroke *stroke : {&style::casing, &style::leader})
    for (std::size_t i = 1; i < way.size(); ++i) canvas.line(way[i - 1], way[i], *stroke);
  const Point end = way.front();
  canvas.box(Rect{end.x, end.y, {}, {}}.grown(0.55_mm), style::mark, style::casing);
}

/// The place on the sheet, cut to the drawing's room; a place that lies outside shrinks to the nearest edge.
Rect place_on_sheet(const Rect &area, const PageSpace &space, const Scale &scale) {
  const Rect room = drawing_box(space, scale);
  const Rect place = scale(area);
  const Length left = std::clamp(place.left(), room.left(), room.right());
  const Length top = std::clamp(place.top(), room.top(), room.bottom());
  return {left, top, std::clamp(place.right(), left, room.right()) - left,
          std::clamp(place.bottom(), top, room.bottom()) - top};
}

/// From the place's right side, as level as can be, to the tag.
void join(Canvas &canvas, const Rect &place, const Rect &room, Point tag) {
  const Point start{place.right(), std::clamp(tag.y, place.top(), place.bottom())};
  const Point bend{std::max(room.right(), start.x), tag.y};
  draw_hairline(canvas, {start, bend, tag});
}

/// The side of a place that a mark is about, as a line on the sheet.
std::pair<Point, Point> edge_of(const Rect &place, PageSide side, Length fold) {
  const bool near_fold_left = place.right() <= fold;
  switch (side) {
  case PageSide::top: return {{place.left(), place.top()}, {place.right(), place.top()}};
  case PageSide::bottom: return {{place.left(), place.bottom()}, {place.right(), place.bottom()}};
  case PageSide::left: return {{place.left(), place.top()}, {place.left(), place.bottom()}};
  case PageSide::right: return {{place.right(), place.top()}, {place.right(), place.bottom()}};
  case PageSide::fold: break;
  }
  const Length x = near_fold_left ? place.right() : place.left();
  return {{x, place.top()}, {x, place.bottom()}};
}

/// Outlines the place in the line of its grade; the sides at fault are drawn heavier.
void outline(Canvas &canvas, const content::Mark &mark, const PageSpace &space, const Scale &scale) {
  const std::vector<Point> corners = clipped(corners_of(scale(*mark.area)), drawing_box(space, scale));
  if (corners.empty()) return;
  canvas.shape(corners, std::nullopt, style::grade_line(mark.grade));
  const Rect place = place_on_sheet(*mark.area, space, scale);
  const Length fold = scale(Point{space.fold.value_or(Length{}), {}}).x;
  for (const PageSide side : mark.sides) {
    const auto [from, to] = edge_of(place, side, fold);
    canvas.line(from, to, style::fault_line);
  }
}

} // namespace

std::vector<Length> place_slots(std::span<const Slot> slots, Length top, Length bottom, Length gap) {
  std::vector<Length> tops;
  Length used = top; // what the slots taken so far need at the least
  for (const Slot &slot : slots) {
    if (!tops.empty() && used + slot.height > bottom) break;
    used += slot.height + gap;
    const Length after = tops.empty() ? top : tops.back() + slots[tops.size() - 1].height + gap;
    tops.push_back(std::max(slot.wanted, after));
  }
  Length limit = bottom;
  for (std::size_t i = tops.size(); i-- > 0;) {
    tops[i] = std::max(std::min(tops[i], limit - slots[i].height), top);
    limit = tops[i] - gap;
  }
  return tops;
}

void draw_tag(Canvas &canvas, Point top_left, int number, Grade grade) {
  const Rect box{top_left.x, top_left.y, tag_size.width, tag_size.height};
  const bool hold = grade == Grade::hold;
  Stroke outline = style::grade_line(grade);
  outline.width = 0.8_pt;
  canvas.box(box, hold ? style::mark : style::white, outline);
  TypeStyle type = style::number;
  if (hold) type.ink = style::white;
  const std::string digits = fmt::format("{}", number);
  while (canvas.width(type, digits) > box.width - 1_mm) type.size = type.size * 0.9;
  canvas.text_centred({box.centre().x, box.y}, type, digits);
}

Note note_of(const content::Mark &mark, Rect area) {
  return {area, fmt::format("{} · {} · {}", mark.number, content::grade_name(mark.grade), mark.title),
          mark.subject + aside_line(mark) + "\n" + mark.message + "\n" + mark.remedy};
}

std::size_t draw_marks(Canvas &canvas, std::span<const content::Mark *const> marks, const PageSpace &space,
                       const Scale &scale, const Column &column) {
  const Rect room = drawing_box(space, scale);
  std::vector<Entry> entries;
  std::vector<Slot> slots;
  for (const content::Mark *mark : marks) {
    entries.push_back(entry_of(canvas, *mark, column.width));
    const Length wanted = mark->area ? place_on_sheet(*mark->area, space, scale).centre().y : column.top;
    slots.push_back({wanted - style::label_strong.leading / 2, entries.back().height});
  }
  const std::vector<Length> tops = place_slots(slots, column.top, column.bottom, style::gap);
  for (std::size_t i = 0; i < tops.size(); ++i)
    if (marks[i]->area)
      canvas.shape(clipped(corners_of(scale(*marks[i]->area)), room), std::nullopt, style::casing);
  for (std::size_t i = 0; i < tops.size(); ++i) {
    const Point tag{column.left - tag_gap - tag_size.width, tops[i] + tag_size.height / 2};
    if (marks[i]->area) {
      outline(canvas, *marks[i], space, scale);
      join(canvas, place_on_sheet(*marks[i]->area, space, scale), room, tag);
    }
    draw_entry(canvas, entries[i], {column.left, tops[i]}, column.width);
    canvas.page().notes.push_back(note_of(*marks[i], {tag.x, tops[i], tag_size.width, tag_size.height}));
  }
  return tops.size();
}

} // namespace stoneproof::layout
