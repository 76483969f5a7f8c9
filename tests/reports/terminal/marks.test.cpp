// Marks for the finished PDF on the command line, checked against the record by a script with arithmetic of
// its own.
#include "tests/engine/xml/xmllint.h"
#include "tests/reports/terminal/album.h"

using namespace stoneproof::test;

namespace {

/// Pictures that are missing, so that every frame has a hold, under names in several scripts; frames that lie
/// on both pages of a spread, hang off the page, are turned, and lie off it altogether.
const std::string marked_xml = R"(<?xml version="1.0" encoding="UTF-8"?>
<book xmlns="urn:stoneproof:book:1" title="Żółć &amp; &lt;夏&gt;" language="en">
  <trim width="200mm" height="250mm"/>
  <bleed top="3mm" bottom="4mm" outside="5mm" inside="1mm"/>
  <safe-margin top="5mm" bottom="5mm" outside="5mm" inside="5mm"/>
  <binding kind="case" gutter-loss="6mm"/>
  <stocks><stock part="block" caliper="0.12mm"/></stocks>
  <contributors><contributor id="ёлка" name="Ёлка &quot;&amp;&lt;&gt;&quot; Żółć"/></contributors>
  <pictures>
    <picture id="a" file="one&#10;two ]]&gt; &amp; &lt;b&gt; &quot;c&quot;.tif" contributor="ёлка"/>
    <picture id="夏" file="夏休み/📷.tif"/>
    <picture id="harbour" file="scans/harbour.tif"/>
  </pictures>
  <pages>
    <page number="1">
      <frame id="plain" picture="a" x="20mm" y="30mm" width="100mm" height="50mm"/>
      <frame id="hangs&lt;off&gt;" picture="a" x="150mm" y="200mm" width="100mm" height="100mm"/>
      <frame id="поворот" picture="夏" x="40mm" y="100mm" width="80mm" height="40mm" turn="30"/>
      <frame id="away" picture="夏" x="400mm" y="100mm" width="80mm" height="40mm"/>
      <frame id="large" picture="harbour" x="20mm" y="150mm" width="6in" height="4in" turn="-3.5"/>
    </page>
    <spread number="2">
      <frame id="left" picture="夏" x="-5mm" y="-3mm" width="120mm" height="100mm"/>
      <frame id="right" picture="夏" x="220mm" y="20mm" width="120mm" height="100mm"/>
      <frame id="across" picture="夏" x="150mm" y="130mm" width="120mm" height="100mm" across-gutter="yes"/>
    </spread>
    <blank number="4" count="12"/>
  </pages>
  <cover width="438mm" height="256mm" spine="7mm">
    <frame id="front" picture="a" x="250mm" y="-19mm" width="207mm" height="294mm"/>
  </cover>
</book>
)";

struct MarkedFolder : Folder {
  MarkedFolder() {
    write_file(path / "scans/harbour.tif", gray_tiff(600, 400));
    write_file(path / "book.xml", marked_xml);
  }
  Ran proof(Words words) const {
    words.insert(words.begin(), {"proof", "book.xml", "--quick"});
    return run(path, words);
  }
};

std::string checked_by_script(const Folder &folder, const std::string &marks) {
  return print_of("cd '" + folder.path.string() +
                  "' && /usr/bin/python3 '" STONEPROOF_SOURCE_DIR
                  "/tests/reports/terminal/check_marks.py' book.xml book.record.json " +
                  marks + " 2>&1")
      .out;
}

} // namespace

TEST_CASE("every finding has its marks at its place on the finished PDF") {
  const MarkedFolder folder;
  const Untouched book(folder / "book.xml");
  const Ran ran = folder.proof({"--marks", "book.xfdf", "--cover-marks", "cover.xfdf"});
  CHECK(ran.err.empty());
  CHECK(ran.status == 1);
  CHECK(book.still());
  CHECK(ran.out.find("\nMarks   book.xfdf\nMarks   cover.xfdf\n") != std::string::npos);
  const std::string said = checked_by_script(folder, "book.xfdf cover.xfdf");
  INFO(said);
  CHECK(said.ends_with(" marks, each at its place\n"));
  const auto verdicts = ask_xmllint(STONEPROOF_SOURCE_DIR "/schema/marks.xsd",
                                    {content_of(folder / "book.xfdf"), content_of(folder / "cover.xfdf")});
  for (const Verdict &verdict : verdicts) {
    INFO(verdict.messages);
    CHECK(verdict.accepted);
  }
}

TEST_CASE("without a file for the cover's marks, the block's tell of the cover") {
  const MarkedFolder folder;
  CHECK(folder.proof({"--marks", "book.xfdf"}).status == 1);
  const std::string said = checked_by_script(folder, "book.xfdf");
  INFO(said);
  CHECK(said.ends_with(" marks, each at its place\n"));
  CHECK(content_of(folder / "book.xfdf").find(">Hold. Cover · ") != std::string::npos);
  CHECK(folder.proof({"--cover-marks", "cover.xfdf"}).status == 1);
  CHECK(content_of(folder / "cover.xfdf").find(">Hold. Cover · ") != std::string::npos);
}

TEST_CASE("a script that checks marks refuses those that are moved, missing or reworded") {
  const MarkedFolder folder;
  folder.proof({"--marks", "book.xfdf"});
  const std::string sound = content_of(folder / "book.xfdf");
  const auto spoiled = [&](const std::string &from, const std::string &to) {
    std::string text = sound;
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    write_file(folder / "spoiled.xfdf", text.replace(at, from.size(), to));
    return checked_by_script(folder, "spoiled.xfdf");
  };
  CHECK(spoiled("<square page=\"0\"", "<square page=\"1\"").find(" in place of ") != std::string::npos);
  CHECK(spoiled("<square page=\"0\" rect=\"", "<square page=\"0\" rect=\"1").find("place of") !=
        std::string::npos);
  CHECK(spoiled("<contents>Hold.", "<contents>Note.").find("no grade in") == 0);
  const auto end = sound.find("</square>\n") + 10, begin = sound.rfind("<square", end - 1);
  CHECK_FALSE(spoiled(sound.substr(begin, end - begin), "").ends_with("each at its place\n"));
}

TEST_CASE("marks carry the date of SOURCE_DATE_EPOCH, and the same inputs give the same bytes") {
  const MarkedFolder folder;
  for (const char *name : {"first.xfdf", "second.xfdf"})
    run(folder.path, {"proof", "book.xml", "--quick", "--marks", name},
        {{"SOURCE_DATE_EPOCH", "951782400"}, {"TZ", "Asia/Tokyo"}});
  CHECK(content_of(folder / "first.xfdf") == content_of(folder / "second.xfdf"));
  CHECK(content_of(folder / "first.xfdf").find(" date=\"D:20000229000000Z\"") != std::string::npos);
}

TEST_CASE("marks never replace an input or another output, and want a cover to be for") {
  const MarkedFolder folder;
  write_file(folder / "album.xml", album_xml(harbour, harbour_well));
  struct Case {
    Words words;
    int status;
    std::string err;
  };
  const std::string rename = "\n  Give the output another name.\n";
  const std::string picture =
      "scans/harbour.tif: this output would replace an input, a picture of the book" + rename;
  const std::string another = "\n  Give one of them another name.\n";
  for (const Case &c : std::vector<Case>{
           {{"book.xml", "--marks", "book.xml"},
            2,
            "book.xml: this output would replace an input, the description of the book" + rename},
           {{"book.xml", "--marks", "scans/harbour.tif"}, 2, picture},
           {{"book.xml", "--cover-marks", "scans/harbour.tif"}, 2, picture},
           {{"book.xml", "--marks", "book.record.json"},
            2,
            "book.record.json: the record and the marks would be the same file" + another},
           {{"book.xml", "--marks", "m", "--cover-marks", "./m"},
            2,
            "./m: the marks and the marks of the cover would be the same file" + another},
           {{"book.xml", "--marks", "none/m"},
            4,
            "none: the folder does not exist\n  Create it, or write somewhere else.\n"},
           {{"book.xml", "--marks"},
            2,
            "stoneproof: --marks wants a value: FILE\n  Run stoneproof proof --help to see how it is "
            "used.\n"},
           {{"album.xml", "--cover-marks", "m"},
            2,
            "album.xml: the book describes no cover\n  Leave --cover-marks out, or describe the cover.\n"},
       }) {
    CAPTURE(c.words);
    Words words = c.words;
    words.insert(words.begin(), "proof");
    const Ran ran = run(folder.path, words);
    CHECK(ran.err == c.err);
    CHECK(ran.status == c.status);
    CHECK(ran.out.empty());
    CHECK_FALSE(fs::exists(folder / "book.proof.pdf"));
  }
}
