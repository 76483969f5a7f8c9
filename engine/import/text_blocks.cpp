// Runs of text -> lines -> blocks. The only way in is text_blocks; tested in
// tests/engine/import/text_blocks.test.cpp.
#include "engine/import/layout_of.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::finished {

namespace {

/// Runs that make one line, or lines that make one block.
struct Block {
  Box box;                              ///< y downwards: bottom is its upper edge
  double size = 0;                      ///< of the type
  double last_top = 0, last_bottom = 0; ///< of its last line, from the top
  bool level = true;                    ///< its lines run level
  std::string text;
  std::size_t order = 0;
};

bool alike(double one, double other) { return std::abs(one - other) <= 0.02 * std::max(one, other); }

void take_in(Box &box, const Box &other) {
  box = {std::min(box.left, other.left), std::min(box.bottom, other.bottom), std::max(box.right, other.right),
         std::max(box.top, other.top)};
}

/// Whether a run goes on in the line where the block ends: no further from it than two ems.
bool goes_on(const Block &block, const Block &run) {
  const double middle = (run.box.bottom + run.box.top) / 2;
  const bool same_line = middle > block.last_top && middle < block.last_bottom;
  return same_line && run.box.left > block.box.left &&
         run.box.left - block.box.right < 2 * std::max(block.size, run.size);
}

/// Whether a run begins the next line of the block: within twice the leading of usual text, below it.
bool begins_next_line(const Block &block, const Block &run) {
  const double gap = run.box.bottom - block.last_bottom;
  const bool below = gap > -0.6 * block.size && gap < 1.0 * block.size && run.box.top > block.last_bottom;
  return below && alike(block.size, run.size) && run.box.left < block.box.right &&
         run.box.right > block.box.left;
}

void add(Block &block, const Block &run) {
  const bool same_line = goes_on(block, run);
  const bool spaced = block.text.empty() || block.text.back() == ' ' || run.text.front() == ' ';
  const bool apart = run.box.left - block.box.right > 0.12 * block.size;
  if (!same_line || (!spaced && apart)) block.text += ' ';
  block.text += run.text;
  block.size = std::max(block.size, run.size);
  take_in(block.box, run.box);
  if (same_line) {
    block.last_top = std::min(block.last_top, run.box.bottom);
    block.last_bottom = std::max(block.last_bottom, run.box.top);
  } else {
    block.last_top = run.box.bottom;
    block.last_bottom = run.box.top;
  }
}

Block block_of(const ShownText &text, const Matrix &map, std::size_t order) {
  std::vector<Spot> corners;
  for (const Spot &spot : text.outline) corners.push_back(map.apply(spot));
  Block block;
  block.box = box_round(corners).value_or(Box{});
  block.size = text.size * map.scale();
  block.last_top = block.box.bottom;
  block.last_bottom = block.box.top;
  block.level = std::abs(corners[1].y - corners[0].y) < 0.01 * std::abs(corners[1].x - corners[0].x);
  block.text = text.text;
  block.order = order;
  return block;
}

bool all_digits(const std::string &text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

std::string trimmed(const std::string &text) {
  const std::size_t from = text.find_first_not_of(' '), to = text.find_last_not_of(' ');
  return from == std::string::npos ? std::string() : text.substr(from, to - from + 1);
}

} // namespace

std::vector<TextBlock> text_blocks(const PageDrawing &drawing, const Matrix &map, const std::string &label) {
  std::vector<Block> blocks;
  auto text = drawing.texts.begin();
  for (std::size_t order = 0; order < drawing.order.size(); ++order) {
    if (drawing.order[order]) continue;
    const ShownText &shown = *text++;
    if (!shown.seen) continue;
    const Block run = block_of(shown, map, order);
    // Programs write a column line by line: the latest blocks are the likely ones.
    const std::size_t reach = std::min<std::size_t>(blocks.size(), 8);
    const auto found = std::find_if(
        blocks.rbegin(), blocks.rbegin() + static_cast<std::ptrdiff_t>(reach), [&](const Block &block) {
          return run.level && block.level && (goes_on(block, run) || begins_next_line(block, run));
        });
    if (found == blocks.rbegin() + static_cast<std::ptrdiff_t>(reach))
      blocks.push_back(run);
    else
      add(*found, run);
  }
  std::vector<TextBlock> texts;
  for (const Block &block : blocks) {
    TextBlock made;
    made.rect = {Length::of_pt(block.box.left), Length::of_pt(block.box.bottom),
                 Length::of_pt(block.box.width()), Length::of_pt(block.box.height())};
    made.type_size = Length::of_pt(block.size);
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
