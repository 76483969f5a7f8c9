// Marks beside the drawing. The only ways in are the functions of column.h; place_slots is pure and tested by
// itself in tests/reports/layout.
#include "reports/layout/column.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"
#include "reports/layout/mark_lines.h"

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
  {
    const auto title = canvas.begin(Role::heading3);
    draw_tag(canvas, {top_left.x - tag_gap - tag_size.width, top_left.y}, mark.number, mark.grade);
    const std::string heading =
        fmt::format("{}{} · {}", content::grade_name(mark.grade), mark.fresh ? " · new" : "", mark.title);
    canvas.text(top_left, style::label_strong, canvas.shortened(style::label_strong, width, heading));
  }
  Length y = top_left.y + style::label_strong.leading;
  if (!mark.subject.empty()) {
    canvas.as(Role::paragraph).text({top_left.x, y}, style::label, subject_line(canvas, mark, width));
    y += style::label.leading;
  }
  y = canvas.as(Role::paragraph).lines({top_left.x, y}, style::body, entry.message) + 1_mm;
  const Length end =
      canvas.as(Role::paragraph).lines({top_left.x + remedy_indent, y}, style::body, entry.remedy);
  if (!entry.remedy.empty())
    canvas.line({top_left.x + 1_mm, y + 0.8_mm}, {top_left.x + 1_mm, end - 0.4_mm}, style::leader);
}

Length tags_left(const Column &column) { return column.left - tag_gap - tag_size.width; }

/// Leads from the outlines to the tags. The entries, so far at `tops`, move to where their leaders come out
/// of the drawing as far as their neighbours allow.
std::vector<Way> led_to_tags(const Outlined &places, const LeaderRoom &around, std::vector<Slot> slots,
                             std::vector<Length> &tops, const Column &column) {
  const auto middles = [&] {
    std::vector<Length> heights;
    for (const std::size_t mark : places.marks) heights.push_back(tops[mark] + tag_size.height / 2);
    return heights;
  };
  std::vector<Way> ways = lead_out(places.outlines, middles(), around);
  slots.resize(tops.size());
  for (std::size_t i = 0; i < ways.size(); ++i)
    slots[places.marks[i]].wanted = ways[i].back().y - tag_size.height / 2;
  tops = place_slots(slots, column.top, column.bottom, style::gap);
  lead_to_tags(ways, middles(), tags_left(column));
  return ways;
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
                       const Scale &scale, const LeaderRoom &around, const Column &column) {
  std::vector<Entry> entries;
  std::vector<Slot> slots;
  Length used = column.top;
  for (const content::Mark *mark : marks) {
    if (used > column.bottom) break; // no further one finds room
    entries.push_back(entry_of(canvas, *mark, column.width));
    const Length wanted = mark->area ? scale(*mark->area).centre().y : column.top;
    slots.push_back({wanted - tag_size.height / 2, entries.back().height});
    used += entries.back().height + style::gap;
  }
  std::vector<Length> tops = place_slots(slots, column.top, column.bottom, style::gap);
  marks = marks.first(tops.size());
  const Outlined places = outlined(marks, around, scale);
  const std::vector<Way> ways = led_to_tags(places, around, slots, tops, column);
  draw_outlines(canvas, marks, places, scale(Point{space.fold.value_or(Length{}), {}}).x);
  for (const Way &way : ways) draw_leader(canvas, way);
  for (std::size_t i = 0; i < tops.size(); ++i) {
    draw_entry(canvas, entries[i], {column.left, tops[i]}, column.width);
    canvas.page().notes.push_back(
        note_of(*marks[i], {tags_left(column), tops[i], tag_size.width, tag_size.height}));
  }
  return tops.size();
}

} // namespace stoneproof::layout
