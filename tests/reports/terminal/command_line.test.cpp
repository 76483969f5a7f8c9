#include "engine/press/read.h"
#include "engine/rules/rule.h"
#include "engine/xml/characters.h"
#include "tests/reports/terminal/album.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

const std::string general = "  Run stoneproof --help to see how it is used.\n";
const std::string of_proof = "  Run stoneproof proof --help to see how it is used.\n";
const std::string of_measure = "  Run stoneproof measure --help to see how it is used.\n";
const std::string of_press = "  Run stoneproof press --help to see how it is used.\n";
const std::string of_explain = "  Run stoneproof explain --help to see how it is used.\n";

} // namespace

TEST_CASE("a wrong command line is told, with what was probably meant") {
  struct Case {
    Words words;
    std::string err;
  };
  const AlbumFolder album;
  for (const Case &c : std::vector<Case>{
           {{}, "stoneproof: a verb is missing\n" + general},
           {{"prof", "album.xml"}, "stoneproof: there is no verb \"prof\" (did you mean proof?)\n" + general},
           {{"PROOF", "album.xml"},
            "stoneproof: there is no verb \"PROOF\" (did you mean proof?)\n" + general},
           {{"album.xml"}, "stoneproof: there is no verb \"album.xml\"\n" + general},
           {{"--verson"},
            "stoneproof: there is no option \"--verson\" (did you mean --version?)\n" + general},
           {{"help", "prof"}, "stoneproof: there is no verb \"prof\" (did you mean proof?)\n" + general},
           {{"proof"}, "stoneproof: the BOOK to check is missing\n" + of_proof},
           {{"proof", ""}, "stoneproof: the BOOK to check is missing\n" + of_proof},
           {{"proof", "album.xml", "--pres", "x.xml"},
            "stoneproof: there is no option \"--pres\" (did you mean --press?)\n" + of_proof},
           {{"proof", "album.xml", "--pres=x.xml"},
            "stoneproof: there is no option \"--pres\" (did you mean --press?)\n" + of_proof},
           {{"proof", "album.xml", "-q"}, "stoneproof: there is no option \"-q\"\n" + of_proof},
           {{"proof", "album.xml", "held.xml"},
            "stoneproof: nothing is expected at \"held.xml\"\n" + of_proof},
           {{"proof", "album.xml", "--out"}, "stoneproof: --out wants a value: FILE\n" + of_proof},
           {{"proof", "album.xml", "--out="}, "stoneproof: --out wants a value: FILE\n" + of_proof},
           {{"proof", "album.xml", "--out", ""}, "stoneproof: --out wants a value: FILE\n" + of_proof},
           {{"proof", "album.xml", "--out", "--json"}, "stoneproof: --out wants a value: FILE\n" + of_proof},
           {{"proof", "album.xml", "--jobs", "0"},
            "stoneproof: --jobs wants a whole number from 1 to 256, not \"0\"\n" + of_proof},
           {{"proof", "album.xml", "--jobs", "-1"},
            "stoneproof: --jobs wants a whole number from 1 to 256, not \"-1\"\n" + of_proof},
           {{"proof", "album.xml", "--jobs=abc"},
            "stoneproof: --jobs wants a whole number from 1 to 256, not \"abc\"\n" + of_proof},
           {{"proof", "album.xml", "--jobs", "99999999999999999999"},
            "stoneproof: --jobs wants a whole number from 1 to 256, not \"99999999999999999999\"\n" +
                of_proof},
           {{"proof", "album.xml", "--most-pixels", "1e9"},
            "stoneproof: --most-pixels wants a whole number from 1 to 1000000000000, not \"1e9\"\n" +
                of_proof},
           {{"proof", "album.xml", "--most-memory", "NaN"},
            "stoneproof: --most-memory wants a whole number from 1 to 1000000, not \"NaN\"\n" + of_proof},
           {{"mesure", "a.tif"},
            "stoneproof: there is no verb \"mesure\" (did you mean measure?)\n" + general},
           {{"measure"}, "stoneproof: a PICTURE to measure is missing\n" + of_measure},
           {{"measure", "a.tif", ""}, "stoneproof: a PICTURE to measure is missing\n" + of_measure},
           {{"measure", "a.tif", "--jsn"},
            "stoneproof: there is no option \"--jsn\" (did you mean --json?)\n" + of_measure},
           {{"measure", "a.tif", "--out", "x"}, "stoneproof: there is no option \"--out\"\n" + of_measure},
           {{"measure", "a.tif", "--press"}, "stoneproof: --press wants a value: SHEET\n" + of_measure},
           {{"measure", "a.tif", "--jobs", "0"},
            "stoneproof: --jobs wants a whole number from 1 to 256, not \"0\"\n" + of_measure},
           {{"press", "sheet.xml"}, "stoneproof: nothing is expected at \"sheet.xml\"\n" + of_press},
           {{"explain", "a", "b"}, "stoneproof: nothing is expected at \"b\"\n" + of_explain},
           {{"explain", "too-few-pixel"},
            "stoneproof: there is no rule \"too-few-pixel\" (did you mean too-few-pixels?)\n"
            "  Run stoneproof explain to see the list.\n"},
           {{"explain", "\x1b[31m"},
            "stoneproof: there is no rule \"\xEF\xBF\xBD[31m\"\n  Run stoneproof explain to see the list.\n"},
       }) {
    const Ran ran = run(album.path, c.words);
    CHECK(ran.err == c.err);
    CHECK(ran.out.empty());
    CHECK(ran.status == 2);
  }
  CHECK_FALSE(fs::exists(album.path / "album.proof.pdf"));
  CHECK_FALSE(fs::exists(album.path / "album.record.json"));
}

TEST_CASE("SOURCE_DATE_EPOCH is whole seconds or a fault") {
  const AlbumFolder album;
  for (const char *wrong : {"", "-1", "yesterday", "1.5", " 1", "253402300800"}) {
    const Ran ran = run(album.path, {"proof", "album.xml"}, {{"SOURCE_DATE_EPOCH", wrong}});
    CHECK(ran.err ==
          "SOURCE_DATE_EPOCH: this is not a date: \"" + std::string(wrong) +
              "\"\n  Set it to whole seconds since 1970-01-01 UTC, up to the year 9999, or unset it.\n");
    CHECK(ran.status == 2);
  }
  CHECK_FALSE(fs::exists(album.path / "album.record.json"));
}

TEST_CASE("help shows examples first, fits 80 columns and names every option") {
  const Folder folder;
  struct Case {
    Words words;
    std::string begins;
    Words names;
  };
  for (const Case &c : std::vector<Case>{
           {{"--help"},
            "stoneproof VERB [options]\n\nExamples\n",
            {"proof", "letters", "plan", "measure", "press", "explain", "--help", "--version"}},
           {{"-h"}, "stoneproof VERB [options]\n\nExamples\n", {"proof", "press", "explain"}},
           {{"proof", "--help"},
            "stoneproof proof BOOK [options]\n  checks a book, writes its proof and its record\n\nExamples\n",
            {"--out FILE", "--record FILE", "--marks FILE", "--cover-marks FILE", "--press SHEET", "--json",
             "--jobs N", "--most-pixels N", "--most-memory MB", "SOURCE_DATE_EPOCH", "Exit status: 0"}},
           {{"letters", "--help"},
            "stoneproof letters BOOK [options]\n  writes each contributor what to do for which "
            "picture\n\nExamples\n",
            {"--dir FOLDER", "--csv FILE", "--press SHEET", "Exit status: 0"}},
           {{"plan", "--help"},
            "stoneproof plan BOOK [options]\n  tells how to scan each original, before any scan "
            "exists\n\nExamples\n",
            {"--out FILE", "--csv FILE", "--press SHEET", "Exit status: 0"}},
           {{"measure", "--help"},
            "stoneproof measure PICTURE... [options]\n  tells what picture files are good for, without a "
            "book\n\nExamples\n",
            {"--press SHEET", "--json", "--quick", "--jobs N", "--most-seconds N", "Exit status: 0"}},
           {{"press", "--help"},
            "stoneproof press\n  prints the built-in press sheet, commented, ready to edit\n\nExamples\n",
            {"--help"}},
           {{"explain", "--help"},
            "stoneproof explain [RULE]\n  says why a rule exists, what it measures, how to mend "
            "it\n\nExamples\n",
            {"--help"}},
       }) {
    const Ran ran = run(folder.path, c.words);
    CHECK(ran.status == 0);
    CHECK(ran.err.empty());
    CHECK(ran.out.substr(0, c.begins.size()) == c.begins);
    for (const std::string &name : c.names) {
      INFO(name);
      CHECK(ran.out.find(name) != std::string::npos);
    }
    std::istringstream lines(ran.out);
    for (std::string line; std::getline(lines, line);) {
      INFO(line);
      CHECK(line.size() <= 80);
    }
  }
}

TEST_CASE("help is a verb too") {
  const Folder folder;
  const auto same = [&](const Words &one, const Words &other) {
    const Ran ran = run(folder.path, one);
    CHECK(ran.status == 0);
    CHECK(ran.err.empty());
    CHECK(ran.out == run(folder.path, other).out);
  };
  same({"help"}, {"--help"});
  same({"help", "--help"}, {"--help"});
  for (const char *verb : {"proof", "letters", "plan", "draft", "measure", "compare", "press", "explain"})
    same({"help", verb}, {verb, "--help"});
}

TEST_CASE("the version is printed") {
  const Folder folder;
  const Ran ran = run(folder.path, {"--version"});
  CHECK(ran.out == "stoneproof " STONEPROOF_VERSION "\n");
  CHECK(ran.status == 0);
}

TEST_CASE("the built-in press sheet is printed as it stands, and can be used as it is") {
  const AlbumFolder album;
  const Ran ran = run(album.path, {"press"});
  CHECK(ran.status == 0);
  CHECK(ran.out == built_in_press_sheet_text());
  write_file(album.path / "printer.xml", ran.out);
  CHECK(run(album.path, {"proof", "album.xml", "--press", "printer.xml"}).status == 0);
}

TEST_CASE("every rule is listed and explained by its own words") {
  const Folder folder;
  const Ran list = run(folder.path, {"explain"});
  CHECK(list.status == 0);
  for (const Rule *rule : all_rules()) {
    INFO(rule->id);
    CHECK(("\n" + list.out).find("\n" + std::string(rule->id) + " ") != std::string::npos);
    const Ran ran = run(folder.path, {"explain", std::string(rule->id)});
    CHECK(ran.status == 0);
    std::string words;
    std::istringstream lines(ran.out);
    for (std::string word; lines >> word;) words += word + " ";
    for (const std::string_view part : {rule->title, rule->why, rule->measure, rule->remedy})
      CHECK(words.find(part) != std::string::npos);
  }
}

TEST_CASE("an explanation is as wide as the terminal, from 40 to 100 columns") {
  const Folder folder;
  for (const auto &[columns, limit] :
       std::vector<std::pair<unsigned short, std::size_t>>{{60, 60}, {20, 40}, {300, 100}}) {
    const Ran ran = run_on_terminal(folder.path, {"explain", "too-few-pixels"}, columns);
    std::size_t longest = 0;
    std::istringstream lines(ran.out);
    for (std::string line; std::getline(lines, line);)
      longest = std::max(longest, code_points_of(line).size() - 1); // carriage return
    CHECK(longest <= limit);
    CHECK(longest > limit - 15);
  }
}

TEST_CASE("results that cannot be printed are told") {
  const AlbumFolder album;
  for (const Words &words :
       std::vector<Words>{{"press"}, {"explain"}, {"proof", "album.xml"}, {"measure", "scans/harbour.tif"}}) {
    const Ran ran = run(album.path, words, {}, "/dev/full");
    CHECK(ran.err == "standard output: the results cannot be printed (No space left on device)\n"
                     "  Send them somewhere else.\n");
    CHECK(ran.status == 4);
  }
}
