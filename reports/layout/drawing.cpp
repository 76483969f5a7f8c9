// The drawing of a book page. The only ways in are the functions of drawing.h; tested in
// tests/reports/layout.
#include "reports/layout/drawing.h"

#include <algorithm>

namespace stoneproof::layout {

namespace {

using namespace literals;

constexpr Size drawing_room{style::sheet.width - style::margin * 2 - style::column_least - style::leader_room,
                            style::sheet.height - style::head - style::foot};

TypeStyle type_of(const TextBlock &text, double factor) {
  const bool strong = text.kind == TextKind::heading, slanted = text.kind == TextKind::caption;
  const Length size = text.type_size * factor;
  return {strong ? Face::text_bold : slanted ? Face::text_italic : Face::text, size, size * 1.2, style::dark};
}

/// Lines that no longer fit the block end in an ellipsis, and type higher than the block is drawn smaller, so
/// that nothing is drawn over what lies around it.
void draw_text(Canvas &canvas, const TextBlock &text, const Scale &scale) {
  const Rect box = scale(text.rect);
  const TypeStyle type = type_of(text, scale.factor * std::min(1.0, text.rect.height / text.type_size));
  const auto room = static_cast<std::size_t>(std::max(1.0, box.height / type.leading + 0.25));
  canvas.lines({box.x, box.y}, type, canvas.wrap_at_most(type, box.width, text.text, room));
}

/// A line in the middle of its block, running down it.
void draw_spine_text(Canvas &canvas, const TextBlock &text, const Scale &scale) {
  const Rect box = scale(text.rect);
  const TypeStyle type = type_of(text, scale.factor * std::min(1.0, text.rect.width / text.type_size));
  const std::string line = canvas.shortened(type, box.height, text.text);
  canvas.text_down(box.centre(), type, line);
}

/// What the knife takes away lies under a white veil.
void draw_veil(Canvas &canvas, const Rect &trim, const Rect &bleed) {
  const auto veil = [&](Length left, Length top, Length right, Length bottom) {
    if (right > left && bottom > top)
      canvas.box({left, top, right - left, bottom - top}, style::white, std::nullopt, 0.6);
  };
  veil(bleed.left(), bleed.top(), bleed.right(), trim.top());
  veil(bleed.left(), trim.bottom(), bleed.right(), bleed.bottom());
  veil(bleed.left(), trim.top(), trim.left(), trim.bottom());
  veil(trim.right(), trim.top(), bleed.right(), trim.bottom());
}

void draw_crop_marks(Canvas &canvas, const Rect &trim, const Rect &bleed) {
  const Length off = 1_mm, long_ = 3_mm;
  for (const Length x : {trim.left(), trim.right()}) {
    canvas.line({x, bleed.top() - off - long_}, {x, bleed.top() - off}, style::hair);
    canvas.line({x, bleed.bottom() + off}, {x, bleed.bottom() + off + long_}, style::hair);
  }
  for (const Length y : {trim.top(), trim.bottom()}) {
    canvas.line({bleed.left() - off - long_, y}, {bleed.left() - off, y}, style::hair);
    canvas.line({bleed.right() + off, y}, {bleed.right() + off + long_, y}, style::hair);
  }
}

/// A line with a white edge, so that it shows on dark pictures too.
void draw_cased(Canvas &canvas, Point from, Point to, const Stroke &stroke) {
  canvas.line(from, to, style::casing);
  canvas.line(from, to, stroke);
}

/// What the binding swallows, on either side of the fold or at the bound side.
std::optional<Rect> swallowed_strip(const PageSpace &space) {
  const Length loss = space.gutter_loss, height = space.trim.height;
  if (loss <= Length{} || (!space.fold && !space.bound)) return std::nullopt;
  if (space.fold) return Rect{*space.fold - loss, {}, loss * 2, height};
  return Rect{space.bound == PageSide::left ? Length{} : space.trim.right() - loss, {}, loss, height};
}

/// Slanting lines across a box.
void draw_hatching(Canvas &canvas, const Rect &box) {
  for (Length y = box.top() - box.width; y < box.bottom(); y += style::hatch_gap) {
    const Length begin = std::max(y, box.top()), end = std::min(y + box.width, box.bottom());
    if (begin < end)
      canvas.line({box.left() + (begin - y), begin}, {box.left() + (end - y), end}, style::hatch_line);
  }
}

void draw_binding(Canvas &canvas, const PageSpace &space, const Scale &scale) {
  const auto upright = [&](Length x, const Stroke &stroke) {
    draw_cased(canvas, scale(Point{x, space.trim.top()}), scale(Point{x, space.trim.bottom()}), stroke);
  };
  if (const auto strip = swallowed_strip(space)) {
    draw_hatching(canvas, scale(*strip));
    if (space.bound != PageSide::left) upright(strip->left(), style::gutter_line);
    if (space.bound != PageSide::right) upright(strip->right(), style::gutter_line);
  }
  if (space.fold) upright(*space.fold, style::trim_line);
}

/// The cover's folds stand out at head and tail, where no picture hides them.
void draw_cover_folds(Canvas &canvas, const Cover &cover, const PageSpace &space, const Scale &scale) {
  for (const Length x : cover_folds(cover))
    draw_cased(canvas, scale(Point{x, space.trim.top()}), scale(Point{x, space.trim.bottom()}),
               style::gutter_line);
}

void draw_outline(Canvas &canvas, const Rect &rect, const Stroke &stroke) {
  canvas.box(rect, std::nullopt, style::casing);
  canvas.box(rect, std::nullopt, stroke);
}

void draw_edges(Canvas &canvas, const PageSpace &space, const Scale &scale) {
  const Rect trim = scale(space.trim), bleed = scale(space.bleed);
  draw_veil(canvas, trim, bleed);
  draw_outline(canvas, bleed, style::bleed_line);
  if (space.safe.width > Length{} && space.safe.height > Length{})
    draw_outline(canvas, scale(space.safe), style::safe_line);
  draw_binding(canvas, space, scale);
  draw_outline(canvas, trim, style::trim_line);
  draw_crop_marks(canvas, trim, bleed);
}

} // namespace

double scale_factor(const PageSpace &space) {
  const double across = (drawing_room.width - style::slug * 2) / space.bleed.width;
  const double down = (drawing_room.height - style::slug * 2) / space.bleed.height;
  return std::min({across, down, style::largest_scale});
}

Scale scale_on_sheet(const PageSpace &space) {
  const double factor = scale_factor(space);
  const Point corner{style::margin + style::slug, style::head + style::slug};
  return {factor, {corner.x - space.bleed.x * factor, corner.y - space.bleed.y * factor}};
}

Rect drawing_box(const PageSpace &space, const Scale &scale) { return scale(space.bleed).grown(style::slug); }

void draw_book_page(Canvas &canvas, const Checked &checked, const ImageOf &images, std::size_t page,
                    std::size_t first, const Scale &scale, bool own_page) {
  const Evidence &evidence = checked.evidence;
  const PageSpace &space = evidence.spaces[page];
  const Page &content = evidence.book.pages[page];
  canvas.box(scale(space.bleed), style::white, std::nullopt);
  for (std::size_t i = 0; i < content.frames.size(); ++i)
    draw_frame(canvas, checked, images, evidence.frames[first + i], space.bleed, scale);
  for (const TextBlock &text : content.texts)
    if (!own_page && shared_part(text.rect, space.bleed)) {
      const bool down = text.kind == TextKind::spine && text.rect.height > text.rect.width;
      down ? draw_spine_text(canvas, text, scale) : draw_text(canvas, text, scale);
    }
  if (own_page) // over what was drawn of it, which stays where the page itself cannot be had
    canvas.page().items.push_back(OwnPageItem{page, scale(Point{}), scale.factor, scale(space.bleed)});
  if (content.kind == PageKind::cover && evidence.book.cover)
    draw_cover_folds(canvas, *evidence.book.cover, space, scale);
  draw_edges(canvas, space, scale);
  canvas.page().trim = scale(space.trim);
  canvas.page().bleed = scale(space.bleed);
}

LeaderRoom leader_room(const Evidence &evidence, std::size_t page, std::size_t first, const Scale &scale) {
  const Rect &bleed = evidence.spaces[page].bleed;
  const Page &content = evidence.book.pages[page];
  LeaderRoom room{scale(bleed), {}, {}};
  for (std::size_t i = 0; i < content.frames.size(); ++i)
    if (const auto shown = shared_part(evidence.frames[first + i].box, bleed))
      room.pictures.push_back(scale(*shown));
  for (const TextBlock &text : content.texts)
    if (const auto shown = shared_part(text.rect, bleed)) room.texts.push_back(scale(*shown));
  return room;
}

} // namespace stoneproof::layout
