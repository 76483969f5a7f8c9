#include "engine/xml/characters.h"
#include "reports/terminal/summary.h"
#include "reports/terminal/wrap.h"
#include "tests/support/catch.h"

#include <sstream>

using namespace stoneproof;
using namespace stoneproof::terminal;

namespace {

std::vector<std::string> lines_of(const std::string &text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

content::ProofContent content_with(std::size_t holds, const std::string &words) {
  content::ProofContent content;
  content.title = "The harbour";
  content.counts = {holds, 2, 1};
  content.verdict = content::verdict_line(content.counts);
  content.press = "Checked against the press sheet “Common practice” (built in). The printer’s own "
                  "specification has the last word.";
  for (std::size_t i = 0; i < holds + 3; ++i) {
    content::Mark mark;
    mark.number = static_cast<int>(i) + 1;
    mark.grade = i < holds ? Grade::hold : i < holds + 2 ? Grade::query : Grade::note;
    mark.page = "Page " + std::to_string(i + 1);
    mark.subject = "scans/" + words + ".tif";
    mark.message = words + ".";
    content.marks.push_back(mark);
    content.gravest_first.push_back(i);
  }
  return content;
}

} // namespace

TEST_CASE("text is broken at spaces") {
  struct Case {
    std::string text;
    int width;
    std::vector<std::string> lines;
  };
  for (const Case &c : std::vector<Case>{
           {"", 10, {}},
           {"   ", 10, {}},
           {"one", 3, {"one"}},
           {"one two", 7, {"one two"}},
           {"one two", 6, {"one", "two"}},
           {" one  two ", 9, {"one two"}},
           {"a longest b", 3, {"a", "longest", "b"}},
           {"żółw żółw", 9, {"żółw żółw"}},
           {"żółw żółw", 8, {"żółw", "żółw"}},
           {"one", 0, {"one"}},
       })
    CHECK(wrapped(c.text, c.width) == c.lines);
}

TEST_CASE("text is shortened with an ellipsis") {
  CHECK(shortened("harbour", 7) == "harbour");
  CHECK(shortened("harbour", 6) == "harbo…");
  CHECK(shortened("żółw", 3) == "żó…");
  CHECK(shortened("harbour", 1) == "…");
}

TEST_CASE("a summary of one finding, to the byte") {
  content::ProofContent content = content_with(1, "Prints at 148 ppi");
  content.marks.resize(1);
  content.gravest_first.resize(1);
  content.counts = {1, 0, 0};
  CHECK(summary(content, {"album.proof.pdf", "album.record.json"}, 80, false) ==
        "The harbour\n"
        "Held: 1 thing must be mended before this book goes to the printer.\n"
        "1 hold, 0 queries, 0 notes\n"
        "\n"
        "Hold   Page 1  scans/Prints at 148 ppi.tif\n"
        "       Prints at 148 ppi.\n"
        "\n"
        "Proof   album.proof.pdf\n"
        "Record  album.record.json\n"
        "Checked against the press sheet “Common practice” (built in). The printer’s own\n"
        "specification has the last word.\n");
}

TEST_CASE("a summary fits a screen, however much there is to tell") {
  const std::string many(300, 'x');
  std::string words;
  for (int i = 0; i < 60; ++i) words += "word ";
  for (const std::size_t holds : {0u, 1u, 5u, 9u, 600u})
    for (const std::string &text : {std::string("short"), words, many})
      for (const int width : {40, 80}) {
        content::ProofContent content = content_with(holds, text);
        content.title = text;
        content.press = text + " " + text + " " + text;
        const auto lines = lines_of(summary(content, {"p.pdf", "r.json"}, width, false));
        CHECK(lines.size() <= most_summary_lines);
        for (const std::string &line : lines)
          CHECK(code_points_of(line).size() <= static_cast<std::size_t>(width));
      }
}

TEST_CASE("what does not fit is counted") {
  const auto lines = lines_of(summary(content_with(600, "Soft"), {"p.pdf", "r.json"}, 80, false));
  std::size_t told = 0;
  std::string more;
  for (const std::string &line : lines) {
    told += line.rfind("Hold ", 0) == 0;
    if (line.rfind("and ", 0) == 0) more = line;
  }
  CHECK(told >= 5);
  CHECK(more == "and " + std::to_string(603 - told) + " more in the proof");
}

TEST_CASE("no control character of a file name reaches the terminal") {
  content::ProofContent content = content_with(1, "Soft");
  content.marks[0].subject = "a\x1b[2J.tif";
  content.title = "bell\a";
  const std::string text = summary(content, {"\x1b.pdf", "r\n.json"}, 80, false);
  CHECK(text.find('\x1b') == std::string::npos);
  CHECK(text.find('\a') == std::string::npos);
  CHECK(text.find("r\xEF\xBF\xBD.json") != std::string::npos);
}

TEST_CASE("only the verdict is bold") {
  const content::ProofContent content = content_with(1, "Soft");
  const std::string plain = summary(content, {"p.pdf", "r.json"}, 80, false);
  std::string bold = summary(content, {"p.pdf", "r.json"}, 80, true);
  const std::string verdict = content.verdict;
  const auto at = bold.find("\033[1m" + verdict + "\033[0m\n");
  REQUIRE(at != std::string::npos);
  bold.replace(at, verdict.size() + 8, verdict);
  CHECK(bold == plain);
}
