#include "reports/pdf/syntax.h"
#include "tests/support/catch.h"

#include <cmath>
#include <limits>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::pdf;
using namespace stoneproof::literals;

TEST_CASE("numbers are short and never have an exponent") {
  for (const auto &[value, text] : std::vector<std::pair<double, std::string>>{{0, "0"},
                                                                               {-0.0004, "0"},
                                                                               {1, "1"},
                                                                               {-1.5, "-1.5"},
                                                                               {0.0005, "0.001"},
                                                                               {595.2755905, "595.276"},
                                                                               {100, "100"},
                                                                               {-0.25, "-0.25"},
                                                                               {1e12, "1000000000000"},
                                                                               {1e300, "9000000000000"},
                                                                               {-INFINITY, "-9000000000000"},
                                                                               {NAN, "0"}}) {
    CHECK(number(value) == text);
  }
  CHECK(points(1_in) == "72");
}

TEST_CASE("text strings are literal where they can be") {
  CHECK(text_string("") == "()");
  CHECK(text_string("a (b) \\") == "(a \\(b\\) \\\\)");
  CHECK(text_string("\u0142") == "<FEFF0142>");
  CHECK(text_string("a\nb") == "<FEFF0061000A0062>");
  CHECK(text_string("\U0001F600") == "<FEFFD83DDE00>");
  CHECK(text_string("\xFF") == "<FEFFFFFD>");
}

TEST_CASE("dates are in UTC and inside four digits of the year") {
  CHECK(date_string(0) == "(D:19700101000000Z)");
  CHECK(date_string(1'700'000'000) == "(D:20231114221320Z)"); // date -u -d @1700000000
  CHECK(date_string(std::numeric_limits<std::int64_t>::max()) == "(D:99991231235959Z)");
  CHECK(date_string(-1) == "(D:19700101000000Z)");
  CHECK(xmp_date(1'700'000'000) == "2023-11-14T22:13:20Z");
}

TEST_CASE("a rectangle is measured from the bottom") {
  CHECK(rectangle({10_pt, 20_pt, 30_pt, 40_pt}, 100_pt) == "[10 40 40 80]");
}
