#include "reports/type/spans.h"
#include "reports/type/unicode.h"
#include "tests/support/catch.h"

#include <vector>

using namespace stoneproof;

namespace {

/// The line as it is seen from left to right, a span that runs right to left in angle brackets.
std::string seen(std::u32string_view text) {
  std::string out;
  for (const TextSpan &span : spans_of(text)) {
    const std::string part = utf8(text.substr(span.first, span.count));
    out += span.right_to_left ? "<" + part + ">" : "[" + part + "]";
  }
  return out;
}

} // namespace

TEST_CASE("a line is cut at spaces, scripts and directions") {
  struct Case {
    std::u32string text;
    std::string seen;
  };
  // The orders were worked out by hand from UAX #9.
  for (const Case &c : std::vector<Case>{
           {U"", ""},
           {U"two  words", "[two][  ][words]"},
           {U"(page 12)", "[(page][ ][12)]"},
           {U"\u0410\u0411-ab", "[\u0410\u0411-][ab]"},
           {U"\u05D0\u05D1", "<\u05D0\u05D1>"},
           {U"ab \u05D0 \u05D1 cd", "[ab][ ]<\u05D1>< ><\u05D0>[ ][cd]"},
           {U"ab \u05D0 12 \u05D1", "[ab][ ]<\u05D1>< >[12]< ><\u05D0>"},
           {U"\u05D0 ab cd \u05D1", "<\u05D1>< >[ab][ ][cd]< ><\u05D0>"},
           {U"\u05D0 ab 12", "[ab][ ][12]< ><\u05D0>"},
           {U"12 \u05D0", "<\u05D0>< >[12]"},
           {U"\u05D0 - ab", "[ab]< ><->< ><\u05D0>"},
           {U"ab 12 \u05D0", "[ab][ ][12][ ]<\u05D0>"},
       }) {
    INFO(utf8(c.text));
    CHECK(seen(c.text) == c.seen);
  }
}
