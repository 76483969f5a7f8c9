#include "reports/content/picture_words.h"

#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

/// A picture of 1200 x 800 in two frames, one that nobody uses, and one that is missing.
Evidence three_pictures() {
  Book book = small_book();
  book.contributors = {{"z", "Zofia Żółkiewska", "", {}}};
  book.pictures = {photo("a", "a.jpg"), photo("b", "b.jpg"), photo("c", "c.jpg")};
  book.pictures[0].contributor = 0;
  book.pictures[1].original->lost = true;
  book.pictures[1].original->size.reset();
  book.pages[0].frames = {frame("f1", 0, 20, 20, 120, 80), frame("f2", 0, 20, 120, 60, 40)};
  book.pages[1].frames = {frame("", 2, 20, 20, 60, 40)};
  Evidence evidence = checked(std::move(book)).evidence;
  evidence.pictures[2] = {};
  evidence.pictures[2].missing = true;
  evidence.pictures[2].fault = Fault{"there is no such file", "c.jpg", "Send it."};
  evidence.frames[2].laid.reset();
  return evidence;
}

std::string row(const PictureWords &words, std::string_view label) {
  const auto found = std::ranges::find(words.facts, label, &FactRow::label);
  return found == words.facts.end() ? std::string() : found->text;
}

} // namespace

TEST_CASE("a picture is told with its original, its owner, and every frame that shows it") {
  const auto words = picture_words(three_pictures());
  REQUIRE(words.size() == 3);
  CHECK(words[0].about == "print, 150 × 100 mm · Zofia Żółkiewska");
  CHECK(words[1].about == "print, lost");
  REQUIRE(words[0].uses.size() == 2);
  CHECK(words[0].uses[0].place == "Page 1, f1");
  CHECK(words[0].uses[0].figures == "120 × 80 mm, 254 ppi");
  CHECK(words[0].uses[1].figures == "60 × 40 mm, 508 ppi");
  CHECK(words[1].uses.empty());
  REQUIRE(words[2].uses.size() == 1);
  CHECK(words[2].uses[0].place == "Pages 2–3");
  CHECK(words[2].uses[0].figures == "its size is not known");
  CHECK(row(words[0], "Pixels") == "1200 × 800, 0.9 megapixels");
  CHECK(row(words[2], "Fault") == "there is no such file");
}

TEST_CASE("how large a picture may be: its pixels at both bars, and fewer where software added some") {
  Evidence evidence = three_pictures();
  // 1200 / 300 in = 101.6 mm, 800 / 300 in = 67.7 mm; at 200 ppi half as much again.
  CHECK(picture_words(evidence)[0].largest ==
        "Uncropped up to 101 × 67 mm at 300 ppi, at the most 152 × 101 mm at 200 ppi.");
  CHECK(picture_words(evidence)[2].largest.empty());
  evidence.shown[0] = Shown{};
  evidence.shown[0]->detail.upsampling.certainty = Certainty::firm;
  evidence.shown[0]->detail.upsampling.factor = 2;
  CHECK(picture_words(evidence)[0].largest ==
        "Uncropped up to 50 × 33 mm at 300 ppi, at the most 76 × 50 mm at 200 ppi, counting its pixels "
        "before it was enlarged.");
}

TEST_CASE("what was measured is that of the frame that prints it most coarsely") {
  Evidence evidence = three_pictures();
  evidence.shown[0] = Shown{}; // 254 ppi
  evidence.shown[1] = Shown{}; // 508 ppi
  evidence.shown[0]->tone.range = 0.5;
  evidence.shown[1]->tone.range = 1;
  evidence.shown[0]->detail.upsampling.certainty = Certainty::no;
  evidence.shown[0]->detail.upsampling.detail = {true, 0.5, 0.5};
  const auto words = picture_words(evidence);
  CHECK(row(words[0], "Tones").find("span 50 %") == 0);
  CHECK(words[0].uses[0].figures == "120 × 80 mm, 254 ppi, detail for about 127 ppi");
}

TEST_CASE("a patch says what it shows") {
  const Evidence evidence = three_pictures();
  CHECK(patch_words(evidence, {{{475, 275, 250, 250}, 250, 250, {}}, 0}) == "25 × 25 mm of page 1, 254 ppi");
}
