// Matching the findings of two rounds. The only ways in are the functions of rounds.h; tested in
// tests/reports/content.
#include "reports/content/rounds.h"

#include "engine/rules/rule.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace stoneproof::content {

namespace {

/// What two findings must have in common at one step; none: the step says nothing of such a finding.
using Key = std::optional<std::vector<std::string>>;
using KeyOf = Key (*)(const RecordedFinding &);

std::string or_empty(const std::optional<std::string> &text) { return text.value_or(""); }
std::string page_of(const RecordedFinding &finding) {
  return finding.page ? std::to_string(*finding.page) : std::string();
}
bool about_nothing(const RecordedFinding &finding) {
  return !finding.frame && !finding.picture && !finding.text;
}

constexpr std::array<KeyOf, 5> steps = {
    // Everything but the page; a finding of a page alone has only that.
    [](const RecordedFinding &f) {
      return Key{{f.rule, or_empty(f.frame), or_empty(f.picture), or_empty(f.text),
                  about_nothing(f) ? page_of(f) : std::string()}};
    },
    [](const RecordedFinding &f) {
      return f.frame ? Key{{f.rule, *f.frame}} : Key();
    },
    [](const RecordedFinding &f) {
      return f.picture ? Key{{f.rule, *f.picture}} : Key();
    },
    [](const RecordedFinding &f) {
      return f.text ? Key{{f.rule, *f.text}} : Key();
    },
    // Its page was renumbered.
    [](const RecordedFinding &f) { return about_nothing(f) ? Key{{f.rule}} : Key(); },
};

bool unlooked(const RecordedFinding &finding, const RecordedRound &now) {
  const Rule *rule = find_rule(finding.rule);
  return !now.pixels_measured && rule && rule->of_pixels;
}

} // namespace

Rounds compare_rounds(const RecordedRound &before, const RecordedRound &now) {
  std::vector<bool> gone(before.findings.size(), true), known(now.findings.size());
  for (const KeyOf key_of : steps) {
    std::map<std::vector<std::string>, std::vector<std::size_t>> open;
    for (std::size_t i = before.findings.size(); i-- > 0;)
      if (const Key key = gone[i] ? key_of(before.findings[i]) : Key()) open[*key].push_back(i);
    for (std::size_t i = 0; i < now.findings.size(); ++i) {
      const Key key = known[i] ? Key() : key_of(now.findings[i]);
      if (!key) continue;
      const auto found = open.find(*key);
      if (found == open.end() || found->second.empty()) continue;
      gone[found->second.back()] = false;
      found->second.pop_back();
      known[i] = true;
    }
  }
  Rounds rounds;
  for (std::size_t i = 0; i < known.size(); ++i) (known[i] ? rounds.standing : rounds.fresh).push_back(i);
  for (std::size_t i = 0; i < gone.size(); ++i)
    if (gone[i]) (unlooked(before.findings[i], now) ? rounds.unlooked : rounds.mended).push_back(i);
  return rounds;
}

std::string page_name(const RecordedFinding &finding) {
  if (!finding.page) return "The book";
  return *finding.page == 0 ? std::string("Cover") : fmt::format("Page {}", *finding.page);
}

bool same_book(const RecordedRound &before, const RecordedRound &now) {
  if (before.title == now.title) return true;
  const std::set<std::string> frames(before.frames.begin(), before.frames.end());
  return std::any_of(now.frames.begin(), now.frames.end(),
                     [&](const std::string &frame) { return frames.count(frame) > 0; });
}

std::string round_words(const Rounds &rounds) {
  const std::string words = fmt::format("{} new, {} standing, {} mended", rounds.fresh.size(),
                                        rounds.standing.size(), rounds.mended.size());
  return rounds.unlooked.empty() ? words : fmt::format("{}, {} not looked at", words, rounds.unlooked.size());
}

} // namespace stoneproof::content
