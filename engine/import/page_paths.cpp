// Paths of a content stream: built, painted, and made the clip (ISO 32000-1, 8.5).
#include "engine/import/page_reader.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stoneproof::finished {

namespace {

/// More thin lines on a page than this are told by these alone.
constexpr std::size_t most_lines = 200;
/// A clip of more is taken for the box round it.
constexpr std::size_t most_corners = 32;

Box grown(const Box &box, double by) {
  return {box.left - by, box.bottom - by, box.right + by, box.top + by};
}

/// Whether a box lies wholly outside another: as crop marks and colour bars lie outside the trim.
bool beside(const Box &box, const Box &other) {
  return box.right < other.left || box.left > other.right || box.top < other.bottom || box.bottom > other.top;
}

} // namespace

void PageReader::move(const Operation &given) {
  if (given.has_numbers(2)) path_.move_to(state_.to_page.apply({given.number(0), given.number(1)}));
}

void PageReader::line(const Operation &given) {
  if (given.has_numbers(2)) path_.line_to(state_.to_page.apply({given.number(0), given.number(1)}));
}

void PageReader::curve(const Operation &given) {
  if (!given.has_numbers(6)) return;
  const auto at = [&](std::size_t i) { return state_.to_page.apply({given.number(i), given.number(i + 1)}); };
  path_.curve_to(at(0), at(2), at(4));
}

void PageReader::curve_from_here(const Operation &given) {
  if (!given.has_numbers(4)) return;
  const auto at = [&](std::size_t i) { return state_.to_page.apply({given.number(i), given.number(i + 1)}); };
  path_.curve_to(path_.last(), at(0), at(2));
}

void PageReader::curve_to_end(const Operation &given) {
  if (!given.has_numbers(4)) return;
  const auto at = [&](std::size_t i) { return state_.to_page.apply({given.number(i), given.number(i + 1)}); };
  path_.curve_to(at(0), at(2), at(2));
}

void PageReader::rectangle(const Operation &given) {
  if (!given.has_numbers(4)) return;
  const double x = given.number(0), y = given.number(1), width = given.number(2), height = given.number(3);
  const Spot corners[] = {{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}};
  path_.move_to(state_.to_page.apply(corners[0]));
  for (int i = 1; i < 4; ++i) path_.line_to(state_.to_page.apply(corners[i]));
  path_.line_to(state_.to_page.apply(corners[0]));
}

void PageReader::clip_next(const Operation &) { clips_ = true; }

void PageReader::end_path(const Operation &) {
  if (clips_) state_.clip = shared_part(path_.outline(), state_.clip);
  if (state_.clip.size() > most_corners) state_.clip = outline_of(*box_round(state_.clip), {});
  clips_ = false;
  path_.clear();
}

void PageReader::note_paint(const Box &box, const Paint &paint) {
  if (!shows() || paint.white) return;
  const auto seen = box_round(shared_part(outline_of(box, {}), state_.clip));
  if (!seen) return;
  use(paint);
  if (beside(*seen, trim_)) return;
  Paints &paints = drawing_.paints;
  if (!paints.any) paints = {true, *seen};
  paints.box = {std::min(paints.box.left, seen->left), std::min(paints.box.bottom, seen->bottom),
                std::max(paints.box.right, seen->right), std::max(paints.box.top, seen->top)};
}

void PageReader::note_line(double width, const Box &box) {
  if (width > widest_line || !shows() || drawing_.lines.size() >= most_lines) return;
  const auto seen = box_round(shared_part(outline_of(grown(box, 0.01), {}), state_.clip));
  if (seen) drawing_.lines.push_back({width, *seen});
}

void PageReader::paint_fill() {
  if (path_.empty()) return;
  if (state_.fill.ink == Ink::pattern) tile(state_.fill.pattern, path_.outline());
  note_paint(*path_.box(), state_.fill);
  const auto thickness = path_.thickness();
  if (thickness && !state_.fill.white) note_line(*thickness, *path_.box());
}

void PageReader::paint_stroke() {
  if (path_.empty()) return;
  const double width = state_.line_width * state_.to_page.scale();
  note_paint(grown(*path_.box(), width / 2), state_.stroke);
  if (!state_.stroke.white) note_line(width, *path_.box());
}

void PageReader::fill_path(const Operation &given) {
  paint_fill();
  end_path(given);
}

void PageReader::stroke_path(const Operation &given) {
  paint_stroke();
  end_path(given);
}

void PageReader::fill_and_stroke(const Operation &given) {
  paint_fill();
  paint_stroke();
  end_path(given);
}

void PageReader::shade(const Operation &) {
  if (const auto box = box_round(state_.clip)) note_paint(*box, {Ink::other, false, {}});
}

/// One cell of a tiling pattern, the one that covers the area's middle, for the pictures in it (ISO 32000-1,
/// 8.7.3).
void PageReader::tile(const Object &pattern, const Outline &area) {
  const auto cell = box_in(pattern["BBox"]);
  const auto around = box_round(shared_part(area, state_.clip));
  if (pattern["PatternType"].whole_or(0, 0, 9) != 1 || !cell || !around || !shows()) return;
  const Matrix map = matrix_of(pattern["Matrix"]) * level_->base;
  if (!map.finite() || std::abs(map.determinant()) < 1e-12) return;
  const Spot inside =
      inverse(map).apply({(around->left + around->right) / 2, (around->bottom + around->top) / 2});
  const auto steps = [](double at, double from, double step) {
    return step == 0 ? 0 : std::floor((at - from) / step) * step;
  };
  const Matrix shift{1,
                     0,
                     0,
                     1,
                     steps(inside.x, cell->left, std::abs(pattern["XStep"].number_or(0))),
                     steps(inside.y, cell->bottom, std::abs(pattern["YStep"].number_or(0)))};
  const Matrix placed = shift * map;
  const bool outer = std::exchange(tiling_, true);
  const Outline clip = shared_part(shared_part(area, state_.clip), outline_of(*cell, placed));
  follow_within(pattern, pattern["Resources"], placed, clip);
  tiling_ = outer;
}

} // namespace stoneproof::finished
