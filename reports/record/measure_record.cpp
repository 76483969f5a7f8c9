// Measured picture files with the same keys as the record's. The only way in is measure_text; tested in
// tests/reports/record, which also validates real output against schema/measure.schema.json.
#include "reports/record/measure_record.h"

#include "reports/record/parts.h"

namespace stoneproof::record {

namespace {

/// The uses that the picture can have; null for a photo where it is line art.
Json largest_part(const std::vector<LargestPrint> &largest) {
  if (largest.empty()) return nullptr;
  Json part = Json::object();
  for (const auto &[use, word] : use_words) part[std::string(word)] = nullptr;
  for (const LargestPrint &print : largest)
    part[std::string(word_of(use_words, print.use))] = {{"wanted", in_mm(print.wanted)},
                                                        {"least", in_mm(print.least)}};
  return part;
}

Json filled_part(const std::vector<FilledPrint> &filled) {
  Json part = Json::array();
  for (const FilledPrint &print : filled)
    part.push_back({{"name", print.name},
                    {"width_mm", print.size.width.mm()},
                    {"height_mm", print.size.height.mm()},
                    {"ppi", print.density.ppi()},
                    {"verdict", word_of(sharpness_words, print.sharpness)}});
  return part;
}

Json copies_part(const std::vector<CopyOf> &copies) {
  Json part = Json::array();
  for (const CopyOf &copy : copies)
    part.push_back({{"path", copy.file.string()},
                    {"same_bytes", copy.same_bytes},
                    {"better", copy.worse    ? "this"
                               : copy.better ? "that"
                                             : "alike"}});
  return part;
}

Json file_part(const MeasuredFile &measured, const PressSheet &press) {
  Json part = {{"path", measured.file.string()},
               {"use", measured.state.facts ? Json(word_of(use_words, measured.use)) : Json(nullptr)}};
  add_state(part, measured.state);
  const Shown *whole = measured.whole ? &*measured.whole : nullptr;
  part["true_detail"] = detail_part(whole);
  part["dirt"] = dirt_part(measured.dirt);
  part["copies_in_list"] = copies_part(measured.copies);
  part["tone"] = tone_part(whole);
  part["ink"] = ink_part(whole);
  part["ink_at_ppi"] = part["ink"].is_null() ? Json(nullptr) : Json(press.bar(measured.use).wanted.ppi());
  part["largest_print_mm"] = largest_part(measured.largest);
  part["frames"] = filled_part(measured.filled);
  return part;
}

} // namespace

std::string measure_text(const std::vector<MeasuredFile> &files, const PressSheet &press,
                         const std::string &version) {
  Json root = {{"stoneproof", version},
               {"measure", measure_schema_number},
               {"press", press.name},
               {"pictures", Json::array()}};
  for (const MeasuredFile &file : files) root["pictures"].push_back(file_part(file, press));
  return root.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace stoneproof::record
