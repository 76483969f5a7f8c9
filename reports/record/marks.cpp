// Findings to XFDF. The only way in is marks_text; tested in tests/reports/record/marks.test.cpp, which
// validates marks by schema/marks.xsd and reads them with programs that are not ours.
#include "reports/record/marks.h"

#include "engine/rules/rule.h"
#include "engine/xml/characters.h"
#include "reports/record/mark_words.h"

#include <fmt/format.h>

namespace stoneproof::record {

namespace {

class Marks {
public:
  Marks(const Evidence &evidence, const MarksOptions &options)
      : evidence_(evidence), options_(options), pdf_(evidence.book, options.file), names_(evidence) {}

  void add(const Finding &finding) {
    if (pdf_.empty() || !belongs(finding)) return;
    const bool placed = finding.page && finding.area && pdf_.shows(*finding.page);
    if (!placed) return note(finding, pdf_.next_note(finding.page));
    const auto places = pdf_.places_of(*finding.page, *finding.area);
    if (places.empty()) note(finding, pdf_.note_near(*finding.page, *finding.area));
    for (const PdfPlace &place : places) square(finding, place);
  }

  std::string take() {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
           "<xfdf xmlns=\"http://ns.adobe.com/xfdf/\" xml:space=\"preserve\">\n"
           "<annots>\n" +
           text_ + "</annots>\n</xfdf>\n";
  }

private:
  bool belongs(const Finding &finding) const {
    const bool of_cover = finding.page && evidence_.book.pages[*finding.page].kind == PageKind::cover;
    return options_.file == FinishedFile::cover ? of_cover : !of_cover || !options_.cover_apart;
  }

  void square(const Finding &finding, const PdfPlace &place) {
    write("square", look_of(finding.grade).border, finding, place);
  }
  /// A note keeps its size and stands upright, however its page is shown.
  void note(const Finding &finding, const PdfPlace &place) {
    write("text", R"(icon="Note" flags="nozoom,norotate")", finding, place);
  }

  /// Nothing says "print": marks are seen, and do not come out on paper.
  void write(std::string_view kind, std::string_view more, const Finding &finding, const PdfPlace &place) {
    const UserRect &rect = place.rect;
    text_ += fmt::format(
        R"(<{} page="{}" rect="{:.3f},{:.3f},{:.3f},{:.3f}" color="{}" {} name="{}" title="stoneproof" subject="{}")",
        kind, place.page, rect.left, rect.bottom, rect.right, rect.top, look_of(finding.grade).colour, more,
        names_.name_of(finding), xml_escaped(find_rule(finding.rule)->title));
    if (options_.made_at) {
      const std::string date = pdf_date(*options_.made_at);
      text_ += fmt::format(R"( date="{}" creationdate="{}")", date, date);
    }
    text_ +=
        fmt::format("><contents>{}</contents></{}>\n", xml_escaped(mark_words(evidence_, finding)), kind);
  }

  const Evidence &evidence_;
  const MarksOptions &options_;
  FinishedPdf pdf_;
  MarkNames names_;
  std::string text_;
};

} // namespace

std::string marks_text(const Evidence &evidence, const std::vector<Finding> &findings,
                       const MarksOptions &options) {
  Marks marks(evidence, options);
  for (const Finding &finding : findings) marks.add(finding);
  return marks.take();
}

} // namespace stoneproof::record
