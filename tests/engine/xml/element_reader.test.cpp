#include "engine/xml/element_reader.h"
#include "engine/xml/values.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

enum class Shade { dark, light };
struct ShadeWord {
  Shade value;
  std::string_view word;
};
constexpr ShadeWord shade_words[] = {{Shade::dark, "dark"}, {Shade::light, "light"}};

// The faults that reading a document gives, one a line: line:column: what / remedy.
template <class Read>
std::string faults(std::string text, Read read) {
  const auto parsed = parse_document(SourceText("a", std::move(text)));
  const auto &document = std::get<Document>(parsed);
  FaultList list(document.source);
  read(document, list);
  std::string lines;
  for (const SourceFault &fault : list.sorted())
    lines += fault.fault.where + ": " + fault.fault.what + " / " + fault.fault.remedy + "\n";
  return lines;
}

std::string shade_faults(std::string text) {
  return faults(std::move(text), [](const Document &document, FaultList &list) {
    ElementReader reader(document.root, list);
    reader.required("shade", one_of(shade_words));
    reader.optional("edge", parse_length);
    reader.one("first");
    reader.maybe("second");
  });
}

} // namespace

TEST_CASE("what was never asked for is a fault, with what it may have been meant to be") {
  CHECK(shade_faults("<a shade='dark' edge='1mm'><first/></a>").empty());
  CHECK(shade_faults("<a shade='dark' egde='1mm'><first/></a>") ==
        "a:1:17: <a> has no attribute egde (did you mean edge?) / Its attributes are shade, edge.\n");
  CHECK(shade_faults("<a shade='dark'><first/><secnod/></a>") ==
        "a:1:25: <a> takes no element <secnod> (did you mean second?) / Its elements are first, second.\n");
  CHECK(shade_faults("<a shade='dark'><first/> x</a>") ==
        "a:1:26: there is text in <a>, which takes none / Remove the text.\n");
  CHECK(shade_faults("<a shade='dark'><first/>&#160;</a>") ==
        "a:1:25: there is text in <a>, which takes none / Remove the text.\n");
  CHECK(shade_faults("<a shade='dark'><first/>&#32;<!-- x --></a>").empty());
  CHECK(shade_faults("<a shade='dark'><first xmlns='u'/></a>") ==
        "a:1:1: <a> lacks the element <first> / Add <first> inside <a>.\n"
        "a:1:17: <first> is not in the namespace of <a> / Its elements are first, second.\n");
}

TEST_CASE("what is missing, twice or wrong is a fault, in the order of the file") {
  CHECK(shade_faults("<a/>") == "a:1:1: <a> lacks the attribute shade / Add shade=\"...\".\n"
                                "a:1:1: <a> lacks the element <first> / Add <first> inside <a>.\n");
  CHECK(
      shade_faults("<a shade='dim'\n edge='1'><first/><second/>\n<first/></a>") ==
      "a:1:11: shade=\"dim\": this is not one of the known words / Write dark or light.\n"
      "a:2:8: edge=\"1\": a length needs a unit / Write a number and its unit, mm, cm, in or pt, for example "
      "\"6.5mm\".\n"
      "a:3:1: <a> takes one element <first> only / Keep one of them.\n");
  CHECK(shade_faults("<a shade='lihgt'><first/></a>") ==
        "a:1:11: shade=\"lihgt\": this is not one of the known words (did you mean light?) / Write dark or "
        "light.\n");
}

TEST_CASE("faults beyond the limit are counted") {
  const auto many = [](std::size_t count) {
    std::string text = "<a>";
    for (std::size_t i = 0; i < count; ++i) text += "<b/>";
    return faults(text + "</a>",
                  [](const Document &document, FaultList &list) { ElementReader(document.root, list); });
  };
  const auto last_line = [](const std::string &lines) {
    return lines.substr(lines.rfind('\n', lines.size() - 2) + 1);
  };
  CHECK(last_line(many(most_faults)) == "a:1:100: <a> takes no element <b> / Remove it; it takes none.\n");
  CHECK(last_line(many(most_faults + 1)) == "a: and 1 more fault / Mend those above and run again.\n");
  CHECK(last_line(many(most_faults + 7)) == "a: and 7 more faults / Mend those above and run again.\n");
}
