// The proof's content on one screen. The only way in is summary; tested in tests/reports/terminal.
#include "reports/terminal/summary.h"

#include "engine/xml/characters.h"
#include "reports/content/figures.h"
#include "reports/content/sentences.h"
#include "reports/terminal/wrap.h"

#include <fmt/format.h>

#include <algorithm>

namespace stoneproof::terminal {

namespace {

using Lines = std::vector<std::string>;

std::string counts_line(const std::array<std::size_t, 3> &counts) {
  return fmt::format("{}, {}, {}", content::grade_count(Grade::hold, counts[0]),
                     content::grade_count(Grade::query, counts[1]),
                     content::grade_count(Grade::note, counts[2]));
}

Lines finding_lines(const content::Mark &mark, int width) {
  constexpr int indent = 7; // under the page, behind the grade
  Lines lines = {shortened(
      fmt::format("{:<6} {}  {}", content::grade_name(mark.grade), mark.page, printable(mark.subject)),
      width)};
  for (const std::string &line : few_lines(mark.message, width - indent, 2))
    lines.push_back(std::string(indent, ' ') + line);
  return lines;
}

/// The gravest findings in so many lines, the last of which says how many there are besides.
Lines findings_in(const content::ProofContent &content, int width, std::size_t room) {
  Lines lines;
  std::size_t told = 0;
  for (const std::size_t index : content.gravest_first) {
    const Lines next = finding_lines(content.marks[index], width);
    if (lines.size() + next.size() + 1 > room) break;
    lines.insert(lines.end(), next.begin(), next.end());
    ++told;
  }
  const std::size_t left = content.marks.size() - told;
  if (left > 0) lines.push_back(fmt::format("and {} more in the proof", left));
  return lines;
}

} // namespace

std::string summary(const content::ProofContent &content, const ProofFiles &files, int width, bool bold) {
  Lines head = few_lines(content.title, width, 1);
  for (const std::string &line : few_lines(content.verdict, width, 2))
    head.push_back(bold ? "\033[1m" + line + "\033[0m" : line);
  for (std::string &line : few_lines(content.round, width, 2)) head.push_back(std::move(line));
  head.push_back(counts_line(content.counts));
  for (std::string &line : few_lines(content.masters, width, 2)) head.push_back(std::move(line));

  Lines foot = {"Proof   " + printable(files.proof.string()), "Record  " + printable(files.record.string())};
  for (const auto &marks : {files.marks, files.cover_marks})
    if (marks) foot.push_back("Marks   " + printable(marks->string()));
  if (files.annotated) foot.push_back("Copy    " + printable(files.annotated->string()));
  for (std::string &line : few_lines(content.press, width, 3)) foot.push_back(std::move(line));

  constexpr std::size_t blank_lines = 2;
  const std::size_t room = most_summary_lines - head.size() - foot.size() - blank_lines;
  Lines findings = findings_in(content, width, room);
  if (!findings.empty()) findings.insert(findings.begin(), "");
  foot.insert(foot.begin(), "");
  std::string text;
  for (const Lines *lines : {&std::as_const(head), &std::as_const(findings), &std::as_const(foot)})
    for (const std::string &line : *lines) text += line + "\n";
  return text;
}

} // namespace stoneproof::terminal
