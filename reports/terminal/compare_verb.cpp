// Two records in, what changed out. The only way in is run_compare; tested in tests/reports/terminal.
#include "reports/terminal/compare_verb.h"

#include "engine/xml/characters.h"
#include "reports/content/figures.h"
#include "reports/content/sentences.h"
#include "reports/record/read_record.h"
#include "reports/terminal/console.h"
#include "reports/terminal/wrap.h"

#include <fmt/format.h>

namespace stoneproof::terminal {

namespace {

using content::RecordedFinding;
using content::RecordedRound;

std::string place_of(const RecordedFinding &finding) {
  const std::string place = content::page_name(finding);
  if (finding.frame) return place + ", frame " + *finding.frame;
  return finding.picture ? place + ", picture " + *finding.picture : place;
}

std::string finding_text(const RecordedFinding &finding, int width) {
  constexpr int indent = 7; // under the place, behind the grade
  std::string text = shortened(fmt::format("{:<6} {}  {}", content::grade_name(finding.grade),
                                           printable(place_of(finding)), finding.rule),
                               width) +
                     "\n";
  return text + wrapped_text(printable(finding.message), width, indent);
}

std::string section(std::string_view head, const std::vector<RecordedFinding> &findings,
                    const std::vector<std::size_t> &places, int width) {
  if (places.empty()) return {};
  std::string text = fmt::format("\n{}\n", head);
  for (const std::size_t place : places) text += finding_text(findings[place], width);
  return text;
}

std::string comparison(const RecordedRound &before, const RecordedRound &now, const Console &console) {
  const content::Rounds rounds = content::compare_rounds(before, now);
  const std::string words =
      fmt::format("{}; the book is {}.", content::round_words(rounds), now.held ? "held" : "clear");
  std::string text =
      printable(now.title) + "\n" + (console.bold ? "\033[1m" + words + "\033[0m" : words) + "\n";
  text += section("New", now.findings, rounds.fresh, console.width);
  text += section("Standing", now.findings, rounds.standing, console.width);
  text += section("Mended", before.findings, rounds.mended, console.width);
  return text + section("Not looked at", before.findings, rounds.unlooked, console.width);
}

} // namespace

ExitStatus run_compare(const CompareCommand &command) {
  const auto before = record::read_record(command.before), now = record::read_record(command.now);
  std::vector<Fault> faults;
  for (const auto *read : {&before, &now})
    if (!*read) faults.push_back(read->fault());
  if (!faults.empty()) return refuse(faults, ExitStatus::unreadable_input);
  if (!content::same_book(before.value(), now.value()))
    return refuse(Fault{fmt::format("the records are of two books, “{}” and “{}”",
                                    printable(before.value().title), printable(now.value().title)),
                        command.now.string(), "Name two records of the same book."},
                  ExitStatus::unreadable_input);
  return print_result(comparison(before.value(), now.value(), look_at_console()),
                      now.value().held ? ExitStatus::held : ExitStatus::clear);
}

} // namespace stoneproof::terminal
