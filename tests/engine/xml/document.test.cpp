#include "engine/xml/document.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <ctime>

using namespace stoneproof;
using stoneproof::test::Folder;

namespace {

Element root_of(std::string text) {
  auto parsed = parse_document(SourceText("a.xml", std::move(text)));
  if (const auto *fault = std::get_if<SourceFault>(&parsed)) FAIL(with_caret(*fault));
  return std::get<Document>(std::move(parsed)).root;
}

std::string refusal(std::string text) {
  const auto parsed = parse_document(SourceText("a.xml", std::move(text)));
  const auto *fault = std::get_if<SourceFault>(&parsed);
  return fault ? fault->fault.where + ": " + fault->fault.what : "accepted";
}

} // namespace

TEST_CASE("the tree holds names, values, texts and the place of each") {
  const Element root = root_of("<?xml version=\"1.0\"?>\n"
                               "<!-- before -->\n"
                               "<a b='1'\n"
                               "\tc=\"&#x17B;\xC5\xBB &amp;\tx\n&#10;y\">\r\n"
                               "  one <!-- c -->&lt;<d/> <![CDATA[two <&]]></a>");
  CHECK(root.name == "a");
  CHECK(root.place == SourcePlace{3, 1});
  REQUIRE(root.attributes.size() == 2);
  CHECK(root.attributes[0].place == SourcePlace{3, 4});
  CHECK(root.attributes[0].value_place == SourcePlace{3, 7});
  CHECK(root.attributes[1].value == "\xC5\xBB\xC5\xBB & x \ny"); // tab and line end as spaces, &#10; kept
  CHECK(root.attributes[1].place == SourcePlace{4, 2});
  CHECK(root.text == "\n  one < two <&");
  CHECK(root.text_place == SourcePlace{6, 3});
  REQUIRE(root.children.size() == 1);
  CHECK(root.children[0].place == SourcePlace{6, 21});
  CHECK(root.children[0].text_place.line == 0);
}

TEST_CASE("names are resolved to namespaces") {
  const Element root =
      root_of("<p:a xmlns:p='u1' xmlns='u2' p:x='1' x='2'><b xmlns=''/><c/><p:d xmlns:p='u3'/><p:e/></p:a>");
  CHECK(root.space == "u1");
  CHECK(root.name == "a");
  REQUIRE(root.attributes.size() == 2);
  CHECK(root.attributes[0].space == "u1");
  CHECK(root.attributes[1].space.empty());
  REQUIRE(root.children.size() == 4);
  CHECK(root.children[0].space.empty());
  CHECK(root.children[1].space == "u2");
  CHECK(root.children[2].space == "u3");
  CHECK(root.children[3].space == "u1");
}

TEST_CASE("broken namespaces are refused at their place") {
  struct Case {
    std::string_view text, refusal;
  };
  const Case cases[] = {
      {"<p:a/>", "a.xml:1:1: the prefix \"p\" is not declared"},
      {"<a p:b='1'/>", "a.xml:1:4: the prefix \"p\" is not declared"},
      {"<a xmlns:p='u'><b/></a>", "accepted"},
      {"<a><b xmlns:p='u'/><p:c/></a>", "a.xml:1:20: the prefix \"p\" is not declared"},
      {"<a xmlns:p=''/>", "a.xml:1:4: the prefix p is given no namespace"},
      {"<a xmlns:xmlns='u'/>", "a.xml:1:4: this namespace cannot be declared"},
      {"<a xmlns:xml='u'/>", "a.xml:1:4: this namespace cannot be declared"},
      {"<a xmlns:='u'/>", "a.xml:1:4: this is not a name"},
      {"<a:b:c xmlns:a='u'/>", "a.xml:1:1: the name \"a:b:c\" has a colon where none is allowed"},
      {"<:a/>", "a.xml:1:1: the name \":a\" has a colon where none is allowed"},
      {"<a xmlns:p='u' xmlns:q='u' p:x='1' q:x='2'/>", "a.xml:1:36: the attribute x is written twice"},
      {"<a xml:lang='en'/>", "accepted"},
  };
  for (const Case &c : cases) {
    INFO(c.text);
    CHECK(refusal(std::string(c.text)) == c.refusal);
  }
}

TEST_CASE("one line with very many attributes takes about as long as many lines") {
  const auto seconds = [](std::string_view after_each) {
    std::string text = "<a>";
    for (int i = 0; i < 100'000; ++i) text.append("<b c='\xC5\xBB'/>").append(after_each);
    text += "</a>";
    const std::clock_t begin = std::clock(); // processor time: what else the machine does has no part in it
    const Element root = root_of(std::move(text));
    const std::clock_t end = std::clock();
    CHECK(root.children.size() == 100'000);
    if (after_each == " ")
      CHECK(root.children.back().attributes[0].place == SourcePlace{1, 3 + 99'999 * 11 + 4});
    return static_cast<double>(end - begin) / CLOCKS_PER_SEC;
  };
  // Counting each column from the start of the line makes the one line tens of times slower.
  const double lines = seconds("\n");
  CHECK(seconds(" ") < 5 * lines);
}

TEST_CASE("a fault of the file itself has the path alone") {
  const Folder folder;
  const auto file = test::write_file(folder.path / "empty.xml", "");
  const auto read = read_document(file);
  const auto *fault = std::get_if<SourceFault>(&read);
  REQUIRE(fault);
  CHECK(with_caret(*fault) == file.string() + ": the file is empty\n  Name a file with a description.\n");
}
