#include "engine/xml/scan.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

std::string refusal(std::string_view text, const ScanLimits &limits = {}) {
  const auto scanned = scan(text, limits);
  const auto *fault = std::get_if<ScanFault>(&scanned);
  return fault ? std::to_string(fault->offset) + ": " + fault->what : "accepted";
}

} // namespace

TEST_CASE("well-formed XML is accepted") {
  const std::string_view documents[] = {
      "<a/>",
      "<?xml version=\"1.0\"?><a></a>",
      "<?xml version='1.0' encoding='utf-8' standalone = \"yes\" ?>\n<a />",
      "<?xml version=\"1.1\"?><a/>",
      "\n <!-- c - d --><?p?><?p i?>\n<a\n b='\"' c=\"'>\" ></a\n>\n<!---->\n",
      "<a>&amp;&lt;&gt;&quot;&apos;&#65;&#x1F4F7;</a>",
      "<a>]] > <![CDATA[<b>&x;]] ]>]]></a>",
      "<\xC5\xBB-1.\xC2\xB7 \xCE\xB1='1'/>",
      "<a:b xmlns:a='u'/>"};
  for (const auto document : documents) {
    INFO(document);
    CHECK(refusal(document) == "accepted");
  }
}

TEST_CASE("what XML 1.0 forbids is refused at its place") {
  struct Case {
    std::string_view text, refusal;
  };
  const Case cases[] = {
      {" \n", "2: there is no element in the file"},
      {"text<a/>", "0: there is text before the first element"},
      {"<a/>text", "4: there is text after the last element"},
      {"<a/><b/>", "4: a second element stands beside the first"},
      {"<a/></a>", "4: an end tag stands after the last element"},
      {"</a>", "0: an end tag stands before any start tag"},
      {"<a/><!DOCTYPE a>", "4: this markup is not allowed after the last element"},
      {"<![CDATA[x]]><a/>", "0: this markup is not allowed before the first element"},
      {"<a><!ELEMENT b></a>", "3: this markup is not allowed inside an element"},
      {"<a><b></a></b>", "6: </a> does not close <b>"},
      {"<a><b></a>", "6: </a> does not close <b>"},
      {"<a><b>", "3: <b> is never closed"},
      {"<a></ a>", "3: </> does not close <a>"},
      {"<a></a b>", "3: the tag </a> has no end"},
      {"<a", "0: the tag <a> has no end"},
      {"<a b='1'", "0: the tag <a> has no end"},
      {"<1/>", "0: a \"<\" is not followed by a name"},
      {"<a>1 < 2</a>", "5: a \"<\" is not followed by a name"},
      {"<a b='1' b='2'/>", "9: the attribute b is written twice"},
      {"<a b='1'c='2'/>", "8: white space is missing before an attribute"},
      {"<a b/>", "3: the attribute b has no value"},
      {"<a b=1/>", "5: the value of an attribute is not in quotes"},
      {"<a b='1/>", "5: the quotes around this value are never closed"},
      {"<a b='<'/>", "6: a \"<\" stands inside the value of an attribute"},
      {"<a 1='2'/>", "3: this is not the name of an attribute"},
      {"<a / >", "3: this is not the name of an attribute"},
      {"<a>]]></a>", "3: \"]]>\" stands in the text"},
      {"<a><!-- a -- b --></a>", "10: \"--\" stands inside a comment"},
      {"<a><!-- a ---></a>", "10: \"--\" stands inside a comment"},
      {"<a><!-- a </a>", "3: a comment is never closed"},
      {"<a><![CDATA[ </a>", "3: a CDATA section is never closed"},
      {"<a><?p </a>", "3: a processing instruction is never closed"},
      {"<a><? p?></a>", "3: a processing instruction has no name"},
      {"<a><?p,?></a>", "3: white space is missing after the name of a processing instruction"},
      {"<a><?p:q?></a>", "3: the name of a processing instruction has a colon"},
      {" <?xml version='1.0'?><a/>", "1: an XML declaration stands where none is allowed"},
      {"<a><?XmL ?></a>", "3: an XML declaration stands where none is allowed"},
      {"<?xml encoding='UTF-8'?><a/>", "0: the XML declaration has no version 1.0"},
      {"<?xml version='2.0'?><a/>", "0: the XML declaration has no version 1.0"},
      {"<?xml version='1.0' standalone='maybe'?><a/>", "0: the XML declaration is broken"},
      {"<?xml version='1.0' encoding='UTF-8' x='y'?><a/>", "0: the XML declaration is broken"},
      {"<?xml version='1.0' encoding='latin1'?><a/>",
       "0: the file says its encoding is \"latin1\"; only UTF-8 is read"},
      {"<a>&</a>", "3: a \"&\" stands alone"},
      {"<a>a & b; c</a>", "5: a \"&\" stands alone"},
      {"<a b='&'/>", "6: a \"&\" stands alone"},
      {"<a>&nbsp;</a>", "3: the entity \"nbsp\" is not known"},
      {"<a>&;</a>", "3: the entity \"\" is not known"},
      {"<a>&#0;</a>", "3: \"&#0;\" is no character"},
      {"<a>&#x1F;</a>", "3: \"&#x1F;\" is no character"},
      {"<a>&#xD800;</a>", "3: \"&#xD800;\" is no character"},
      {"<a>&#x110000;</a>", "3: \"&#x110000;\" is no character"},
      {"<a>&#99999999999999999999;</a>", "3: \"&#99999999999999999999;\" is no character"},
      {"<a>&#X41;</a>", "3: \"&#X41;\" is no character"},
      {"<a>&#-5;</a>", "3: \"&#-5;\" is no character"},
      {"<a>&#;</a>", "3: \"&#;\" is no character"},
      {"<a>\x01</a>", "3: the character U+0001 is not allowed in XML"},
      {"<a>\xEF\xBF\xBE</a>", "3: the character U+FFFE is not allowed in XML"},
      {"<a>\xC5</a>", "3: these bytes are not UTF-8"},
      {"<a b='\xFF'/>", "6: these bytes are not UTF-8"},
      {{"<a>\0</a>", 8}, "3: the character U+0000 is not allowed in XML"},
  };
  for (const Case &c : cases) {
    INFO(c.text);
    CHECK(refusal(c.text) == c.refusal);
  }
}

TEST_CASE("an entity bomb and its kin are refused unread") {
  CHECK(refusal("<!DOCTYPE a [<!ENTITY b \"bbbbbbbb\"><!ENTITY c \"&b;&b;&b;&b;\">]><a>&c;</a>") ==
        "0: a document type declaration (DTD) is not accepted");
  CHECK(refusal("<?xml version='1.0'?>\n<!DOCTYPE a SYSTEM \"file:///etc/hostname\"><a/>") ==
        "22: a document type declaration (DTD) is not accepted");
}

TEST_CASE("hostile sizes are refused by the limits") {
  std::string deep;
  for (int i = 0; i < 100'000; ++i) deep += "<a>";
  CHECK(refusal(deep) == "96: elements are nested more than 32 deep");
  std::string wide = "<a";
  for (int i = 0; i < 100'000; ++i) wide += " a" + std::to_string(i) + "=''";
  CHECK(refusal(wide + "/>") == "441: an element has more than 64 attributes");
  CHECK(refusal("<a><b/><b/><b/></a>", {32, 64, 3}) ==
        "11: the file has more than 3 elements and attributes");
  CHECK(refusal("<a><b/><b/><b/></a>", {32, 64, 4}) == "accepted");
}

TEST_CASE("marks stand where elements, attributes and texts begin") {
  const auto scanned = scan("<a b = 'x'>\n <!-- c --> t<c d=\"\"/>u</a>");
  const auto &marks = std::get<std::vector<ElementMark>>(scanned);
  REQUIRE(marks.size() == 2);
  CHECK(marks[0].tag == 0);
  REQUIRE(marks[0].attributes.size() == 1);
  CHECK(marks[0].attributes[0].name == 3);
  CHECK(marks[0].attributes[0].value == 8);
  CHECK(marks[0].text == std::optional<std::size_t>(24));
  CHECK(marks[1].tag == 25);
  CHECK(marks[1].attributes.at(0).value == 31);
  CHECK_FALSE(marks[1].text);
}
