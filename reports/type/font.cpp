// Reads, shapes and subsets one font through HarfBuzz. The only way in is Font; tested in
// tests/reports/type/typesetter.test.cpp.
#include "reports/type/font.h"

#include "reports/type/cff_charset.h"

#include <array>
#include <hb-ot.h>
#include <hb-subset.h>
#include <optional>

namespace stoneproof {
namespace {

using Blob = std::unique_ptr<hb_blob_t, Destroy<hb_blob_destroy>>;
using Face = std::unique_ptr<hb_face_t, Destroy<hb_face_destroy>>;
using SubsetInput = std::unique_ptr<hb_subset_input_t, Destroy<hb_subset_input_destroy>>;
using SubsetPlan = std::unique_ptr<hb_subset_plan_t, Destroy<hb_subset_plan_destroy>>;

constexpr hb_tag_t glyf_table = HB_TAG('g', 'l', 'y', 'f'), cff_table = HB_TAG('C', 'F', 'F', ' ');

std::string_view bytes_of(const Blob &blob) {
  unsigned length = 0;
  const char *data = hb_blob_get_data(blob.get(), &length);
  return {data, length};
}

/// A big-endian number in a font table; 0 beyond its end.
int number_at(const Blob &table, std::size_t offset) {
  const std::string_view bytes = bytes_of(table);
  if (offset + 2 > bytes.size()) return 0;
  const auto high = static_cast<unsigned char>(bytes[offset]),
             low = static_cast<unsigned char>(bytes[offset + 1]);
  return static_cast<std::int16_t>(high << 8 | low);
}

std::string postscript_name(hb_face_t *face) {
  std::array<char, 128> name{};
  auto size = static_cast<unsigned>(name.size());
  hb_ot_name_get_utf8(face, HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &size, name.data());
  return name.data();
}

/// Offsets are those of the OpenType specification's tables head, post and OS/2.
FontFacts facts_of(hb_face_t *face, hb_font_t *font) {
  const auto table = [face](hb_tag_t tag) { return Blob(hb_face_reference_table(face, tag)); };
  const Blob head = table(HB_TAG('h', 'e', 'a', 'd')), post = table(HB_TAG('p', 'o', 's', 't'));
  const auto metric = [font](hb_ot_metrics_tag_t tag) {
    hb_position_t position = 0;
    hb_ot_metrics_get_position_with_fallback(font, tag, &position);
    return position;
  };
  FontFacts facts;
  facts.name = postscript_name(face);
  facts.units_per_em = static_cast<int>(hb_face_get_upem(face));
  facts.ascent = metric(HB_OT_METRICS_TAG_HORIZONTAL_ASCENDER);
  facts.descent = metric(HB_OT_METRICS_TAG_HORIZONTAL_DESCENDER);
  facts.cap_height = metric(HB_OT_METRICS_TAG_CAP_HEIGHT);
  facts.left = number_at(head, 36), facts.bottom = number_at(head, 38);
  facts.right = number_at(head, 40), facts.top = number_at(head, 42);
  facts.italic_angle = number_at(post, 4) + (number_at(post, 6) & 0xFFFF) / 65536.0;
  const Blob os2 = table(HB_TAG('O', 'S', '/', '2'));
  facts.weight = number_at(os2, 4);
  constexpr int restricted = 2; // fsType
  facts.may_be_embedded = (number_at(os2, 8) & 0xF) != restricted;
  return facts;
}

std::optional<Outlines> outlines_of(hb_face_t *face) {
  if (!bytes_of(Blob(hb_face_reference_table(face, glyf_table))).empty()) return Outlines::true_type;
  if (cids_of(bytes_of(Blob(hb_face_reference_table(face, cff_table))))) return Outlines::cff;
  return std::nullopt;
}

SubsetInput input_of(const std::vector<GlyphId> &glyphs) {
  SubsetInput input(hb_subset_input_create_or_fail());
  if (!input) return input;
  // Routines that glyphs of CFF share would leave gaps where those of others were.
  hb_subset_input_set_flags(input.get(), HB_SUBSET_FLAGS_NO_HINTING | HB_SUBSET_FLAGS_NOTDEF_OUTLINE |
                                             HB_SUBSET_FLAGS_DESUBROUTINIZE);
  hb_set_t *wanted = hb_subset_input_glyph_set(input.get());
  hb_set_add(wanted, 0);
  for (const GlyphId glyph : glyphs) hb_set_add(wanted, glyph);
  // A CIDFontType2 needs glyf, loca, head, hhea, hmtx and maxp only (ISO 32000-1, 9.9), a CIDFontType0 CFF.
  hb_set_t *dropped = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
  for (const char *tag : {"BASE", "GDEF", "GPOS", "GSUB", "OS/2", "VORG", "cmap", "gasp", "kern", "name",
                          "post", "vhea", "vmtx"})
    hb_set_add(dropped, hb_tag_from_string(tag, 4));
  return input;
}

} // namespace

Outcome<Font> Font::load(const FontFile &file, const std::string &language) {
  const Blob blob(hb_blob_create_from_file(file.path.c_str()));
  const Face face(hb_face_create(blob.get(), file.index));
  if (hb_face_get_glyph_count(face.get()) == 0)
    return Fault{"this is not a font file", file.path, "Install the font again."};
  const auto outlines = outlines_of(face.get());
  if (!outlines)
    return Fault{"the font has no TrueType or CFF outlines", file.path, "Install the font again."};
  Font font;
  font.outlines_ = *outlines;
  font.language_ = hb_language_from_string(language.c_str(), -1);
  font.font_.reset(hb_font_create(face.get()));
  font.facts_ = facts_of(face.get(), font.font_.get());
  hb_font_get_nominal_glyph(font.font_.get(), 0x25A1, &font.square_);
  hb_face_make_immutable(face.get());
  hb_font_make_immutable(font.font_.get());
  return font;
}

int Font::advance(GlyphId glyph) const { return hb_font_get_glyph_h_advance(font_.get(), glyph); }

bool Font::has(char32_t character) const {
  hb_codepoint_t glyph = 0;
  return hb_font_get_nominal_glyph(font_.get(), character, &glyph) != 0;
}

void Font::shape(std::u32string_view text, const TextSpan &span, hb_buffer_t *buffer, GlyphId missing) const {
  static constexpr auto whole = HB_FEATURE_GLOBAL_END;
  static constexpr std::array<hb_feature_t, 2> features{
      {{HB_TAG('l', 'i', 'g', 'a'), 0, 0, whole}, {HB_TAG('c', 'l', 'i', 'g'), 0, 0, whole}}};
  // Some of the fonts also carry rules of another shaping engine, which HarfBuzz would prefer where it was
  // built in.
  static constexpr std::array<const char *, 2> shapers{"ot", nullptr};
  hb_buffer_reset(buffer);
  hb_buffer_add_utf32(buffer, reinterpret_cast<const std::uint32_t *>(text.data()),
                      static_cast<int>(text.size()), static_cast<unsigned>(span.first),
                      static_cast<int>(span.count));
  hb_buffer_set_script(buffer, static_cast<hb_script_t>(span.script));
  hb_buffer_set_language(buffer, language_);
  hb_buffer_set_direction(buffer, span.right_to_left ? HB_DIRECTION_RTL : HB_DIRECTION_LTR);
  hb_buffer_set_not_found_glyph(buffer, missing);
  hb_buffer_set_flags(buffer, HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
  hb_shape_full(font_.get(), buffer, features.data(), static_cast<unsigned>(features.size()), shapers.data());
}

Outcome<FontSubset> Font::subset(const std::vector<GlyphId> &glyphs) const {
  const Fault fault{"the font cannot be subset", facts_.name, "Install the font again."};
  const SubsetInput input = input_of(glyphs);
  const SubsetPlan plan(input ? hb_subset_plan_create_or_fail(hb_font_get_face(font_.get()), input.get())
                              : nullptr);
  const Face face(plan ? hb_subset_plan_execute_or_fail(plan.get()) : nullptr);
  if (!face) return fault;
  FontSubset subset{outlines_, {}, {}};
  const hb_map_t *renumbered = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
  for (const GlyphId glyph : glyphs)
    subset.numbers.push_back(static_cast<std::uint16_t>(hb_map_get(renumbered, glyph)));
  if (outlines_ == Outlines::true_type) {
    subset.program = bytes_of(Blob(hb_face_reference_blob(face.get())));
    return subset;
  }
  subset.program = bytes_of(Blob(hb_face_reference_table(face.get(), cff_table)));
  const auto cids = cids_of(subset.program);
  if (!cids) return fault;
  if (!cids->empty())
    for (std::uint16_t &number : subset.numbers) number = cids->at(number);
  return subset;
}

} // namespace stoneproof
