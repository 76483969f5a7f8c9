// Prints what the rules' own files say. The only ways in are the functions of explain.h; tested in
// tests/reports/terminal.
#include "reports/terminal/explain.h"

#include "engine/rules/rule.h"
#include "engine/xml/characters.h"
#include "engine/xml/did_you_mean.h"
#include "reports/terminal/wrap.h"

#include <fmt/format.h>

namespace stoneproof::terminal {

std::string rule_list() {
  std::string text;
  for (const Rule *rule : all_rules())
    text += fmt::format("{:<24} {:<6} {}\n", rule->id, word_of(grade_words, rule->grade), rule->title);
  return text;
}

Outcome<std::string> rule_text(std::string_view id, int width) {
  const Rule *rule = find_rule(id);
  if (!rule) {
    std::vector<std::string_view> known;
    for (const Rule *other : all_rules()) known.push_back(other->id);
    return Fault{"there is no rule " + in_quotes(id) + suggestion(id, known), "stoneproof",
                 "Run stoneproof explain to see the list."};
  }
  constexpr int indent = 2;
  return fmt::format("{} (at most a {})\n{}\n\nWhy it matters\n{}\nWhat is measured\n{}\nHow to mend it\n{}",
                     rule->id, word_of(grade_words, rule->grade), rule->title,
                     wrapped_text(rule->why, width, indent), wrapped_text(rule->measure, width, indent),
                     wrapped_text(rule->remedy, width, indent));
}

} // namespace stoneproof::terminal
