// Findings to XFDF. The only way in is marks_text; tested in tests/reports/record/marks.test.cpp, which
// validates marks by schema/marks.xsd and reads them with programs that are not ours.
#include "reports/record/marks.h"

#include "engine/picture/facts.h"
#include "engine/rules/rule.h"
#include "engine/xml/characters.h"
#include "reports/content/sentences.h"

#include <ctime>
#include <fmt/chrono.h>

#include <map>

namespace stoneproof::record {

namespace {

/// The graver, the darker and the less broken: told apart in grey, and by those who see no colours.
struct Look {
  std::string_view colour, border;
};
Look look_of(Grade grade) {
  switch (grade) {
  case Grade::hold: return {"#582488", R"(width="2" style="solid")"};
  case Grade::query: return {"#8A54BC", R"(width="1.5" style="dash" dashes="6,3")"};
  case Grade::note: return {"#A98CC8", R"(width="1" style="dash" dashes="1.5,2.5")"};
  }
  return {};
}

std::string pdf_date(std::int64_t seconds) {
  return fmt::format("D:{:%Y%m%d%H%M%S}Z", fmt::gmtime(static_cast<std::time_t>(seconds)));
}

std::string contributor_of(const Evidence &evidence, const Finding &finding) {
  return finding.contributor ? evidence.book.contributors[*finding.contributor].name : std::string();
}

std::string words_of(const Evidence &evidence, const Finding &finding) {
  std::string words =
      fmt::format("{}. {}", content::grade_name(finding.grade), content::page_name(evidence, finding));
  const std::string frame =
      finding.frame ? "Frame " + evidence.book.pages[*finding.page].frames[*finding.frame].id : std::string();
  const std::string subject = content::subject(evidence, finding);
  for (const std::string &part :
       {subject, frame == subject ? std::string() : frame, contributor_of(evidence, finding)})
    if (!part.empty()) words += " · " + part;
  return words + "\n" + content::message(evidence, finding) + "\n" + content::remedy(evidence, finding);
}

/// What a finding is about, as it stays from round to round: the page's number only where nothing else tells.
std::string about(const Evidence &evidence, const Finding &finding) {
  std::string key(finding.rule);
  const auto add = [&key](std::string_view what, const std::string &name) {
    key += fmt::format("\n{} {}", what, name);
  };
  const Page *page = finding.page ? &evidence.book.pages[*finding.page] : nullptr;
  if (finding.picture) add("picture", evidence.book.pictures[*finding.picture].id);
  if (finding.with_picture) add("picture", evidence.book.pictures[*finding.with_picture].id);
  if (page && finding.frame) add("frame", page->frames[*finding.frame].id);
  if (page && finding.with_frame) add("frame", page->frames[*finding.with_frame].id);
  if (page && finding.text) add("text", page->texts[*finding.text].text);
  if (page && finding.with_text) add("text", page->texts[*finding.with_text].text);
  if (page && !finding.frame && !finding.text) add("page", fmt::format("{}", page->number));
  return key;
}

class Marks {
public:
  Marks(const Evidence &evidence, const MarksOptions &options)
      : evidence_(evidence), options_(options), pdf_(evidence.book, options.file) {}

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
        name_of(finding), xml_escaped(find_rule(finding.rule)->title));
    if (options_.made_at) {
      const std::string date = pdf_date(*options_.made_at);
      text_ += fmt::format(R"( date="{}" creationdate="{}")", date, date);
    }
    text_ += fmt::format("><contents>{}</contents></{}>\n", xml_escaped(words_of(evidence_, finding)), kind);
  }

  /// One of a kind in the file.
  std::string name_of(const Finding &finding) {
    constexpr std::size_t digits = 16;
    const std::string name =
        fmt::format("{}-{}", finding.rule, sha256_of_text(about(evidence_, finding)).substr(0, digits));
    const int number = ++names_[name];
    return number == 1 ? name : fmt::format("{}-{}", name, number);
  }

  const Evidence &evidence_;
  const MarksOptions &options_;
  FinishedPdf pdf_;
  std::map<std::string, int> names_;
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
