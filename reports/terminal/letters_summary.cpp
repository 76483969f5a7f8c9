// What letters were written, in words. The only way in is letters_summary; tested in
// tests/reports/terminal/letters.test.cpp.
#include "reports/terminal/letters_summary.h"

#include "engine/xml/characters.h"
#include "reports/content/figures.h"
#include "reports/terminal/summary.h"
#include "reports/terminal/wrap.h"

#include <fmt/format.h>

#include <algorithm>

namespace stoneproof::terminal {

namespace {

using content::count;
using Lines = std::vector<std::string>;

std::string name_of(const LetterLine &line) { return line.name.empty() ? "(no name)" : printable(line.name); }

/// "Anna, Eleni and 3 more"
std::string names(const std::vector<LetterLine> &lines, bool LetterLine::*which, bool wanted) {
  constexpr std::size_t most = 6;
  std::string list;
  std::size_t told = 0, left = 0;
  for (const LetterLine &line : lines) {
    if (line.*which != wanted) continue;
    if (told == most) {
      ++left;
      continue;
    }
    list += (told++ == 0 ? "" : ", ") + name_of(line);
  }
  return left > 0 ? fmt::format("{} and {} more", list, left) : list;
}

void add(Lines &lines, std::string_view text, int width, std::size_t most) {
  for (std::string &line : few_lines(text, width, most)) lines.push_back(std::move(line));
}

/// The letters as far as they fit.
void add_letters(Lines &lines, const std::vector<LetterLine> &letters, int width, std::size_t room) {
  const auto written = static_cast<std::size_t>(
      std::count_if(letters.begin(), letters.end(), [](const LetterLine &line) { return line.written; }));
  const std::size_t shown = written <= room ? written : room - 1;
  std::size_t told = 0;
  for (const LetterLine &line : letters) {
    if (!line.written || told == shown) continue;
    ++told;
    lines.push_back(shortened(fmt::format("{}  {}", printable(line.file.filename().string()),
                                          count(line.pictures, "picture", "pictures")),
                              width));
  }
  if (shown < written) lines.push_back(fmt::format("and {} more", written - shown));
}

} // namespace

std::string letters_summary(const LettersTold &told, int width, bool bold) {
  const auto &all = told.lines;
  const auto letters = static_cast<std::size_t>(
      std::count_if(all.begin(), all.end(), [](const LetterLine &line) { return line.written; }));
  Lines head = few_lines(told.title, width, 1), foot;
  const std::string verdict = letters > 0 ? fmt::format("{} written.", count(letters, "letter", "letters"))
                                          : "No letter is needed: no contributor has anything to do.";
  head.push_back(bold ? "\033[1m" + verdict + "\033[0m" : verdict);
  if (letters > 0 && letters < all.size())
    add(foot, fmt::format("Nothing to do, so no letter: {}.", names(all, &LetterLine::written, false)), width,
        2);
  if (const std::string old = names(all, &LetterLine::old, true); !old.empty())
    add(foot, fmt::format("An older letter lies there and no longer holds: {}.", old), width, 2);
  if (told.nobodys > 0)
    add(foot,
        fmt::format("{} something done, but the book names no contributor for {}.",
                    count(told.nobodys, "picture needs", "pictures need"), told.nobodys == 1 ? "it" : "them"),
        width, 2);
  if (!foot.empty() && (letters > 0 || told.csv)) foot.emplace_back();
  if (letters > 0) foot.push_back("Letters  " + printable(told.folder.string()));
  if (told.csv) foot.push_back("Table    " + printable(told.csv->string()));
  if (letters > 0) {
    head.emplace_back();
    add_letters(head, all, width, most_summary_lines - head.size() - foot.size() - 1);
  }
  if (!foot.empty()) head.emplace_back();
  std::string text;
  for (const Lines &part : {head, foot})
    for (const std::string &line : part) text += line + "\n";
  return text;
}

} // namespace stoneproof::terminal
