// What was measured in the pixels. The only ways in are tone_part, detail_part and ink_part; tested in
// tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

constexpr Word<JpegPastKind> past_words[] = {{JpegPastKind::none, "none"},
                                             {JpegPastKind::aligned, "aligned"},
                                             {JpegPastKind::moved, "moved"},
                                             {JpegPastKind::was_jpeg, "was-jpeg"}};

Json earlier_part(const JpegPast &past) {
  const bool found = past.kind != JpegPastKind::none;
  const auto or_none = [&](int value) { return found ? Json(value) : Json(nullptr); };
  return {{"found", word_of(certainty_words, past.certainty)},
          {"kind", word_of(past_words, past.kind)},
          {"quality", or_none(past.earlier.quality)},
          {"least", or_none(past.earlier.low)},
          {"most", or_none(past.earlier.high)}};
}

Json printed_part(const PrintedScreen &printed) {
  const bool found = printed.ruling > 0;
  return {{"found", word_of(certainty_words, printed.certainty)},
          {"lines_per_pixel", found && printed.ruling_sure ? Json(printed.ruling) : Json(nullptr)},
          {"angle_degrees", found ? Json(printed.angle) : Json(nullptr)}};
}

} // namespace

Json tone_part(const Shown *shown) {
  if (!shown) return nullptr;
  const Tone &tone = shown->tone;
  Json channels = Json::array();
  for (const ChannelTone &channel : tone.channels)
    channels.push_back(
        {{"clipped_highlights", channel.clipped_highlights}, {"clipped_shadows", channel.clipped_shadows}});
  return {{"white_share", tone.white},
          {"black_share", tone.black},
          {"range", tone.range},
          {"comb", tone.comb},
          {"channels", std::move(channels)}};
}

Json detail_part(const Shown *shown) {
  if (!shown) return nullptr;
  const Upsampling &found = shown->detail.upsampling;
  return {{"known", found.detail.known},
          {"across", found.detail.across},
          {"down", found.detail.down},
          {"enlarged", word_of(certainty_words, found.certainty)},
          {"factor", or_null(found.factor)},
          {"factor_sure", found.factor_sure},
          {"repeated_pixels", found.nearest},
          {"earlier_jpeg", earlier_part(shown->detail.past)},
          {"printed_screen", printed_part(shown->detail.printed)},
          {"screenshot", word_of(certainty_words, shown->detail.screenshot.certainty)}};
}

Json ink_part(const Shown *shown) {
  if (!shown || !shown->ink) return nullptr;
  return {{"most", shown->ink->most},
          {"place_mm", in_mm_or_null(shown->ink_place)},
          {"out_of_gamut_share", or_null(shown->ink->out_of_gamut)}};
}

} // namespace stoneproof::record
