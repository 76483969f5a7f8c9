// Finds the nearest known word by the restricted edit distance (optimal string alignment).
// Tested in tests/engine/xml/did_you_mean.test.cpp.
#include "engine/xml/did_you_mean.h"

#include "engine/xml/characters.h"

#include <algorithm>

namespace stoneproof {
namespace {

constexpr std::size_t longest_word = 64; // longer ones are no slips of the finger

std::u32string folded(std::string_view word) {
  std::u32string letters = code_points_of(word);
  for (char32_t &c : letters)
    if (c >= U'A' && c <= U'Z') c += U'a' - U'A';
  return letters;
}

std::size_t distance(const std::u32string &a, const std::u32string &b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replaced});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

} // namespace

std::optional<std::string_view> did_you_mean(std::string_view word,
                                             const std::vector<std::string_view> &known) {
  if (word.size() > longest_word) return std::nullopt;
  const std::u32string letters = folded(word);
  std::size_t least = std::max<std::size_t>(1, letters.size() / 3) + 1;
  std::optional<std::string_view> nearest;
  for (const std::string_view candidate : known) {
    if (candidate.size() > longest_word) continue;
    const std::size_t far = distance(letters, folded(candidate));
    if (far >= least) continue;
    least = far;
    nearest = candidate;
  }
  return nearest;
}

std::string suggestion(std::string_view word, const std::vector<std::string_view> &known) {
  const auto nearest = did_you_mean(word, known);
  return nearest ? " (did you mean " + printable(*nearest) + "?)" : std::string();
}

} // namespace stoneproof
