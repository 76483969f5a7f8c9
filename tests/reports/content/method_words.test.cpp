#include "reports/content/method_words.h"

#include "engine/press/read.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>

using namespace stoneproof;
using namespace stoneproof::content;

namespace {

std::string part(const MethodWords &words, std::string_view heading) {
  const auto found = std::ranges::find(words.parts, heading, &MethodPart::heading);
  return found == words.parts.end() ? std::string() : found->text;
}

} // namespace

TEST_CASE("each rule that found something is named once, with how often and what it measures") {
  Book book = test::small_book();
  book.pages[0].frames = {test::frame("a", {}, 20, 20, 50, 50), test::frame("b", {}, 20, 90, 50, 50)};
  const Checked checked = test::checked(std::move(book));
  const MethodWords words = method_words(checked.evidence, checked.findings);
  REQUIRE(words.rules.size() == 1);
  CHECK(words.rules[0].title == find_rule("empty-frame")->title);
  CHECK(words.rules[0].count == "2 times");
  CHECK(words.rules[0].measure == find_rule("empty-frame")->measure);
  // Rules of finished PDFs have nothing to look at here.
  const auto silent = static_cast<std::size_t>(
      std::ranges::count_if(all_rules(), [](const Rule *rule) { return !rule->of_finished_pdf; }));
  CHECK(words.silent == silent - 1);
}

TEST_CASE("the method tells what was not done") {
  Checked checked = test::checked(test::small_book());
  checked.evidence.press.profile = nullptr;
  const MethodWords whole = method_words(checked.evidence, checked.findings);
  CHECK(part(whole, "The pictures").find("to its last row") != std::string::npos);
  CHECK(part(whole, "Colours and inks").find("names no profile") != std::string::npos);
  CHECK_FALSE(part(whole, "True-size patches").empty());
  checked.evidence.pixels_measured = false;
  checked.evidence.press.profile = std::make_shared<PressProfile>();
  const MethodWords quick = method_words(checked.evidence, checked.findings);
  CHECK(part(quick, "The pictures").find("quick proof") != std::string::npos);
  CHECK(part(quick, "True-size patches").empty());
  CHECK(part(quick, "Colours and inks") == "Colours and inks were not looked at in this quick proof.");
}

TEST_CASE("fragile originals and the printer's last word are spoken of") {
  const Checked checked = test::checked(test::small_book());
  const std::string limits = part(method_words(checked.evidence, checked.findings), "Limits");
  CHECK(limits.find("conservator") != std::string::npos);
  CHECK(limits.find("The printer’s own specification always has the last word.") != std::string::npos);
}
