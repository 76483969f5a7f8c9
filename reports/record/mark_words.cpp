// Words, looks and names of marks. The only ways in are those of mark_words.h; tested in
// tests/reports/record/marks.test.cpp.
#include "reports/record/mark_words.h"

#include "engine/picture/facts.h"
#include "reports/content/sentences.h"

#include <ctime>
#include <fmt/chrono.h>

namespace stoneproof::record {

namespace {

std::string contributor_of(const Evidence &evidence, const Finding &finding) {
  return finding.contributor ? evidence.book.contributors[*finding.contributor].name : std::string();
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

} // namespace

MarkLook look_of(Grade grade) {
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

std::string mark_words(const Evidence &evidence, const Finding &finding) {
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

std::string MarkNames::name_of(const Finding &finding) {
  constexpr std::size_t digits = 16;
  const std::string name =
      fmt::format("{}-{}", finding.rule, sha256_of_text(about(evidence_, finding)).substr(0, digits));
  const int number = ++names_[name];
  return number == 1 ? name : fmt::format("{}-{}", name, number);
}

} // namespace stoneproof::record
