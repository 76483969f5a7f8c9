// Judging the traces of earlier JPEGs. The only way in is jpeg_past; tested in
// tests/engine/measure/jpeg_past.test.cpp, scored by tests/bench/detail/history.cpp.
#include "engine/measure/jpeg_past.h"

namespace stoneproof {

namespace {

/// From where a trace is a hint, and from where it is proof. Set on the half of the photographs that scores
/// nothing (tests/bench/detail/history.sh).
struct Bounds {
  double hint, firm;
};
/// Of likelihoods: single-saved pictures reach 34; all but one of those saved twice exceed 180.
constexpr Bounds aligned_bounds{45, 80};
/// Of contrasts: single-saved pictures reach 10, but 15 at places in line with the present grid, half of
/// which is quantized with it.
constexpr Bounds moved_bounds{10.5, 12}, in_line_bounds{17, 20};
/// Of contrasts: never-compressed pictures reach 11, those enlarged eightfold or by repeated pixels.
constexpr Bounds was_bounds{11.5, 13};

Certainty certainty_of(double value, Bounds bounds) {
  if (value >= bounds.firm) return Certainty::firm;
  return value >= bounds.hint ? Certainty::hint : Certainty::no;
}

JpegPast told(Certainty certainty, JpegPastKind kind, const EarlierQuality &earlier, int x = 0, int y = 0) {
  if (certainty == Certainty::no) return {certainty, JpegPastKind::none, {}, 0, 0};
  return {certainty, kind, earlier, x, y};
}

Bounds bounds_of(const JpegTrace &trace, bool present) {
  if (!present) return was_bounds;
  return trace.shift_x == 0 || trace.shift_y == 0 ? in_line_bounds : moved_bounds;
}

} // namespace

JpegPast jpeg_past(const std::vector<Tile> &tiles, const std::optional<QuantTable> &present) {
  JpegPast by_histogram;
  if (present)
    if (const auto before = jpeg_before(tiles, *present))
      by_histogram =
          told(certainty_of(before->likelihood, aligned_bounds), JpegPastKind::aligned, before->earlier);

  const auto trace = jpeg_trace(tiles, {present});
  if (!trace) return by_histogram.kind == JpegPastKind::none ? JpegPast{} : by_histogram;
  const JpegPast by_lattice = told(certainty_of(trace->contrast, bounds_of(*trace, present.has_value())),
                                   present ? JpegPastKind::moved : JpegPastKind::was_jpeg, trace->earlier,
                                   trace->shift_x, trace->shift_y);
  if (by_lattice.certainty != by_histogram.certainty)
    return by_lattice.certainty < by_histogram.certainty ? by_histogram : by_lattice;
  // Each leaves a shadow in the other's trace; the shadow's steps are the finer ones.
  const bool finer = by_lattice.earlier.quality >= by_histogram.earlier.quality;
  return by_histogram.kind != JpegPastKind::none && finer ? by_histogram : by_lattice;
}

} // namespace stoneproof
