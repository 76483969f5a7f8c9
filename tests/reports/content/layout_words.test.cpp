// Near misses and type in words, to the letter.
#include "reports/content/sentences.h"

#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>

using namespace stoneproof;
using namespace stoneproof::content;
using namespace stoneproof::test;

namespace {

TextBlock text_at(TextKind kind, double x, double y, double width, double height, double pt = 9,
                  std::string words = "The mill in the summer of the flood") {
  TextBlock text;
  text.kind = kind;
  text.rect = {Length::of_mm(x), Length::of_mm(y), Length::of_mm(width), Length::of_mm(height)};
  text.type_size = Length::of_pt(pt);
  text.text = std::move(words);
  return text;
}

/// Message and remedy of the only finding of a rule on page 1, its frames drawn first unless `text_first`.
std::string told(std::string_view rule, std::vector<Frame> frames, std::vector<TextBlock> texts,
                 bool text_first = false) {
  Book book = small_book();
  book.pictures = {photo("p", "summer.jpg")};
  for (Frame &frame : frames) frame.order = text_first ? 2 : 0;
  for (TextBlock &text : texts) text.order = 1;
  book.pages[0].frames = std::move(frames);
  book.pages[0].texts = std::move(texts);
  const Checked one = checked(std::move(book), {9000, 9000});
  std::string words;
  for (const Finding &finding : one.findings)
    if (finding.rule == rule) words += message(one.evidence, finding) + " | " + remedy(one.evidence, finding);
  return words;
}

std::string message_of(std::string_view rule, std::vector<Frame> frames, std::vector<TextBlock> texts,
                       bool text_first = false) {
  const std::string words = told(rule, std::move(frames), std::move(texts), text_first);
  return words.substr(0, words.find(" | "));
}

} // namespace

TEST_CASE("frames that miss a line, and slivers, name the other frame") {
  CHECK(message_of("nearly-aligned", {frame("a", 0, 20, 20, 60, 40), frame("b", 0, 20.5, 65, 70, 40)}, {}) ==
        "Its left edge misses that of frame a by 0.5 mm.");
  CHECK(message_of("nearly-aligned", {frame("a", 0, 20, 20, 60, 40), frame("b", 0, 20.5, 65, 60.1, 40)},
                   {}) == "Its left and right edges miss those of frame a by up to 0.6 mm.");
  CHECK(message_of("sliver-overlap", {frame("a", 0, 20, 20, 60, 40), frame("b", 0, 78.5, 30, 60, 40)}, {}) ==
        "Lies on frame a by a strip of only 1.5 mm.");
}

TEST_CASE("captions: far, partly on a picture, without any") {
  CHECK(message_of("stray-caption", {frame("a", 0, 20, 20, 60, 60)},
                   {text_at(TextKind::caption, 20, 100, 60, 5)}) ==
        "Stands 20 mm from the nearest picture, that in frame a.");
  CHECK(told("stray-caption", {frame("a", 0, 20, 20, 60, 60)}, {text_at(TextKind::caption, 60, 40, 60, 5)}) ==
        "Lies partly on frame a, by 5 mm. | Move the caption off the picture, or wholly onto a calm part of "
        "it.");
  CHECK(told("stray-caption", {}, {text_at(TextKind::caption, 60, 40, 60, 5)}) ==
        "No picture stands on this page. | " + std::string(find_rule("stray-caption")->remedy));
}

TEST_CASE("text under and on pictures") {
  const std::vector<Frame> one = {frame("a", 0, 20, 20, 100, 60)};
  CHECK(message_of("hidden-text", one, {text_at(TextKind::body, 30, 30, 60, 10)}, true) ==
        "All of this text lies under frame a, which was drawn later.");
  CHECK(message_of("hidden-text", one, {text_at(TextKind::body, 100, 30, 40, 10)}, true) ==
        "50 % of this text block lies under frame a, which was drawn later; words are lost, unless the text "
        "runs "
        "round it.");
  CHECK(message_of("hidden-text", one,
                   {text_at(TextKind::body, 100, 30, 40, 5, 9,
                            "The mill in the summer of the flood, seen from the bridge")},
                   true) ==
        "50 % of this text block lies under frame a, which was drawn later; the rest of it cannot hold the "
        "words.");
  CHECK(message_of("type-on-picture", one, {text_at(TextKind::body, 30, 30, 60, 10)}) ==
        "Stands on the picture in frame a: can it be read all along?");
  CHECK(message_of("type-on-picture", one, {text_at(TextKind::heading, 100, 30, 40, 10)}) ==
        "50 % of this text block stands on the picture in frame a, the rest beside it.");
}

TEST_CASE("type too small or too long, in points and millimetres that hide nothing") {
  CHECK(message_of("small-type", {}, {text_at(TextKind::body, 30, 30, 60, 10, 5.5)}) ==
        "Set in 5.5 pt; the press sheet wants at least 8 pt.");
  CHECK(message_of("small-type", {}, {text_at(TextKind::body, 30, 30, 60, 10, 7.9599)}) ==
        "Set in 7.95 pt; the press sheet wants at least 8 pt.");
  CHECK(message_of("overfull-text", {}, {text_at(TextKind::body, 30, 30, 20, 5, 12)}) ==
        "By a lean estimate, 12 pt of type needs at least 10.16 mm for these words; the block gives it 5 mm. "
        "The "
        "end of the text may be missing.");
}

TEST_CASE("margins are named from the binding, on a spread by its fold") {
  Book book = small_book();
  book.pages.clear();
  for (int number = 2; number <= 10; number += 2) {
    Page spread;
    spread.number = number;
    spread.kind = PageKind::spread;
    spread.texts = {text_at(TextKind::body, number == 6 ? 19.5 : 20, number == 6 ? 22 : 20, 160, 100),
                    text_at(TextKind::body, number == 8 ? 221 : 220, 20, 160, 100)};
    book.pages.push_back(spread);
  }
  const Checked one = checked(std::move(book));
  std::vector<std::string> words;
  for (const Finding &finding : one.findings)
    if (finding.rule == "stray-margin") words.push_back(message(one.evidence, finding));
  CHECK(words ==
        std::vector<std::string>{
            "Margin at the top, bottom, left and fold: one is 22 mm; on most pages of this side it is 20 mm.",
            "Margin at the fold and right: one is 19 mm; on most pages of this side it is 20 mm."});
}
