// Findings to what the proof says. The only ways in are the functions of proof_content.h; tested in
// tests/reports/content.
#include "reports/content/proof_content.h"

#include "reports/content/book_words.h"
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

/// As a fact only where somebody named it.
std::string binding_words_of(const Book &book) {
  const std::string phrase = binding_phrase(book.binding.kind);
  return is_binding_guessed(book) ? fmt::format("taken for {} (--binding names it)", phrase) : phrase;
}

/// Of a finished PDF, where its title is not the file's name already.
std::string file_besides(const Book &book) {
  if (!book.print_file) return {};
  const std::filesystem::path file = book.print_file->file;
  return book.title == file.stem().string() ? std::string() : file.string();
}

std::string job_line(const Evidence &evidence) {
  const Book &book = evidence.book;
  return fmt::format("{} trim, {}, {}, {}, {}", exact_size(book.trim), binding_words_of(book),
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

/// Of the frame, when the finding's place is the box round it.
std::optional<Corners> turned_corners(const Evidence &evidence, const Finding &finding) {
  if (!finding.page || !finding.frame || !finding.area) return std::nullopt;
  const auto place = [](const PlacedFrame &placed) { return std::pair(placed.page, placed.frame); };
  const auto wanted = std::pair(*finding.page, *finding.frame);
  const auto placed = std::lower_bound(evidence.frames.begin(), evidence.frames.end(), wanted,
                                       [&](const PlacedFrame &a, const auto &b) { return place(a) < b; });
  if (placed == evidence.frames.end() || place(*placed) != wanted) return std::nullopt;
  const bool turned = evidence.frame_of(*placed).turn.degrees != 0;
  return turned && *finding.area == placed->box ? std::optional(placed->corners) : std::nullopt;
}

Mark mark_of(const Evidence &evidence, const Finding &finding, int number) {
  Mark mark;
  mark.picture = finding.picture;
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
  mark.corners = turned_corners(evidence, finding);
  return mark;
}

/// "Page 7", "Pages 3, 5 and 8–9": each once; of many only the first.
std::string where_words(const std::vector<std::size_t> &pages, const Book &book) {
  constexpr std::size_t most = 9;
  std::vector<std::string> names;
  for (const std::size_t index : pages) {
    const Page &page = book.pages[index];
    names.push_back(page.kind == PageKind::cover    ? std::string("cover")
                    : page.kind == PageKind::spread ? fmt::format("{}–{}", page.number, page.number + 1)
                                                    : fmt::format("{}", page.number));
  }
  if (names.empty()) return "The book as a whole";
  if (names.size() > most) {
    const std::size_t left = names.size() - most;
    names.resize(most);
    names.push_back(fmt::format("{} more", left));
  }
  if (names.size() == 1 && names[0] == "cover") return "Cover";
  const bool one = names.size() == 1 && book.pages[pages[0]].kind == PageKind::page;
  return (one ? "Page " : "Pages ") + listed(names);
}

/// The findings of one rule in one grade.
struct Group {
  const Finding *first = nullptr;
  Matter matter;
  std::vector<std::size_t> pages; ///< rising, each once
};

std::vector<Matter> matters_of(const ProofContent &content, const std::vector<Finding> &findings,
                               const Book &book) {
  std::vector<Group> groups;
  for (std::size_t i = 0; i < content.marks.size(); ++i) {
    const Finding &finding = findings[content.marks[i].finding];
    if (finding.grade == Grade::note) continue;
    const auto same = [&](const Group &group) {
      return group.first->rule == finding.rule && group.first->grade == finding.grade;
    };
    auto group = std::ranges::find_if(groups, same);
    if (group == groups.end())
      group = groups.insert(groups.end(), {&finding, {finding.grade, 0, content.marks[i].title, {}, i}, {}});
    ++group->matter.count;
    if (finding.page && (group->pages.empty() || group->pages.back() != *finding.page))
      group->pages.push_back(*finding.page);
  }
  std::ranges::stable_sort(groups, [](const Group &a, const Group &b) {
    return std::pair(a.matter.grade, b.matter.count) < std::pair(b.matter.grade, a.matter.count);
  });
  std::vector<Matter> matters;
  for (Group &group : groups) {
    group.matter.where = where_words(group.pages, book);
    matters.push_back(std::move(group.matter));
  }
  return matters;
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
  content.file = file_besides(evidence.book);
  content.job = job_line(evidence);
  content.counts = count_grades(findings);
  content.clear = content.counts[0] == 0;
  content.verdict = verdict_line(content.counts);
  content.object = object_words(evidence);
  content.pictures = picture_words(evidence);
  content.requirements = press_words(evidence.press, evidence.book);
  content.method = method_words(evidence, findings);
  content.press = press_line(evidence.press);
  if (!evidence.pixels_measured) content.press += " Tones, inks and colours were not measured.";
  for (std::size_t page = 0; page < evidence.book.pages.size(); ++page)
    content.surfaces.push_back({page_name(evidence.book.pages[page]), page, {}});
  for (const Finding *finding : in_page_order(findings)) {
    const std::size_t index = content.marks.size();
    content.marks.push_back(mark_of(evidence, *finding, static_cast<int>(index) + 1));
    content.marks.back().finding = static_cast<std::size_t>(finding - findings.data());
    if (finding->page) content.surfaces[*finding->page].marks.push_back(index);
    content.gravest_first.push_back(index);
  }
  std::stable_sort(
      content.gravest_first.begin(), content.gravest_first.end(),
      [&](std::size_t a, std::size_t b) { return content.marks[a].grade < content.marks[b].grade; });
  content.matters = matters_of(content, findings, evidence.book);
  return content;
}

void tell_round(ProofContent &content, const RecordedRound &last, const RecordedRound &now) {
  const Rounds rounds = compare_rounds(last, now);
  content.round = fmt::format("Since the last round: {}.", round_words(rounds));
  std::vector<bool> fresh(now.findings.size());
  for (const std::size_t index : rounds.fresh) fresh[index] = true;
  for (Mark &mark : content.marks) mark.fresh = fresh.at(mark.finding);
  for (const std::size_t index : rounds.mended) {
    const RecordedFinding &finding = last.findings[index];
    const Rule *rule = find_rule(finding.rule);
    content.mended.push_back({std::string(grade_name(finding.grade)),
                              rule ? std::string(rule->title) : finding.rule, page_name(finding),
                              finding.message});
  }
}

} // namespace stoneproof::content
