// The syntax of content streams, sound and broken (ISO 32000-1, 7.2, 7.3 and 7.8).
#include "engine/import/content_parser.h"

#include "tests/support/catch.h"

#include <sstream>

using namespace stoneproof::finished;

namespace {

void write(std::ostream &out, const Operand &operand) {
  using Kind = Operand::Kind;
  if (operand.is(Kind::number)) out << operand.number;
  if (operand.is(Kind::name)) out << '/' << operand.text;
  if (operand.is(Kind::string)) out << '(' << operand.text << ')';
  if (operand.is(Kind::word)) out << operand.text;
  if (!operand.is(Kind::array) && !operand.is(Kind::dictionary)) return;
  out << (operand.is(Kind::array) ? "[" : "<");
  for (const Operand &item : operand.items) write(out << ' ', item);
  out << (operand.is(Kind::array) ? " ]" : " >");
}

/// Every operation on a line: its operands, its name, and of an inline image its data in braces.
std::string listed(const std::string &content) {
  std::ostringstream out;
  ContentParser parser(content);
  for (Operation operation; parser.next(operation);) {
    for (const Operand &operand : operation.operands) {
      write(out, operand);
      out << ' ';
    }
    out << operation.name;
    if (!operation.data.empty()) out << " {" << operation.data << '}';
    out << '\n';
  }
  return out.str();
}

} // namespace

TEST_CASE("operands of every kind come before their operator") {
  CHECK(listed("1 -2.5 +.5 4. cm") == "1 -2.5 0.5 4 cm\n");
  CHECK(listed("/Im#31 Do/F1 12 Tf") == "/Im1 Do\n/F1 12 Tf\n");
  CHECK(listed("[(a)-120(b)]TJ") == "[ (a) -120 (b) ] TJ\n");
  CHECK(listed("<48656C6c6f> Tj<4> Tj") == "(Hello) Tj\n(@) Tj\n");
  CHECK(listed("(a\\(b\\)\\101\\\nc(d))Tj") == "(a(b)Ac(d)) Tj\n");
  CHECK(listed("/OC <</Type /X /N [1 true null]>> BDC") == "/OC < /Type /X /N [ 1 true null ] > BDC\n");
  CHECK(listed("q % a remark Q\nQ") == "q\nQ\n");
}

TEST_CASE("an inline image is one operation, its names in full") {
  CHECK(listed("BI /W 2 /H 1 /BPC 8 /CS /G ID \x01\x02 EI Q") ==
        "< /Width 2 /Height 1 /BitsPerComponent 8 /ColorSpace /G > BI {\x01\x02 }\nQ\n");
  // EI within the data has no white space before it, or no text behind it.
  CHECK(listed("BI /W 4 /H 1 ID aEIb EI\nq") == "< /Width 4 /Height 1 > BI {aEIb }\nq\n");
  CHECK(listed("BI /W 4 /H 1 ID a EI\x01\x02 EI\nq") == "< /Width 4 /Height 1 > BI {a EI\x01\x02 }\nq\n");
}

TEST_CASE("broken syntax is passed over and loses nothing behind it") {
  CHECK(listed(") > ] } q") == ")\n>\n]\n}\nq\n");
  CHECK(listed("--5 0 0 m") == "-5 0 0 m\n");
  CHECK(listed("1e5 2 m") == "1 2 m\n"); // there are no exponents
  CHECK(listed("(never closed q Q").empty());
  CHECK(listed("[1 2 q").empty());
  CHECK(listed("BI /W 2 ID abc") == "< /Width 2 > BI {abc}\n");
  CHECK(listed(std::string(100'000, '[')).empty());
  CHECK(listed(std::string(100'000, '(')).empty());
}

TEST_CASE("a hundred thousand operands are no operation's") {
  std::string many;
  for (std::size_t i = 0; i < ContentParser::most_operands + 5; ++i) many += "1 ";
  many += "re";
  ContentParser parser(many);
  Operation operation;
  REQUIRE(parser.next(operation));
  CHECK(operation.name == "re");
  CHECK(operation.operands.size() == 5);
}
