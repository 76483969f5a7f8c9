// The plan's content on one screen. The only way in is plan_summary; tested in tests/reports/terminal.
#include "reports/terminal/plan_summary.h"

#include "engine/xml/characters.h"
#include "reports/terminal/summary.h"
#include "reports/terminal/wrap.h"

#include <fmt/format.h>

#include <utility>
#include <vector>

namespace stoneproof::terminal {

namespace {

using Lines = std::vector<std::string>;

void append(Lines &lines, Lines more) {
  for (std::string &line : more) lines.push_back(std::move(line));
}

Lines trouble_lines(const content::PlanTrouble &trouble, int width) {
  constexpr int indent = 2;
  Lines lines = {shortened(fmt::format("{}  {}", printable(trouble.name), printable(trouble.where)), width)};
  for (const std::string &text : {trouble.what, trouble.remedy})
    for (const std::string &line : few_lines(text, width - indent, 2))
      lines.push_back(std::string(indent, ' ') + line);
  return lines;
}

/// What must be decided in so many lines, the last of which says how much there is besides.
Lines troubles_in(const content::PlanContent &content, int width, std::size_t room) {
  Lines lines;
  std::size_t told = 0;
  for (const content::PlanTrouble &trouble : content.troubles) {
    Lines next = trouble_lines(trouble, width);
    if (lines.size() + next.size() + 1 > room) break;
    append(lines, std::move(next));
    ++told;
  }
  const std::size_t left = content.troubles.size() - told;
  if (left > 0) lines.push_back(fmt::format("{} more to decide in the plan", left));
  return lines;
}

} // namespace

std::string plan_summary(const content::PlanContent &content, const PlanFiles &files, int width, bool bold) {
  Lines head = few_lines(content.title, width, 1);
  for (const std::string &line : few_lines(content.verdict, width, 2))
    head.push_back(bold ? "\033[1m" + line + "\033[0m" : line);
  append(head, few_lines(content.counts, width, 4));
  Lines foot = {"", "Plan   " + printable(files.plan.string()), "Table  " + printable(files.table.string())};
  append(foot, few_lines(content.press, width, 3));

  const std::size_t blank_line = 1;
  Lines troubles = troubles_in(content, width, most_summary_lines - head.size() - foot.size() - blank_line);
  if (!troubles.empty()) head.emplace_back();
  append(head, std::move(troubles));
  append(head, std::move(foot));
  std::string text;
  for (const std::string &line : head) text += line + "\n";
  return text;
}

} // namespace stoneproof::terminal
