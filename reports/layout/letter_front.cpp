// The first page of a letter. The only ways in are lay_out_letter_front and lay_out_letter_glass; tested in
// tests/reports/layout/letter.test.cpp.
#include "reports/layout/letter_sheets.h"

#include "engine/plan/scan_plan.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace stoneproof::layout {

namespace {

using namespace literals;

void greeting(LetterSheets &sheets, const content::LetterContent &content) {
  Canvas on = sheets.canvas();
  on.as(Role::paragraph).text({LetterSheets::left, sheets.y}, style::plan_label, content.letter_for);
  sheets.y += style::plan_label.leading + 0.5_mm;
  constexpr std::size_t most = 2; // lines of a name and of a title
  const auto head = [&](const TypeStyle &style, std::string_view text, Role role) {
    if (text.empty()) return;
    const auto lines = on.wrap_at_most(style, LetterSheets::width, text, most);
    sheets.y = on.as(role).lines({LetterSheets::left, sheets.y}, style, lines);
  };
  head(style::title, content.name, Role::paragraph);
  head(style::pile_device, content.about, Role::heading1);
  sheets.y += 6_mm;
  sheets.paragraph(style::advice, content.greeting);
  sheets.y += 2_mm;
  sheets.paragraph(style::advice, content.intro);
  for (const std::string &text : content.explained) {
    sheets.y += 2_mm;
    sheets.paragraph(style::advice, text);
  }
  sheets.y += 6_mm;
}

/// A row of the list: two lines of words, or one where many rows are to fit the first page.
struct GlanceRow {
  Size picture;
  bool one_line;
  Length height() const { return picture.height + gap * 2; }
  static constexpr Length gap = 1.3_mm; ///< above and below the rule
};
constexpr GlanceRow roomy{{22_mm, 13_mm}, false}, narrow{{16_mm, 8.6_mm}, true};

void glance_row(LetterSheets &sheets, const content::LetterPicture &picture, const GlanceRow &row) {
  constexpr Length number_left = LetterSheets::left + 8_mm, picture_left = LetterSheets::left + 17_mm,
                   words_left = LetterSheets::left + 44_mm;
  const Length top = sheets.y, middle = top + row.picture.height / 2;
  const auto centred = [&](const TypeStyle &style) { return middle - style.leading / 2; };
  Canvas on = sheets.canvas();
  sheets.tick_box({LetterSheets::left, middle - LetterSheets::box / 2});
  const auto item = on.begin(Role::list_item);
  on.text({number_left, centred(style::letter_glance)}, style::letter_glance, picture.number);
  sheets.thumbnail({picture_left, top, row.picture.width, row.picture.height}, picture, "");
  Length width = LetterSheets::right - words_left - on.width(style::letter_setting, picture.setting) - 4_mm;
  const auto words = [&](Point at, const TypeStyle &style, std::string_view text) {
    on.text(at, style, on.shortened(style, width, text));
  };
  if (row.one_line) {
    words({words_left, centred(style::letter_glance)}, style::letter_glance, picture.glance);
    const Length used = on.width(style::letter_glance, picture.glance) + 4_mm;
    width = width - used;
    if (width > 15_mm)
      words({words_left + used, centred(style::letter_caption)}, style::letter_caption, picture.name);
  } else {
    words({words_left, middle - 5.9_mm}, style::letter_glance, picture.glance);
    words({words_left, middle + 0.5_mm}, style::letter_caption, picture.name);
  }
  on.text_to_right({LetterSheets::right, centred(style::letter_setting)}, style::letter_setting,
                   picture.setting);
  sheets.y = top + row.picture.height + GlanceRow::gap;
}

/// What to do at a glance, all on the first page as far as it can be. Clean glass comes before any scan.
void list(LetterSheets &sheets, const content::LetterContent &content) {
  if (!content.glasses.empty()) {
    sheets.paragraph(style::letter_strong, content.glasses.front().heading);
    sheets.y += 4_mm;
  }
  const Length head = style::heading.leading + 4_mm;
  if (!sheets.has_room(head + roomy.height())) sheets.begin();
  const bool all_fit =
      sheets.has_room(head + roomy.height() * static_cast<std::int64_t>(content.pictures.size()));
  const GlanceRow &row = all_fit ? roomy : narrow;
  sheets.heading(content.glance);
  for (const content::LetterPicture &picture : content.pictures) {
    if (!sheets.has_room(row.height())) {
      sheets.begin();
      sheets.heading(content.glance_more);
    }
    glance_row(sheets, picture, row);
    sheets.rule();
    sheets.y += GlanceRow::gap;
  }
  sheets.y += 6_mm;
}

/// A circle as a shape of straight edges.
std::vector<Point> circle(Point centre, Length radius) {
  constexpr int corners = 36;
  std::vector<Point> shape;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / corners;
    shape.push_back({centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
  }
  return shape;
}

/// From above the glass is the mirror of the scan, since the original lies face down: the scan's left is on
/// the right. What does not lie on the usual glass is drawn at its edge.
Point on_glass(const content::SpotAt &spot, const Rect &glass, double scale) {
  const auto along = [&](double at_mm, Length room) {
    return std::clamp(Length::of_mm(std::clamp(at_mm, 0.0, 2000.0)) * scale, Length{}, room);
  };
  return {glass.x + glass.width - along(spot.x_mm + spot.width_mm / 2, glass.width),
          glass.y + along(spot.y_mm + spot.height_mm / 2, glass.height)};
}

/// A speck is a dot in a ring; a streak is a line over the whole glass.
void draw_spot(Canvas &on, const content::SpotAt &spot, const Rect &glass, double scale) {
  constexpr double streak_mm = 60; // nothing shorter runs along a scan
  constexpr Length ring = 2.2_mm;
  const Point centre = on_glass(spot, glass, scale);
  const Stroke line = style::grade_line(Grade::hold);
  if (spot.height_mm > streak_mm) {
    on.line({centre.x, glass.y}, {centre.x, glass.y + glass.height}, line);
  } else if (spot.width_mm > streak_mm) {
    on.line({glass.x, centre.y}, {glass.x + glass.width, centre.y}, line);
  } else {
    on.shape(circle(centre, 0.4_mm), style::dark, {});
    on.shape(circle(centre, ring), {}, line);
  }
}

/// The sentence beside it tells what the drawing shows; read aloud, its heading is enough.
void draw_glass(Canvas &on, const content::LetterGlass &glass, const Rect &place, double scale) {
  const auto figure = on.begin(Role::figure, glass.heading);
  on.box(place, style::gap_fill, style::trim_line);
  for (const content::SpotAt &spot : glass.spots) draw_spot(on, spot, place, scale);
}

} // namespace

void lay_out_letter_front(LetterSheets &sheets, const content::LetterContent &content) {
  sheets.begin();
  greeting(sheets, content);
  if (content.listed()) list(sheets, content);
  for (const content::LetterGlass &glass : content.glasses) lay_out_letter_glass(sheets, glass);
}

void lay_out_letter_glass(LetterSheets &sheets, const content::LetterGlass &glass) {
  constexpr double scale = 0.3;
  constexpr Length between = 8_mm;
  const bool drawing = !glass.spots.empty();
  const Size size = drawing ? Size{flatbed_glass.width * scale, flatbed_glass.height * scale} : Size{};
  const Length words_left = LetterSheets::left + (drawing ? size.width + between : Length{});
  const Length words_width = LetterSheets::right - words_left;
  const auto heading = sheets.type_lines(style::letter_strong, words_width, glass.heading);
  const auto sentence = sheets.type_lines(style::advice, words_width, glass.sentence);
  const Length words =
      height_of(style::letter_strong, heading.size()) + 2_mm + height_of(style::advice, sentence.size());
  const Length height = std::max(size.height, words);
  if (!sheets.has_room(height)) sheets.begin();
  Canvas on = sheets.canvas();
  const Length below =
      on.as(Role::heading2).lines({words_left, sheets.y}, style::letter_strong, heading) + 2_mm;
  on.as(Role::paragraph).lines({words_left, below}, style::advice, sentence);
  if (drawing) draw_glass(on, glass, {LetterSheets::left, sheets.y, size.width, size.height}, scale);
  sheets.y += height + 8_mm;
}

} // namespace stoneproof::layout
