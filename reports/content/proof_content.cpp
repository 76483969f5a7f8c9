// Findings to what the proof says. The only ways in are the functions of proof_content.h; tested in
// tests/reports/content.
#include "reports/content/proof_content.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace stoneproof::content {

namespace {

std::string binding_phrase(BindingKind kind) {
  switch (kind) {
  case BindingKind::saddle: return "saddle stitched";
  case BindingKind::perfect: return "perfect bound";
  case BindingKind::case_bound: return "case bound";
  case BindingKind::spiral: return "spiral bound";
  case BindingKind::layflat: return "layflat bound";
  }
  return {};
}

std::string job_line(const Evidence &evidence) {
  const Book &book = evidence.book;
  return fmt::format("{} trim, {}, {}, {}, {}", size(book.trim), binding_phrase(book.binding.kind),
                     count(book.page_count(), "page", "pages"),
                     count(book.pictures.size(), "listed picture", "listed pictures"),
                     count(evidence.frames.size(), "frame", "frames"));
}

/// Findings in page order, from top to bottom of the page; what has no page comes last.
std::vector<const Finding *> in_page_order(const std::vector<Finding> &findings) {
  std::vector<const Finding *> order;
  for (const Finding &finding : findings) order.push_back(&finding);
  const auto place = [](const Finding *finding) {
    const Point centre = finding->area ? finding->area->centre() : Point{};
    return std::tuple(finding->page.value_or(static_cast<std::size_t>(-1)), centre.y.ticks(),
                      centre.x.ticks());
  };
  std::stable_sort(order.begin(), order.end(), [&](auto *a, auto *b) { return place(a) < place(b); });
  return order;
}

Mark mark_of(const Evidence &evidence, const Finding &finding, int number) {
  Mark mark;
  mark.number = number;
  mark.grade = finding.grade;
  mark.title = find_rule(finding.rule)->title;
  mark.page = page_name(evidence, finding);
  mark.subject = subject(evidence, finding);
  if (finding.frame) mark.frame = evidence.book.pages[*finding.page].frames[*finding.frame].id;
  mark.sides = finding.sides;
  if (finding.contributor) mark.owner = evidence.book.contributors[*finding.contributor].name;
  mark.message = message(evidence, finding);
  mark.remedy = remedy(evidence, finding);
  mark.surface = finding.page;
  mark.area = finding.area;
  return mark;
}

} // namespace

std::string press_line(const PressSheet &press, std::string_view did) {
  return fmt::format("{} the press sheet “{}” ({}). The printer’s own specification has the last word.", did,
                     press.name, std::filesystem::path(press.source).filename().string());
}

std::array<std::size_t, 3> count_grades(const std::vector<Finding> &findings) {
  std::array<std::size_t, 3> counts{};
  for (const Finding &finding : findings) ++counts[static_cast<std::size_t>(finding.grade)];
  return counts;
}

std::string verdict_line(const std::array<std::size_t, 3> &counts) {
  if (counts[0] > 0)
    return fmt::format("Held: {} must be mended before this book goes to the printer.",
                       count(counts[0], "thing", "things"));
  if (counts[1] > 0)
    return fmt::format("Clear: nothing holds this book back. {} for somebody to decide.",
                       count(counts[1], "query is left", "queries are left"));
  return "Clear: nothing holds this book back.";
}

ProofContent proof_content(const Evidence &evidence, const std::vector<Finding> &findings) {
  ProofContent content;
  content.title = evidence.book.title;
  content.job = job_line(evidence);
  content.counts = count_grades(findings);
  content.clear = content.counts[0] == 0;
  content.verdict = verdict_line(content.counts);
  content.object = object_words(evidence);
  content.press = press_line(evidence.press);
  if (!evidence.pixels_measured) content.press += " Tones, inks and colours were not measured.";
  for (std::size_t page = 0; page < evidence.book.pages.size(); ++page)
    content.surfaces.push_back({page_name(evidence.book.pages[page]), page, {}});
  for (const Finding *finding : in_page_order(findings)) {
    const std::size_t index = content.marks.size();
    content.marks.push_back(mark_of(evidence, *finding, static_cast<int>(index) + 1));
    if (finding->page) content.surfaces[*finding->page].marks.push_back(index);
    content.gravest_first.push_back(index);
  }
  std::stable_sort(
      content.gravest_first.begin(), content.gravest_first.end(),
      [&](std::size_t a, std::size_t b) { return content.marks[a].grade < content.marks[b].grade; });
  return content;
}

} // namespace stoneproof::content
