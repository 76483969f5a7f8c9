// One frame of the record. The only way in is frame_part; tested in tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

struct FitWord {
  std::string_view operator()(const Fill &) const { return "fill"; }
  std::string_view operator()(const Inside &) const { return "inside"; }
  std::string_view operator()(const CropShare &) const { return "crop"; }
  std::string_view operator()(const CropPixels &) const { return "crop"; }
  std::string_view operator()(const PictureAt &) const { return "picture-at"; }
};

Json in_px(const PixelRect &rect) {
  return {{"x", rect.x}, {"y", rect.y}, {"width", rect.width}, {"height", rect.height}};
}

/// What is printed of the picture; every key is there, and null where nothing of it shows or its size is
/// unknown.
void add_print(Json &part, const PlacedFrame &placed) {
  const Laid *laid = placed.laid && placed.laid->visible ? &*placed.laid : nullptr;
  const auto known = [&](const char *key, auto value_of) {
    part[key] = laid ? Json(value_of(*laid)) : Json(nullptr);
  };
  known("placed_width_mm", [](const Laid &l) { return l.visible->width.mm(); });
  known("placed_height_mm", [](const Laid &l) { return l.visible->height.mm(); });
  known("crop_px", [](const Laid &l) { return in_px(l.shown); });
  known("density_x_ppi", [](const Laid &l) { return l.density_x.ppi(); });
  known("density_y_ppi", [](const Laid &l) { return l.density_y.ppi(); });
  known("effective_ppi", [](const Laid &l) { return l.effective().ppi(); });
  part["true_ppi"] = nullptr;
  known("cut_share", [&](const Laid &) { return placed.cut_share; });
  known("uncovered_share", [&](const Laid &) { return placed.uncovered_share; });
}

} // namespace

Json frame_part(const Evidence &evidence, const PlacedFrame &placed) {
  const Frame &frame = evidence.frame_of(placed);
  const Page &page = evidence.page_of(placed);
  Json part = {
      {"id", frame.id},
      {"page", page.number},
      {"spread", page.spread},
      {"picture", id_or_null(evidence.book.pictures, placed.picture)},
      {"frame_mm", in_mm(frame.rect)},
      {"turn_degrees", frame.turn.degrees},
      {"mirror", word_of(mirror_words, frame.mirror)},
      {"fit", std::visit(FitWord{}, frame.fit)},
      {"across_gutter", frame.across_gutter},
  };
  add_print(part, placed);
  return part;
}

} // namespace stoneproof::record
