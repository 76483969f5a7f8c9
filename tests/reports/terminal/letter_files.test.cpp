// The names of the letters' files.
#include "reports/terminal/letter_files.h"

#include "tests/support/catch.h"

using namespace stoneproof::terminal;

TEST_CASE("a name of a person makes a name of a file that every folder takes") {
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"Maud Ellerby-Finch", "Maud Ellerby-Finch"},
      {"Ελένη Καλφάτη", "Ελένη Καλφάτη"},
      {"Żaneta Śliwińska", "Żaneta Śliwińska"},
      {"../../etc/passwd", "-..-etc-passwd"},
      {"A/B\\C:D*E?F\"G<H>I|J", "A-B-C-D-E-F-G-H-I-J"},
      {"two\nlines\tand \r\n more", "two lines and more"},
      {" . .hidden. . ", "hidden"},
      {"", "contributor"},
      {"...", "contributor"},
      {"\n", "contributor"},
      {"שרה", "שרה"},
  };
  for (const auto &[person, name] : cases) {
    CAPTURE(person);
    CHECK(letter_names({person}) == std::vector<std::string>{name + ".letter.pdf"});
  }
  std::string zeds, half;
  for (int i = 0; i < 200; ++i) zeds += "ż";
  for (int i = 0; i < 60; ++i) half += "ż"; // 120 bytes
  CHECK(letter_names({zeds}).front() == half + ".letter.pdf");
  CHECK(letter_names({"a" + zeds}).front().size() == 119 + std::string(".letter.pdf").size());
}

TEST_CASE("names that would be the same file are numbered, also where a number is somebody's name") {
  CHECK(letter_names({"Anna", "ANNA", "Anna 2", "", "\n", "A/B", "A:B"}) ==
        std::vector<std::string>{"Anna.letter.pdf", "ANNA 2.letter.pdf", "Anna 2 2.letter.pdf",
                                 "contributor.letter.pdf", "contributor 2.letter.pdf", "A-B.letter.pdf",
                                 "A-B 2.letter.pdf"});
}
