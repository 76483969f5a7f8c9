// The cover with its measures. The only way in is draw_flat_cover; tested in
// tests/reports/layout/object_sheet.test.cpp.
#include "reports/layout/flat_cover.h"

#include "reports/content/object_words.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::layout {

namespace {

using namespace literals;

/// A stretch of one side of the sheet: how long it is, and what lies there; no name where it needs none.
struct Stretch {
  Length length;
  std::string_view name;
};

constexpr Length left_room = 34_mm;  ///< for the measures of the height
constexpr Length below_room = 22_mm; ///< for those of the width
constexpr Length first_row = 3_mm;   ///< from the sheet to the first line of measures
constexpr Length tick = 1_mm;

std::vector<Stretch> across(const Evidence &evidence, const CoverSheet &cover) {
  const bool boards = evidence.book.binding.kind == BindingKind::case_bound;
  const Length hinge = evidence.book.binding.hinge;
  const Length flap = evidence.book.cover && !boards ? evidence.book.cover->flap : Length{};
  std::vector<Stretch> all{{cover.past.outside, ""}};
  if (flap > Length{}) all.push_back({flap, "Flap"});
  all.push_back({boards ? cover.board : cover.panel, boards ? "Back board" : "Back"});
  if (boards) all.push_back({hinge, ""});
  if (cover.spine.length > Length{}) all.push_back({cover.spine.length, "Spine"});
  if (boards) all.push_back({hinge, ""});
  all.push_back({boards ? cover.board : cover.panel, boards ? "Front board" : "Front"});
  if (flap > Length{}) all.push_back({flap, "Flap"});
  all.push_back({cover.past.inside, ""});
  return all;
}

/// Measures of one side, along a line with a tick at every end.
class Measures {
public:
  Measures(Canvas &canvas, const Rect &sheet, double factor)
      : canvas_(canvas), sheet_(sheet), factor_(factor) {}

  void across(const std::vector<Stretch> &all) {
    const Length y = sheet_.bottom() + first_row;
    Length x = sheet_.left();
    end_across(x, y);
    for (const Stretch &stretch : all) {
      const Length width = stretch.length * factor_;
      if (width > Length{}) {
        canvas_.line({x, y}, {x + width, y}, style::hair);
        label_across({x + width / 2, y + 0.8_mm}, stretch.length);
      }
      x += width;
      end_across(x, y);
    }
    const Length below = y + 0.8_mm + height_of(style::label, ends_.size()) + 1_mm;
    canvas_.line({sheet_.left(), below}, {sheet_.right(), below}, style::hair);
    end_across(sheet_.left(), below);
    end_across(sheet_.right(), below);
    canvas_.text_centred({sheet_.centre().x, below + 0.8_mm}, style::label_strong,
                         content::nearest_millimetres(total(all)));
  }

  void down(const std::vector<Stretch> &all) {
    const Length x = sheet_.left() - first_row;
    Length y = sheet_.top();
    end_down(x, y);
    for (const Stretch &stretch : all) {
      const Length height = stretch.length * factor_;
      if (height > Length{}) {
        canvas_.line({x, y}, {x, y + height}, style::hair);
        canvas_.text_to_right({x - 1.6_mm, y + height / 2 - style::label.leading / 2}, style::label,
                              content::nearest_millimetres(stretch.length));
      }
      y += height;
      end_down(x, y);
    }
    const Length before = x - 17_mm;
    canvas_.line({before, sheet_.top()}, {before, sheet_.bottom()}, style::hair);
    end_down(before, sheet_.top());
    end_down(before, sheet_.bottom());
    canvas_.text_to_right({before - 1.6_mm, sheet_.centre().y - style::label_strong.leading / 2},
                          style::label_strong, content::nearest_millimetres(total(all)));
  }

private:
  static Length total(const std::vector<Stretch> &all) {
    Length sum;
    for (const Stretch &stretch : all) sum += stretch.length;
    return sum;
  }
  void end_across(Length x, Length y) { canvas_.line({x, y - tick}, {x, y + tick}, style::hair); }
  void end_down(Length x, Length y) { canvas_.line({x - tick, y}, {x + tick, y}, style::hair); }

  /// In the first row that has room for it.
  void label_across(Point top_centre, Length length) {
    const std::string words = content::nearest_millimetres(length);
    const Length half = canvas_.width(style::label, words) / 2;
    std::size_t row = 0;
    while (row < ends_.size() && ends_[row] + 1_mm > top_centre.x - half) ++row;
    if (row == ends_.size()) ends_.emplace_back();
    ends_[row] = top_centre.x + half;
    top_centre.y += height_of(style::label, row);
    canvas_.text_centred(top_centre, style::label, words);
  }

  Canvas &canvas_;
  Rect sheet_;
  double factor_;
  std::vector<Length> ends_; ///< of the last label in each row below the sheet
};

void draw_panels(Canvas &canvas, const std::vector<Stretch> &all, const Rect &visible, double factor,
                 Length first) {
  Length x = visible.left() - first * factor;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Length width = all[i].length * factor;
    if (i > 0 && i + 1 < all.size()) {
      const Point centre{x + width / 2, visible.centre().y - style::label.leading / 2};
      if (canvas.width(style::label, all[i].name) < width)
        canvas.text_centred(centre, style::label, all[i].name);
      if (i > 1) canvas.line({x, visible.top()}, {x, visible.bottom()}, style::gutter_line);
    }
    x += width;
  }
}

} // namespace

void draw_flat_cover(Canvas &canvas, const Evidence &evidence, const CoverSheet &cover, const Rect &room) {
  const double factor = std::min({(room.width - left_room) / cover.sheet.width,
                                  (room.height - below_room) / cover.sheet.height, style::largest_scale});
  const Rect sheet{room.left() + left_room, room.top(), cover.sheet.width * factor,
                   cover.sheet.height * factor};
  const Rect visible{sheet.x + cover.past.outside * factor, sheet.y + cover.past.top * factor,
                     cover.visible.width * factor, cover.visible.height * factor};
  canvas.box(sheet, style::gap_fill, style::bleed_line);
  canvas.box(visible, style::white, style::trim_line);
  const std::vector<Stretch> widths = across(evidence, cover);
  draw_panels(canvas, widths, visible, factor, cover.past.outside);
  Measures measures(canvas, sheet, factor);
  measures.across(widths);
  measures.down({{cover.past.top, ""}, {cover.visible.height, ""}, {cover.past.bottom, ""}});
}

} // namespace stoneproof::layout
