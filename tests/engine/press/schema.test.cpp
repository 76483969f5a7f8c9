// The reader of press sheets and their schema judge alike. What only the reader can say is listed here and in
// schema/press.md, one by one.
#include "engine/press/read.h"
#include "tests/engine/xml/generated.h"
#include "tests/engine/xml/xmllint.h"
#include "tests/support/catch.h"

#include <algorithm>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

const std::string schema = STONEPROOF_SOURCE_DIR "/schema/press.xsd";

Node edges(std::string name, Chance &chance) {
  Node node{std::move(name)};
  for (const auto edge : {"top", "bottom", "outside", "inside"})
    node.attributes.emplace_back(edge, std::to_string(chance.below(9)) + (chance.one_in(2) ? "mm" : " pt"));
  return node;
}

Node list(std::string name, std::string child, std::string attribute, std::vector<std::string> words,
          Chance &chance) {
  Node node{std::move(name)};
  words.resize(1 + chance.below(words.size()));
  for (const auto &word : words) node.children.push_back({child, {{attribute, word}}});
  return node;
}

// What is asked of the book as an object.
std::vector<Node> object(Chance &chance) {
  Node counts{"page-counts"}, margins{"inside-margins"}, sizes{"type-sizes"};
  for (const auto kind : {"case", "saddle", "perfect", "layflat", "spiral"}) {
    const std::size_t least = 1 + chance.below(99);
    counts.children.push_back({"page-count",
                               {{"binding", kind},
                                {"multiple", std::to_string(1 + chance.below(32))},
                                {"least", std::to_string(least)},
                                {"most", std::to_string(least + chance.below(900))}}});
  }
  for (std::size_t n = chance.below(4), from = 0; n > 0; --n)
    margins.children.push_back({"inside-margin",
                                {{"from", std::to_string(from += 1 + chance.below(150))},
                                 {"least", chance.one_in(2) ? "0.5in" : "13 mm"}}});
  for (const auto kind : {"caption", "spine", "body", "page-number", "heading"})
    sizes.children.push_back({"type-size", {{"kind", kind}, {"least", chance.one_in(2) ? "6pt" : "0mm"}}});
  return {counts,
          margins,
          sizes,
          {"fold", {{"tolerance", "1mm"}}},
          {"spine", {{"leaf-tolerance", "0.0005in"}, {"text-from", "6mm"}, {"text-clear", "1.5 mm"}}},
          {"creep", {{"compensated", chance.one_in(2) ? "yes" : "no"}}}};
}

Node random_sheet(Chance &chance) {
  Node densities{"densities", {{"tolerance", chance.one_in(2) ? "1%" : "0.5 %"}}};
  for (const auto use : {"photo", "line-art", "document", "clipping"}) {
    const std::size_t least = 1 + chance.below(600);
    densities.children.push_back({"density",
                                  {{"use", use},
                                   {"wanted", std::to_string(least + chance.below(600)) + ".5ppi"},
                                   {"least", std::to_string(least) + "ppi"}}});
  }
  const std::size_t quality = 1 + chance.below(100);
  Node press{"press", {{"xmlns", "urn:stoneproof:press:1"}, {"name", "Mill & Sons"}}};
  press.children = {
      densities,
      {"stretch", {{"tolerance", "2%"}}},
      edges("bleed", chance),
      edges("safe-margin", chance),
      {"cut", {{"tolerance", "0.04in"}}},
      {"flatbed", {{"limit", "2400ppi"}}},
      {"jpeg-quality",
       {{"wanted", std::to_string(quality + chance.below(101 - quality))},
        {"least", std::to_string(quality)}}},
      {"tone", {{"clipped", "5%"}, {"range", chance.one_in(2) ? "40%" : "0.5 %"}}},
      {"ink",
       {{"limit", std::to_string(chance.below(401)) + (chance.one_in(2) ? "%" : " %")},
        {"square", "12.5mm"}}},
      list("formats", "format", "name", {"tiff", "jpeg", "png", "avif", "gif", "heic", "webp"}, chance),
      list("colours", "colour", "model", {"cmyk", "rgb", "gray", "lab", "other", "indexed", "bilevel"},
           chance)};
  if (chance.one_in(2))
    press.children.push_back(
        {"finished-pdf", {{"thinnest-line", "0.25pt"}, {"transparency", chance.one_in(2) ? "yes" : "no"}}});
  for (Node &node : object(chance)) press.children.push_back(std::move(node));
  for (std::size_t i = press.children.size() - 1; i > 0; --i)
    if (chance.one_in(3)) std::swap(press.children[i], press.children[chance.below(i)]);
  return press;
}

constexpr std::string_view beyond_schema[] = {"the least density is above the wanted one",
                                              "the least quality is above the wanted one",
                                              "the profile cannot be read",
                                              "no length is more than 10 m",
                                              "the least page count is above the most",
                                              "comes after that from"};

bool is_beyond_schema(const SourceFault &fault) {
  return std::any_of(std::begin(beyond_schema), std::end(beyond_schema), [&](std::string_view words) {
    return fault.fault.what.find(words) != std::string::npos;
  });
}

} // namespace

TEST_CASE("a generated sheet is judged alike by the reader and by xmllint with the schema") {
  constexpr std::uint64_t seed = 1847;
  Chance chance(seed);
  std::vector<std::string> documents{std::string(built_in_press_sheet_text())};
  for (int i = 0; i < 600; ++i) {
    Node sheet = random_sheet(chance);
    if (i % 3 == 1)
      for (std::size_t n = 1 + chance.below(2); n > 0; --n) mutate(sheet, chance);
    std::string text;
    write_file(sheet, text);
    if (i % 3 == 2) mutate(text, chance);
    documents.push_back(std::move(text));
  }
  const auto verdicts = ask_xmllint(schema, documents);
  CHECK(verdicts[0].accepted);
  int accepted = 0, refused = 0;
  for (std::size_t i = 0; i < documents.size(); ++i) {
    const auto reading = parse_press_sheet(SourceText("press.xml", documents[i]));
    (reading ? accepted : refused) += 1;
    if (static_cast<bool>(reading) == verdicts[i].accepted) continue;
    std::string faults;
    for (const SourceFault &fault : reading.faults) faults += with_caret(fault);
    INFO(documents[i] << "\nxmllint:\n" << verdicts[i].messages << "\nreader:\n" << faults);
    CHECK((!reading && std::all_of(reading.faults.begin(), reading.faults.end(), is_beyond_schema)));
  }
  CHECK(accepted >= 200);
  CHECK(refused >= 200);
}

TEST_CASE("what the schema of press sheets cannot say is refused by the reader alone") {
  const auto with = [](std::string_view part, std::string_view replacement) {
    std::string text(built_in_press_sheet_text());
    return text.replace(text.find(part), part.size(), replacement);
  };
  const std::vector<std::string> documents{with("300ppi", "199ppi"),
                                           with("wanted=\"75\"", "wanted=\"49\""),
                                           with("<ink ", "<profile file=\"none.icc\" difference=\"5\" "
                                                         "share=\"10%\"/><ink "),
                                           with("top=\"3mm\"", "top=\"11000mm\""),
                                           with("most=\"64\"", "most=\"7\""),
                                           with("from=\"300\"", "from=\"150\"")};
  const auto verdicts = ask_xmllint(schema, documents);
  for (std::size_t i = 0; i < documents.size(); ++i) {
    const auto reading = parse_press_sheet(SourceText("press.xml", documents[i]));
    CHECK(verdicts[i].accepted);
    REQUIRE(reading.faults.size() == 1);
    CHECK(reading.faults[0].fault.what.find(beyond_schema[i]) != std::string::npos);
  }
}
