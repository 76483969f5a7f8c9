// Mirrored pages give mirrored findings. The fixtures of all rules serve as books.
#include "tests/rules/mirror.h"

#include <iterator>
#include <set>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

std::vector<Finding> without(std::vector<Finding> findings, const std::set<std::string_view> &rules) {
  std::erase_if(findings, [&](const Finding &finding) { return rules.count(finding.rule) > 0; });
  return findings;
}

/// Every page from 1 to an even one.
bool is_whole(const Book &book) {
  int next = 1;
  for (const Page &page : book.pages) {
    if (page.kind == PageKind::cover) continue;
    if (page.number != next) return false;
    next += page.kind == PageKind::spread ? 2 : 1;
  }
  return next % 2 != 0 && book.binding.first_page == Side::right;
}

/// The findings as they must be when the book is read from its end.
std::vector<Finding> seen_from_the_end(const Book &book, std::vector<Finding> findings) {
  findings = sides_swapped(std::move(findings));
  const std::size_t cover = book.cover ? 1 : 0, last = book.pages.size() - 1;
  for (Finding &finding : findings)
    if (finding.page && *finding.page >= cover) finding.page = last - *finding.page + cover;
  return findings;
}

/// What is found, whatever order it is found in.
std::multiset<std::string> lines_of(const Scene &scene, const std::vector<Finding> &findings) {
  std::istringstream text(listed(scene, findings));
  std::multiset<std::string> lines;
  for (std::string line; std::getline(text, line);) lines.insert(line);
  return lines;
}

/// A finding about two frames stands at the later one, one about many pages at the first, which another is
/// now: its figures alone.
std::multiset<std::string> figures_of(const Scene &scene, std::vector<Finding> findings,
                                      const std::set<std::string_view> &rules) {
  std::erase_if(findings, [&](const Finding &finding) { return rules.count(finding.rule) == 0; });
  for (Finding &finding : findings) {
    finding.page.reset();
    finding.same_picture.clear();
    finding.sides.clear();
  }
  return lines_of(scene, findings);
}

} // namespace

// Where page 1 lies is the mirror itself, and halves that face each other do so no more.
TEST_CASE("a mirrored book gives mirrored findings") {
  const std::set<std::string_view> others = {"first-page-left", "halves-apart", "picture-twice"};
  each_fixture([&](const std::filesystem::path &path) {
    const Scene scene = read_scene(path), mirrored = in_a_mirror(scene);
    const auto expected = without(sides_swapped(check_rules(scene.evidence())), others);
    auto found = without(check_rules(mirrored.evidence()), others);
    for (Finding &finding : found) std::sort(finding.sides.begin(), finding.sides.end());
    CHECK(listed(mirrored, found) == listed(scene, expected));
  });
}

// Blanks at its end now stand at its beginning, and what is told once for all stands at another picture.
TEST_CASE("a mirrored book that is read from its end gives the same findings from its end") {
  const std::set<std::string_view> of_two = {"halves-apart", "picture-twice", "near-copy", "empty-page"};
  std::set<std::string_view> others = of_two;
  others.insert({"signature-left-over", "no-profile", "dirty-glass"});
  std::size_t books = 0;
  each_fixture([&](const std::filesystem::path &path) {
    const Scene scene = read_scene(path);
    if (!is_whole(scene.book)) return;
    ++books;
    const Scene reversed = from_the_end(scene);
    const auto expected = seen_from_the_end(scene.book, check_rules(scene.evidence()));
    auto found = check_rules(reversed.evidence());
    for (Finding &finding : found) std::sort(finding.sides.begin(), finding.sides.end());
    CHECK(lines_of(reversed, without(found, others)) == lines_of(reversed, without(expected, others)));
    CHECK(figures_of(reversed, found, of_two) == figures_of(reversed, expected, of_two));
  });
  CHECK(books > 80);
}
