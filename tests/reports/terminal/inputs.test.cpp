#include "tests/reports/terminal/album.h"

#include <sys/stat.h>

using namespace stoneproof::test;

TEST_CASE("a description or a press sheet that is no such file is told") {
  const AlbumFolder album;
  write_file(album.path / "empty.xml", "");
  write_file(album.path / "garbage.xml", "\x01\x02\x03");
  write_file(album.path / "words.xml", "a book\n");
  write_file(album.path / "utf16.xml", std::string("\xFF\xFE<\0b\0", 6));
  fs::create_directory(album.path / "folder.xml");
  REQUIRE(mkfifo((album.path / "pipe.xml").c_str(), 0600) == 0);
  struct Case {
    std::string file, err;
  };
  for (const Case &c : std::vector<Case>{
           {"none.xml", "none.xml: there is no such file\n  Check the path.\n"},
           {"none/none.xml", "none/none.xml: there is no such file\n  Check the path.\n"},
           {"folder.xml",
            "folder.xml: this is a folder, not a file\n  Name the XML file inside the folder.\n"},
           {"pipe.xml", "pipe.xml: this is not a regular file\n  Name an ordinary XML file.\n"},
           {"/dev/null", "/dev/null: this is not a regular file\n  Name an ordinary XML file.\n"},
           {"empty.xml", "empty.xml: the file is empty\n  Name a file with a description.\n"},
           {"utf16.xml", "utf16.xml: the file is UTF-16; only UTF-8 is read\n  Save the file as UTF-8.\n"},
           {"garbage.xml", "garbage.xml:1:1: the character U+0001 is not allowed in XML\n    ���\n    ^\n  "
                           "Remove the character.\n"},
           {"words.xml",
            "words.xml:1:1: there is text before the first element\n    a book\n    ^\n  Remove the text.\n"},
       }) {
    const Ran as_book = run(album.path, {"proof", c.file});
    CHECK(as_book.err == c.err);
    CHECK(as_book.out.empty());
    CHECK(as_book.status == 3);
    const Ran as_press = run(album.path, {"proof", "album.xml", "--press", c.file});
    CHECK(as_press.err == c.err);
    CHECK(as_press.status == 3);
  }
  CHECK_FALSE(fs::exists(album.path / "album.record.json"));
}

TEST_CASE("every fault of the description and of the press sheet is shown in one run") {
  const AlbumFolder album;
  write_file(album.path / "wrong.xml", R"(<book xmlns="urn:stoneproof:book:1" title="Żółw" language="en">
  <trim width="200" height="-5mm"/>
  <bleed top="3mm" bottom="1e308mm" outside="NaN" inside="0mm"/>
  <safe-margin top="5mm" bottom="5mm" outside="5mm" inside="5mm"/>
  <binding kind="glued"/>
  <pictures>
    <picture id="żółw" fiel="żółw.tif"/>
  </pictures>
  <pages>
    <page number="1">
      <frame id="f1" picture="żołw" x="0mm" y="0mm" width="0mm" height="5mm"/>
      <farme/>
    </page>
  </pages>
</book>
)");
  write_file(album.path / "sheet.xml", "<press xmlns=\"urn:stoneproof:press:1\" name=\"Ours\">\n</pres>\n");
  const Ran ran = run(album.path, {"proof", "wrong.xml", "--press", "sheet.xml"});
  CHECK(ran.err == R"~(wrong.xml:2:16: width="200": a length needs a unit
      <trim width="200" height="-5mm"/>
                   ^
  Write a number and its unit, mm, cm, in or pt, for example "6.5mm".
wrong.xml:2:29: height="-5mm": this length must not be negative
      <trim width="200" height="-5mm"/>
                                ^
  Write a number and its unit, mm, cm, in or pt, for example "6.5mm".
wrong.xml:3:28: bottom="1e308mm": an exponent is not allowed in a number
      <bleed top="3mm" bottom="1e308mm" outside="NaN" inside="0mm"/>
                               ^
  Write a number and its unit, mm, cm, in or pt, for example "6.5mm".
wrong.xml:3:46: outside="NaN": this is not a length
      <bleed top="3mm" bottom="1e308mm" outside="NaN" inside="0mm"/>
                                                 ^
  Write a number and its unit, mm, cm, in or pt, for example "6.5mm".
wrong.xml:5:18: kind="glued": this is not one of the known words
      <binding kind="glued"/>
                     ^
  Write saddle, perfect, case, spiral or layflat.
wrong.xml:7:5: <picture> lacks the attribute file
        <picture id="żółw" fiel="żółw.tif"/>
        ^
  Add file="...".
wrong.xml:7:24: <picture> has no attribute fiel (did you mean file?)
        <picture id="żółw" fiel="żółw.tif"/>
                           ^
  Its attributes are id, file, use, profile, contributor.
wrong.xml:11:31: no picture has the id "żołw" (did you mean żółw?)
          <frame id="f1" picture="żołw" x="0mm" y="0mm" width="0mm" height="5mm"/>
                                  ^
  Write the id of a <picture>, or add one.
wrong.xml:11:60: width="0mm": this length must be more than zero
          <frame id="f1" picture="żołw" x="0mm" y="0mm" width="0mm" height="5mm"/>
                                                               ^
  Write a number and its unit, mm, cm, in or pt, for example "6.5mm".
wrong.xml:12:7: <page> takes no element <farme> (did you mean frame?)
          <farme/>
          ^
  Its elements are frame, text, sheet.
sheet.xml:2:1: </pres> does not close <press>
    </pres>
    ^
  Add </press> before it, or mend the name.
)~");
  CHECK(ran.out.empty());
  CHECK(ran.status == 3);
}

TEST_CASE("a file name with control characters does not reach the terminal as it is") {
  const AlbumFolder album;
  const Ran ran = run(album.path, {"proof", "\x1b[2J.xml"});
  CHECK(ran.err == "\xEF\xBF\xBD[2J.xml: there is no such file\n  Check the path.\n");
  CHECK(ran.status == 3);
}
