// Rows of a JPEG, reduced in eighths while they are decoded. Only way in: jpeg_rows.
// Tested in tests/engine/picture/preview.test.cpp.
#include "engine/picture/bounded_rows.h"
#include "engine/picture/faults.h"
#include "engine/picture/formats.h"
#include "engine/picture/jpeg_session.h"

#include <algorithm>
#include <utility>

namespace stoneproof {

namespace {

// The smallest eighth that leaves the part no smaller than the order asks for.
unsigned eighths_for(const RowOrder &order) {
  unsigned eighths = 1;
  while (eighths < 8 &&
         (order.width * eighths < order.least_width * 8 || order.height * eighths < order.least_height * 8))
    ++eighths;
  return eighths;
}

// libjpeg smooths chroma across its blocks; this many pixels more on each side keep the part free of cut
// edges.
constexpr std::int64_t margin = 16;

// The bytes that libjpeg must hold at a time: all coefficients (two bytes each) where the picture comes in
// several scans, else next to nothing.
std::uint64_t held_bytes(jpeg_decompress_struct &state) {
  if (!jpeg_has_multiple_scans(&state)) return 0;
  std::uint64_t blocks = 0;
  for (int i = 0; i < state.num_components; ++i)
    blocks += std::uint64_t{state.comp_info[i].width_in_blocks} * state.comp_info[i].height_in_blocks;
  return blocks * DCTSIZE2 * sizeof(JCOEF);
}

struct Span {
  std::int64_t first, count;
};

// The pixels of one axis to decode, in scaled pixels.
Span scaled_span(std::int64_t first, std::int64_t count, unsigned eighths, std::int64_t whole) {
  const std::int64_t begin = std::max<std::int64_t>(0, first * eighths / 8 - margin);
  const std::int64_t end = std::min(whole, ((first + count) * eighths + 7) / 8 + margin);
  return {begin, end - begin};
}

class JpegRows final : public RowSource {
public:
  JpegRows(PictureFile file, const PictureLimits &limits)
      : file_(std::move(file)), session_(file_, limits.most_time) {}

  std::optional<Fault> start(const RowOrder &order, const PictureLimits &limits);
  Outcome<std::span<const std::uint8_t>> next() override;

private:
  bool read_header(unsigned eighths);
  void describe(unsigned eighths);
  void lay_out(const RowOrder &order, unsigned eighths);
  bool begin();
  Fault failure() const {
    if (const auto kind = session_.obstacle()) return faults::not_decoded(file_.path(), "JPEG", *kind);
    return faults::damaged(file_.path(), "JPEG",
                           session_.is_damaged() ? session_.damage() : session_.error());
  }

  PictureFile file_;
  JpegSession session_;
  std::vector<std::uint8_t> row_;
  MemoryBudget::Hold hold_;
};

bool JpegRows::read_header(unsigned eighths) {
  return session_.run([=](j_decompress_ptr state) {
    jpeg_save_markers(state, JPEG_APP0 + 2, 0xFFFF); // the ICC profile
    jpeg_read_header(state, TRUE);
    state->scale_num = eighths;
    state->scale_denom = 8;
    if (state->jpeg_color_space == JCS_YCbCr) state->out_color_space = JCS_RGB;
    if (state->jpeg_color_space == JCS_YCCK) state->out_color_space = JCS_CMYK;
    jpeg_calc_output_dimensions(state);
  });
}

void JpegRows::describe(unsigned eighths) {
  const auto &state = session_.state();
  layout_.stored = {state.image_width, state.image_height};
  layout_.scale = eighths / 8.0;
  layout_.channels = state.output_components;
  layout_.colour = state.out_color_space == JCS_GRAYSCALE ? ColourModel::gray
                   : state.out_color_space == JCS_CMYK    ? ColourModel::cmyk
                                                          : ColourModel::rgb;
  // The Adobe marker stands for inks written the wrong way round (libjpeg.txt, "Special color spaces").
  layout_.inverted = layout_.colour == ColourModel::cmyk && state.saw_Adobe_marker;
}

void JpegRows::lay_out(const RowOrder &order, unsigned eighths) {
  const auto &state = session_.state();
  const Span columns = scaled_span(order.x, order.width, eighths, state.output_width);
  const Span rows = scaled_span(order.y, order.height, eighths, state.output_height);
  layout_.x = columns.first, layout_.width = columns.count;
  layout_.y = rows.first, layout_.height = rows.count;
}

// libjpeg cuts columns at whole blocks, so that the rows may begin before the part, and end after it.
bool JpegRows::begin() {
  auto first = static_cast<JDIMENSION>(layout_.x), count = static_cast<JDIMENSION>(layout_.width);
  const auto above = static_cast<JDIMENSION>(layout_.y);
  auto *x = &first, *width = &count;
  const bool sound = session_.run([=](j_decompress_ptr state) {
    jpeg_start_decompress(state);
    if (*width < state->output_width) jpeg_crop_scanline(state, x, width);
    if (above > 0) jpeg_skip_scanlines(state, above);
  });
  layout_.x = first;
  layout_.width = session_.state().output_width;
  row_.resize(static_cast<std::size_t>(layout_.width) * static_cast<std::size_t>(layout_.channels));
  return sound;
}

std::optional<Fault> JpegRows::start(const RowOrder &order, const PictureLimits &limits) {
  const unsigned eighths = eighths_for(order);
  const std::string_view format = "JPEG";
  if (!read_header(eighths)) {
    if (const auto kind = session_.obstacle()) return faults::not_decoded(file_.path(), format, *kind);
    return faults::broken_header(file_.path(), format, session_.error());
  }
  const auto &state = session_.state();
  const PixelSize stored{state.image_width, state.image_height};
  if (!faults::within(stored, limits)) return faults::too_many_pixels(file_.path(), stored, limits);
  if (state.out_color_space == JCS_UNKNOWN)
    return faults::not_decoded(file_.path(), format, "an unknown colour model");
  if (order.x + order.width > stored.width || order.y + order.height > stored.height)
    return faults::changed(file_.path());
  const std::uint64_t needed = held_bytes(session_.state());
  if (needed > limits.most_memory) return faults::too_much_memory(file_.path(), needed, limits);
  hold_ = MemoryBudget::take(limits.budget, needed);
  session_.start_clock(limits.most_time);
  layout_.icc = session_.icc();
  describe(eighths);
  lay_out(order, eighths);
  // A picture in several scans is decoded whole at its beginning.
  if (auto fault = over_expanded(layout_, file_.path(), file_.size(), limits)) return fault;
  if (!begin()) return failure();
  return std::nullopt;
}

Outcome<std::span<const std::uint8_t>> JpegRows::next() {
  JSAMPROW row = row_.data();
  const bool sound = session_.run([row](j_decompress_ptr state) {
    JSAMPROW to = row;
    jpeg_read_scanlines(state, &to, 1);
    // Past the last row the file must still end as a JPEG does; a cut there is found now.
    if (state->output_scanline == state->output_height) jpeg_finish_decompress(state);
  });
  if (!sound || session_.is_damaged()) return failure();
  return std::span<const std::uint8_t>(row_);
}

} // namespace

Outcome<Rows> jpeg_rows(PictureFile file, const RowOrder &order, const PictureLimits &limits) {
  auto rows = std::make_unique<JpegRows>(std::move(file), limits);
  if (auto fault = rows->start(order, limits)) return *fault;
  return Rows(std::move(rows));
}

} // namespace stoneproof
