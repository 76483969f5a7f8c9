// One finding of the record. The only way in is finding_part; tested in tests/reports/record.
#include "reports/record/parts.h"

#include "reports/content/sentences.h"

namespace stoneproof::record {

namespace {

struct Figure {
  Json value, unit;
};

struct FigureOf {
  Figure operator()(std::monostate) const { return {nullptr, nullptr}; }
  Figure operator()(Density density) const { return {density.ppi(), "ppi"}; }
  Figure operator()(Length length) const { return {length.mm(), "mm"}; }
  Figure operator()(Share share) const { return {share.value, "share"}; }
  Figure operator()(Count number) const { return {number.value, "count"}; }
  Figure operator()(Quality quality) const { return {quality.value, "quality"}; }
  Figure operator()(Ruling ruling) const { return {ruling.lines, "lines-per-inch"}; }
  Figure operator()(Angle angle) const { return {angle.degrees, "degrees"}; }
};

Json sides_of(const Evidence &evidence, const Finding &finding) {
  Json sides = Json::array();
  for (const PageSide side : finding.sides)
    sides.push_back(content::side_name(evidence.spaces[*finding.page], side));
  return sides;
}

Json numbers_of(const Evidence &evidence, const std::vector<FrameAt> &frames) {
  Json numbers = Json::array();
  for (const FrameAt &at : frames) numbers.push_back(evidence.book.pages[at.page].number);
  return numbers;
}

Json words_or_null(const std::vector<TextBlock> &texts, const std::optional<std::size_t> &index) {
  return index ? Json(texts[*index].text) : Json(nullptr);
}

void add_place(Json &part, const Evidence &evidence, const Finding &finding) {
  const Page *page = finding.page ? &evidence.book.pages[*finding.page] : nullptr;
  part["page"] = page ? Json(page->number) : Json(nullptr);
  part["frame"] = page ? id_or_null(page->frames, finding.frame) : Json(nullptr);
  part["text"] = page ? words_or_null(page->texts, finding.text) : Json(nullptr);
  part["with_frame"] = page ? id_or_null(page->frames, finding.with_frame) : Json(nullptr);
  part["with_text"] = page ? words_or_null(page->texts, finding.with_text) : Json(nullptr);
  part["picture"] = id_or_null(evidence.book.pictures, finding.picture);
  part["with_picture"] = id_or_null(evidence.book.pictures, finding.with_picture);
  part["contributor"] = id_or_null(evidence.book.contributors, finding.contributor);
  part["area_mm"] = in_mm_or_null(finding.area);
  part["sides"] = sides_of(evidence, finding);
  part["also_on"] = numbers_of(evidence, finding.same_picture);
}

void add_rescue(Json &part, const Rescue &rescue) {
  const auto &rescan = rescue.rescan;
  const auto &crop = rescue.looser_crop;
  part["rescan_needed_ppi"] = rescan ? Json(rescan->needed_ppi) : Json(nullptr);
  part["rescan_ppi"] = rescan ? or_null(rescan->setting) : Json(nullptr);
  part["largest_print_mm"] = in_mm_or_null(rescue.print_no_larger);
  part["least_crop"] =
      crop ? Json{{"width", crop->width_share}, {"height", crop->height_share}} : Json(nullptr);
}

} // namespace

Json finding_part(const Evidence &evidence, const Finding &finding) {
  const Figure measured = std::visit(FigureOf{}, finding.measured);
  const Figure wanted = std::visit(FigureOf{}, finding.wanted);
  Json part = {{"rule", finding.rule}, {"grade", word_of(grade_words, finding.grade)}};
  add_place(part, evidence, finding);
  part["glass"] = or_null(finding.glass);
  part["message"] = content::message(evidence, finding);
  part["measured"] = measured.value;
  part["wanted"] = wanted.value;
  part["unit"] = measured.unit.is_null() ? wanted.unit : measured.unit;
  part["remedy"] = content::remedy(evidence, finding);
  add_rescue(part, finding.rescue);
  return part;
}

} // namespace stoneproof::record
