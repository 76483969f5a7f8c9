#include "engine/xml/did_you_mean.h"
#include "tests/support/catch.h"

using namespace stoneproof;

TEST_CASE("the nearest known word is offered, or none") {
  const std::vector<std::string_view> known{"width", "height", "x", "y", "turn", "mirror", "across-gutter"};
  struct Case {
    std::string_view word;
    std::string_view offered; // empty: none
  };
  const Case cases[] = {
      {"widht", "width"},  {"wdth", "width"}, {"Width", "width"}, {"HEIGHT", "height"},
      {"hight", "height"}, {"trun", "turn"},  {"X", "x"},         {"acros-guter", "across-gutter"},
      {"colour", ""},      {"breadth", ""},   {"rotation", ""},   {"", "x"}};
  for (const Case &c : cases) {
    INFO(c.word);
    CHECK(did_you_mean(c.word, known).value_or("") == c.offered);
  }
  CHECK(suggestion("widht", known) == " (did you mean width?)");
  CHECK(suggestion("colour", known).empty());
  CHECK_FALSE(did_you_mean(std::string(10000, 'w'), known));
  CHECK_FALSE(did_you_mean("width", {}));
}
