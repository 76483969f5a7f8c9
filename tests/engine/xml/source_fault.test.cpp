#include "engine/xml/source_fault.h"
#include "tests/support/catch.h"

using namespace stoneproof;

TEST_CASE("a fault is shown with its line and a caret") {
  struct Case {
    SourceFault fault;
    int width;
    std::string_view text;
  };
  const Case cases[] = {
      {{{"it is wrong", "b.xml:3:8", "Mend it."}, "  <trim width=\"210\"/>", 8},
       100,
       "b.xml:3:8: it is wrong\n"
       "      <trim width=\"210\"/>\n"
       "           ^\n"
       "  Mend it.\n"},
      // a tab is one column and shows as one space; two-byte letters are one column each
      {{{"w", "b.xml:1:5", "r"}, "\t\xC5\xBB\xC3\xB3x!", 5},
       100,
       "b.xml:1:5: w\n"
       "     \xC5\xBB\xC3\xB3x!\n"
       "        ^\n"
       "  r\n"},
      // no line: the path alone
      {{{"the file is empty", "b.xml", ""}, "", 0}, 100, "b.xml: the file is empty\n"},
      // the end of a line has a place too
      {{{"w", "b.xml:1:4", ""}, "abc", 4},
       100,
       "b.xml:1:4: w\n"
       "    abc\n"
       "       ^\n"},
      // 26 characters wide leaves 22 for the line: 16 of its own between the dots
      {{{"w", "p", ""}, "abcdefghijklmnopqrstuvwxyz0123456789", 1},
       26,
       "p: w\n"
       "    abcdefghijklmnop...\n"
       "    ^\n"},
      {{{"w", "p", ""}, "abcdefghijklmnopqrstuvwxyz0123456789", 19},
       26,
       "p: w\n"
       "    ...klmnopqrstuvwxyz...\n"
       "               ^\n"},
      {{{"w", "p", ""}, "abcdefghijklmnopqrstuvwxyz0123456789", 36},
       26,
       "p: w\n"
       "    ...uvwxyz0123456789\n"
       "                      ^\n"},
  };
  for (const Case &c : cases) CHECK(with_caret(c.fault, c.width) == c.text);
}
