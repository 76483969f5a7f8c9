// Runs of text -> lines -> blocks. The only way in is text_blocks; tested in
// tests/engine/import/layout_of.test.cpp.
#include "engine/import/layout_of.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::finished {

namespace {

/// One run of text as it lies on the page, y downwards.
struct Run {
  Outline corners;  ///< the first two along the foot of its letters, in the direction of reading
  Spot along{1, 0}; ///< of that direction, of length 1
  double size = 0;  ///< of the type
  std::string text;
  std::size_t order = 0;
};

/// Runs that make one line, or lines that make one block, in one direction.
struct Block {
  Spot along;                           ///< the direction of its lines, of length 1
  Box box;                              ///< on the page, y downwards: bottom is its upper edge
  Box turned;                           ///< round it when its lines are turned level, y downwards
  double last_top = 0, last_bottom = 0; ///< of its last line, turned likewise
  double size = 0;                      ///< of the type
  std::string text;
  std::size_t order = 0;
};

bool alike(double one, double other) { return std::abs(one - other) <= 0.02 * std::max(one, other); }

void take_in(Box &box, const Box &other) {
  box = {std::min(box.left, other.left), std::min(box.bottom, other.bottom), std::max(box.right, other.right),
         std::max(box.top, other.top)};
}

/// A slope below which a line runs level, or upright, for who looks at it, and two lines in one direction.
constexpr double least_slope = 0.01;

/// The direction from one place to another; what is nearly level or upright is made so.
Spot direction(Spot from, Spot to) {
  const double x = to.x - from.x, y = to.y - from.y, length = std::hypot(x, y);
  if (!(length > 0)) return {1, 0};
  if (std::abs(y) < least_slope * std::abs(x)) return {x < 0 ? -1.0 : 1.0, 0};
  if (std::abs(x) < least_slope * std::abs(y)) return {0, y < 0 ? -1.0 : 1.0};
  return {x / length, y / length};
}

bool one_way(Spot one, Spot other) {
  return one.x * other.x + one.y * other.y > 0 && std::abs(one.x * other.y - one.y * other.x) < least_slope;
}

/// The box round a run when lines of this direction are turned level.
Box turned_level(const Run &run, Spot along) {
  const Matrix level{along.x, -along.y, along.y, along.x, 0, 0};
  Outline corners;
  for (const Spot &spot : run.corners) corners.push_back(level.apply(spot));
  return box_round(corners).value_or(Box{});
}

/// Whether a run, turned level, goes on in the line where the block ends: no further from it than two ems.
bool goes_on(const Block &block, const Box &run, double size) {
  const double middle = (run.bottom + run.top) / 2;
  const bool same_line = middle > block.last_top && middle < block.last_bottom;
  return same_line && run.left > block.turned.left &&
         run.left - block.turned.right < 2 * std::max(block.size, size);
}

/// Whether it begins the next line of the block: within twice the leading of usual text, below it.
bool begins_next_line(const Block &block, const Box &run, double size) {
  const double gap = run.bottom - block.last_bottom;
  const bool below = gap > -0.6 * block.size && gap < 1.0 * block.size && run.top > block.last_bottom;
  return below && alike(block.size, size) && run.left < block.turned.right && run.right > block.turned.left;
}

bool takes(const Block &block, const Run &run) {
  if (!one_way(block.along, run.along)) return false;
  const Box level = turned_level(run, block.along);
  return goes_on(block, level, run.size) || begins_next_line(block, level, run.size);
}

void add(Block &block, const Run &run) {
  const Box level = turned_level(run, block.along);
  const bool same_line = goes_on(block, level, run.size);
  const bool spaced = block.text.empty() || block.text.back() == ' ' || run.text.front() == ' ';
  const bool apart = level.left - block.turned.right > 0.12 * block.size;
  if (!same_line || (!spaced && apart)) block.text += ' ';
  block.text += run.text;
  block.size = std::max(block.size, run.size);
  take_in(block.box, box_round(run.corners).value_or(Box{}));
  take_in(block.turned, level);
  block.last_top = same_line ? std::min(block.last_top, level.bottom) : level.bottom;
  block.last_bottom = same_line ? std::max(block.last_bottom, level.top) : level.top;
}

Run run_of(const ShownText &text, const Matrix &map, std::size_t order) {
  Run run;
  for (const Spot &spot : text.outline) run.corners.push_back(map.apply(spot));
  run.along = direction(run.corners[0], run.corners[1]);
  run.size = text.size * map.scale();
  run.text = text.text;
  run.order = order;
  return run;
}

Block block_of(const Run &run) {
  const Box level = turned_level(run, run.along);
  const Box box = box_round(run.corners).value_or(Box{});
  return {run.along, box, level, level.bottom, level.top, run.size, run.text, run.order};
}

/// Type sizes are whole or halved points: to a thousandth of one.
Length type_size_of(double points) { return Length::of_pt(std::round(points * 1000) / 1000); }

/// Whether all of a box lies outside another.
bool beyond(const Box &box, const Box &other) {
  return box.right <= other.left || box.left >= other.right || box.top <= other.bottom ||
         box.bottom >= other.top;
}

bool all_digits(const std::string &text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::string trimmed(const std::string &text) {
  const std::size_t from = text.find_first_not_of(' '), to = text.find_last_not_of(' ');
  return from == std::string::npos ? std::string() : text.substr(from, to - from + 1);
}

/// The seen runs of a page, put together.
std::vector<Block> blocks_of(const PageDrawing &drawing, const Matrix &map) {
  std::vector<Block> blocks;
  auto text = drawing.texts.begin();
  for (std::size_t order = 0; order < drawing.order.size(); ++order) {
    if (drawing.order[order]) continue;
    const ShownText &shown = *text++;
    if (!shown.seen) continue;
    const Run run = run_of(shown, map, order);
    // Programs write a column line by line: the latest blocks are the likely ones.
    const std::size_t reach = std::min<std::size_t>(blocks.size(), 8);
    const auto end = blocks.rbegin() + static_cast<std::ptrdiff_t>(reach);
    const auto found =
        std::find_if(blocks.rbegin(), end, [&](const Block &block) { return takes(block, run); });
    if (found == end)
      blocks.push_back(block_of(run));
    else
      add(*found, run);
  }
  return blocks;
}

} // namespace

std::vector<TextBlock> text_blocks(const PageDrawing &drawing, const Matrix &map, const Box &printed,
                                   const std::string &label) {
  std::vector<TextBlock> texts;
  for (const Block &block : blocks_of(drawing, map)) {
    if (beyond(block.box, printed)) continue;
    TextBlock made;
    made.rect = {micrometres_of(block.box.left), micrometres_of(block.box.bottom),
                 micrometres_of(block.box.width()), micrometres_of(block.box.height())};
    made.type_size = type_size_of(block.size);
    made.text = trimmed(block.text);
    made.order = block.order;
    if (made.text == label || (all_digits(made.text) && made.text.size() <= 4))
      made.kind = TextKind::page_number;
    const Box &box = block.box;
    const bool near = box.left > -largest_page && box.bottom > -largest_page && box.right < largest_page &&
                      box.top < largest_page && block.size < largest_page;
    if (near && made.rect.width > Length() && made.rect.height > Length() && made.type_size > Length())
      texts.push_back(std::move(made));
  }
  return texts;
}

} // namespace stoneproof::finished
