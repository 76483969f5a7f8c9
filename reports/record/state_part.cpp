// What is known of one picture file. The only way in is add_state; tested in tests/reports/record.
#include "engine/measure/jpeg_quality.h"
#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

Json ppi_or_null(const std::optional<Density> &density) {
  return density ? Json(density->ppi()) : Json(nullptr);
}

Json jpeg_part(const std::optional<JpegFacts> &jpeg) {
  if (!jpeg) return nullptr;
  const auto saved = jpeg_quality(*jpeg);
  return {{"quality", saved ? Json(saved->quality) : Json(nullptr)},
          {"exact", saved ? Json(saved->exact) : Json(nullptr)},
          {"error", saved ? Json(saved->error) : Json(nullptr)},
          {"subsampling", jpeg->subsampling.empty() ? Json(nullptr) : Json(jpeg->subsampling)}};
}

/// What the file says of itself; every key is there, and null where the header could not be read.
void add_facts(Json &part, const std::optional<Facts> &facts) {
  const auto told = [&](const char *key, auto value_of) {
    part[key] = facts ? Json(value_of(*facts)) : Json(nullptr);
  };
  told("bytes", [](const Facts &f) { return f.bytes; });
  told("format", [](const Facts &f) { return word_of(format_words, f.format); });
  told("width_px", [](const Facts &f) { return f.size.width; });
  told("height_px", [](const Facts &f) { return f.size.height; });
  told("orientation", [](const Facts &f) { return f.orientation; });
  told("stored_ppi_x", [](const Facts &f) { return ppi_or_null(f.stored_x); });
  told("stored_ppi_y", [](const Facts &f) { return ppi_or_null(f.stored_y); });
  told("colour", [](const Facts &f) { return word_of(colour_words, f.colour); });
  told("bits", [](const Facts &f) { return f.bits; });
  told("channels", [](const Facts &f) { return f.channels; });
  told("alpha", [](const Facts &f) { return f.alpha; });
  told("icc", [](const Facts &f) { return f.tag == ColourTag::profile; });
  told("colour_tag", [](const Facts &f) { return word_of(tag_words, f.tag); });
  told("compression", [](const Facts &f) { return f.compression; });
  told("pages", [](const Facts &f) { return f.pages; });
}

constexpr Word<ProfileSpace> space_words[] = {{ProfileSpace::gray, "gray"},
                                              {ProfileSpace::rgb, "rgb"},
                                              {ProfileSpace::cmyk, "cmyk"},
                                              {ProfileSpace::lab, "lab"},
                                              {ProfileSpace::other, "other"}};
constexpr Word<ProfileClass> class_words[] = {{ProfileClass::input, "input"},
                                              {ProfileClass::display, "display"},
                                              {ProfileClass::output, "output"},
                                              {ProfileClass::colour_space, "colour-space"},
                                              {ProfileClass::other, "other"}};

Json profile_part(const std::optional<ProfileFacts> &profile) {
  if (!profile) return nullptr;
  return {{"description", profile->description.empty() ? Json(nullptr) : Json(profile->description)},
          {"space", word_of(space_words, profile->space)},
          {"made_for", word_of(class_words, profile->made_for)},
          {"broken", profile->broken},
          {"wide_gamut", profile->wide_gamut}};
}

Json bed_part(const std::optional<Bed> &bed) {
  if (!bed) return nullptr;
  const bool found = bed->certainty == Certainty::firm || bed->certainty == Certainty::hint;
  return {{"found", word_of(certainty_words, bed->certainty)},
          {"white", found ? Json(bed->white) : Json(nullptr)},
          {"share", found ? Json(bed->share) : Json(nullptr)},
          {"original_px", found ? in_px(bed->original) : Json(nullptr)},
          {"tilt_degrees", or_null(bed->tilt)}};
}

} // namespace

void add_state(Json &part, const PictureState &state) {
  part["fault"] = state.fault ? Json(state.fault->what) : Json(nullptr);
  part["sha256"] = state.sha256.empty() ? Json(nullptr) : Json(state.sha256);
  add_facts(part, state.facts);
  part["jpeg"] = state.facts ? jpeg_part(state.facts->jpeg) : Json(nullptr);
  part["profile"] = state.facts ? profile_part(state.facts->profile) : Json(nullptr);
  part["neutral"] = or_null(state.neutral);
  part["bed"] = bed_part(state.bed);
  part["true_detail"] = nullptr;
}

} // namespace stoneproof::record
