// Every sentence in every language, with the same values in it.
#include "reports/content/letter_words.h"

#include "tests/support/catch.h"

#include <algorithm>
#include <array>
#include <set>

using namespace stoneproof::content;

namespace {

std::multiset<std::string> names_in(std::string_view text) {
  std::multiset<std::string> names;
  for (auto open = text.find('{'); open != std::string_view::npos; open = text.find('{', open + 1))
    names.insert(std::string(text.substr(open + 1, text.find('}', open) - open - 1)));
  return names;
}

const Sentence *sentence(const LetterLanguage &language, Say say) {
  const auto found = std::find_if(language.sentences.begin(), language.sentences.end(),
                                  [&](const Sentence &each) { return each.say == say; });
  return found == language.sentences.end() ? nullptr : &*found;
}

std::string_view chosen(std::string_view person, std::string_view book) {
  return letter_language(std::array<std::string_view, 2>{person, book}).tag;
}

} // namespace

TEST_CASE("no language lacks a sentence, has one twice, or leaves a value out") {
  REQUIRE(letter_languages().size() >= 2);
  for (const LetterLanguage *language : letter_languages()) {
    CHECK(language->sentences.size() == say_count);
    for (std::size_t i = 0; i < say_count; ++i) {
      const Say say = static_cast<Say>(i);
      const Sentence *english = sentence(*letter_languages().front(), say);
      const Sentence *here = sentence(*language, say);
      CAPTURE(language->tag, i);
      REQUIRE(english);
      REQUIRE(here);
      CHECK_FALSE(here->text.empty());
      CHECK(names_in(here->text) == names_in(english->text));
      CHECK(std::count(here->text.begin(), here->text.end(), '{') ==
            std::count(here->text.begin(), here->text.end(), '}'));
    }
  }
}

TEST_CASE("two languages do not share a whole sentence") {
  for (std::size_t i = 0; i < say_count; ++i) {
    const Say say = static_cast<Say>(i);
    const std::string english = words(english_letters, say);
    if (english.size() < 25) continue; // names of units and the like
    CAPTURE(english);
    CHECK(words(german_letters, say) != english);
  }
}

TEST_CASE("the person's language counts, then the book's, then English") {
  CHECK(chosen("de", "en") == "de");
  CHECK(chosen("DE-at", "en") == "de");
  CHECK(chosen("", "de-CH") == "de");
  CHECK(chosen("en-GB", "de") == "en");
  CHECK(chosen("pl", "de") == "de");
  CHECK(chosen("den", "pl") == "en");
  CHECK(chosen("", "") == "en");
}

TEST_CASE("a value with braces in it is not looked into") {
  CHECK(words(english_letters, Say::greeting, {{"name", "{book} {"}}) == "Dear {book} {,");
  CHECK(words(english_letters, Say::size, {{"width", "3"}}) == "3 ×  cm");
}
