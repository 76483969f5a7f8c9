// The drawing of one frame. The only way in is draw_frame; tested in tests/reports/layout.
#include "reports/layout/frame_drawing.h"

#include "reports/layout/clip.h"

namespace stoneproof::layout {

namespace {

using namespace literals;

std::vector<Point> on_sheet(const Corners &corners, const Scale &scale) {
  std::vector<Point> mapped;
  for (const Point &corner : corners) mapped.push_back(scale(corner));
  return mapped;
}

/// Where the corners of the small copy lie, given where the whole picture's corners lie.
Corners copy_corners(const Corners &picture, const PixelRect &part, PixelSize size) {
  const auto at = [&](double x, double y) {
    const double across = x / static_cast<double>(size.width), down = y / static_cast<double>(size.height);
    return Point{picture[0].x + (picture[1].x - picture[0].x) * across + (picture[3].x - picture[0].x) * down,
                 picture[0].y + (picture[1].y - picture[0].y) * across +
                     (picture[3].y - picture[0].y) * down};
  };
  return {at(part.x, part.y), at(part.x + part.width, part.y), at(part.x + part.width, part.y + part.height),
          at(part.x, part.y + part.height)};
}

/// A frame that has nothing to show: crossed out, with the reason inside where there is room.
void draw_gap(Canvas &canvas, const std::vector<Point> &corners, const Rect &box, std::string_view reason) {
  canvas.shape(corners, style::gap_fill, style::hair);
  if (corners.size() == 4) {
    canvas.line(corners[0], corners[2], style::hair);
    canvas.line(corners[1], corners[3], style::hair);
  }
  const Length wide = canvas.width(style::label, reason) + 2_mm;
  if (wide > box.width || style::label.leading > box.height)
    return; // the cross and the mark beside it say enough
  const Point centre = box.centre();
  const Length top = centre.y - style::label.leading / 2;
  canvas.box({centre.x - wide / 2, top, wide, style::label.leading}, style::gap_fill, std::nullopt);
  canvas.text_centred({centre.x, top}, style::label, reason);
}

std::string_view gap_reason(const Evidence &evidence, const PlacedFrame &placed) {
  if (!placed.picture) return "no picture";
  return evidence.pictures[*placed.picture].missing ? "file is missing" : "file cannot be read";
}

} // namespace

void draw_frame(Canvas &canvas, const Checked &checked, const ImageOf &images, const PlacedFrame &placed,
                const Rect &room, const Scale &scale) {
  const Evidence &evidence = checked.evidence;
  const Rect edge = scale(room);
  const std::vector<Point> clip = clipped(on_sheet(placed.corners, scale), edge);
  if (clip.empty()) return;
  const auto image = placed.picture ? images[*placed.picture] : std::nullopt;
  if (!placed.laid || !image) {
    const auto box = shared_part(scale(placed.box), edge);
    draw_gap(canvas, clip, *box, gap_reason(evidence, placed));
    return;
  }
  Corners corners = copy_corners(placed.picture_corners, checked.copies[*placed.picture]->part,
                                 evidence.pictures[*placed.picture].facts->size);
  for (Point &corner : corners) corner = scale(corner);
  canvas.page().items.emplace_back(
      PictureItem{*image, corners, clip, evidence.book.pictures[*placed.picture].file});
}

} // namespace stoneproof::layout
