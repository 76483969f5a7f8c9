// One frame of the record. The only way in is frame_part; tested in tests/reports/record.
#include "reports/record/parts.h"

#include "engine/rules/detail.h"

namespace stoneproof::record {

namespace {

struct FitWord {
  std::string_view operator()(const Fill &) const { return "fill"; }
  std::string_view operator()(const Inside &) const { return "inside"; }
  std::string_view operator()(const CropShare &) const { return "crop"; }
  std::string_view operator()(const CropPixels &) const { return "crop"; }
  std::string_view operator()(const PictureAt &) const { return "picture-at"; }
};

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

/// How many times larger than the original the picture is printed; null where the original's size is not
/// told.
Json enlargement_of(const Evidence &evidence, const PlacedFrame &placed) {
  if (!placed.laid) return nullptr;
  const auto &original = evidence.book.pictures[*placed.picture].original;
  const auto enlarged =
      original ? enlargement(*placed.laid, *original, evidence.pictures[*placed.picture].facts->size)
               : std::nullopt;
  return enlarged ? Json{{"x", enlarged->x}, {"y", enlarged->y}} : Json(nullptr);
}

Json reach_of(const Reach &reach) {
  return {{"top", reach.top.mm()},
          {"bottom", reach.bottom.mm()},
          {"left", reach.left.mm()},
          {"right", reach.right.mm()}};
}

} // namespace

Json frame_part(const Evidence &evidence, std::size_t index) {
  const PlacedFrame &placed = evidence.frames[index];
  const Frame &frame = evidence.frame_of(placed);
  const Page &page = evidence.page_of(placed);
  Json part = {
      {"id", frame.id},
      {"page", page.number},
      {"spread", page.kind == PageKind::spread},
      {"picture", id_or_null(evidence.book.pictures, placed.picture)},
      {"frame_mm", in_mm(frame.rect)},
      {"turn_degrees", frame.turn.degrees},
      {"mirror", word_of(mirror_words, frame.mirror)},
      {"fit", std::visit(FitWord{}, frame.fit)},
      {"across_gutter", frame.across_gutter},
  };
  part["reach_past_trim_mm"] = reach_of(reach_past(placed.box, evidence.space_of(placed).trim));
  add_print(part, placed);
  part["enlargement"] = enlargement_of(evidence, placed);
  const Shown *shown = evidence.shown_at(index);
  if (shown && placed.laid && shown->detail.upsampling.detail.known)
    part["true_ppi"] = true_density(placed, *shown).ppi();
  part["true_detail"] = detail_part(shown);
  part["tone"] = tone_part(shown);
  part["ink"] = ink_part(shown);
  return part;
}

} // namespace stoneproof::record
