// Choosing a language and filling its sentences. The only ways in are the functions of letter_words.h; tested
// in tests/reports/content/letter_words.test.cpp.
#include "reports/content/letter_words.h"

#include <algorithm>
#include <array>

namespace stoneproof::content {

namespace {

constexpr std::array languages = {&english_letters, &german_letters};

/// "de" of "DE-at".
std::string primary(std::string_view tag) {
  std::string name(tag.substr(0, tag.find('-')));
  for (char &c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return name;
}

} // namespace

std::span<const LetterLanguage *const> letter_languages() { return languages; }

const LetterLanguage &letter_language(std::span<const std::string_view> tags) {
  for (const std::string_view tag : tags)
    for (const LetterLanguage *language : languages)
      if (language->tag == primary(tag)) return *language;
  return english_letters;
}

std::string words(const LetterLanguage &language, Say say, const Values &values) {
  const auto &sentences = language.sentences;
  const auto found = std::find_if(sentences.begin(), sentences.end(),
                                  [&](const Sentence &sentence) { return sentence.say == say; });
  if (found == sentences.end()) return {};
  std::string filled;
  std::string_view rest = found->text;
  for (auto open = rest.find('{'); open != std::string_view::npos; open = rest.find('{')) {
    const auto close = rest.find('}', open);
    const auto value = values.find(rest.substr(open + 1, close - open - 1));
    filled += rest.substr(0, open);
    if (value != values.end()) filled += value->second;
    rest.remove_prefix(close + 1);
  }
  return filled += rest;
}

} // namespace stoneproof::content
