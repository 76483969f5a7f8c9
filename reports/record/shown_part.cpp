// What was measured in the pixels. The only ways in are tone_part, detail_part and ink_part; tested in
// tests/reports/record.
#include "reports/record/parts.h"

namespace stoneproof::record {

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
  return {{"known", found.detail.known},     {"across", found.detail.across},
          {"down", found.detail.down},       {"enlarged", word_of(certainty_words, found.certainty)},
          {"factor", or_null(found.factor)}, {"factor_sure", found.factor_sure},
          {"repeated_pixels", found.nearest}};
}

Json ink_part(const Shown *shown) {
  if (!shown || !shown->ink) return nullptr;
  return {{"most", shown->ink->most},
          {"place_mm", in_mm_or_null(shown->ink_place)},
          {"out_of_gamut_share", or_null(shown->ink->out_of_gamut)}};
}

} // namespace stoneproof::record
