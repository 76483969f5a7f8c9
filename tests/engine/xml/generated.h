// Documents made by chance from a fixed seed, and ways to break them: for tests that compare a reader with
// its schema.
#pragma once

#include <array>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace stoneproof::test {

/// The same numbers on every machine: the standard's distributions are not.
class Chance {
public:
  explicit Chance(std::uint64_t seed) : engine_(seed) {}
  std::size_t below(std::size_t end) { return static_cast<std::size_t>(engine_() % end); }
  int between(int first, int last) {
    return first + static_cast<int>(below(static_cast<std::size_t>(last - first + 1)));
  }
  bool one_in(std::size_t n) { return below(n) == 0; }
  template <class List>
  const auto &pick(const List &list) {
    return list[below(std::size(list))];
  }

private:
  std::mt19937_64 engine_;
};

struct Node {
  std::string name;
  std::vector<std::pair<std::string, std::string>> attributes;
  std::vector<Node> children;
  std::string text; ///< already escaped
};

inline std::string escaped(std::string_view value) {
  std::string result;
  for (const char c : value) {
    if (c == '&')
      result += "&amp;";
    else if (c == '<')
      result += "&lt;";
    else if (c == '"')
      result += "&quot;";
    else
      result += c;
  }
  return result;
}

inline void write_file(const Node &node, std::string &out, const std::string &indent = "") {
  out += indent + "<" + node.name;
  for (const auto &[name, value] : node.attributes) out += " " + name + "=\"" + escaped(value) + "\"";
  if (node.children.empty() && node.text.empty()) {
    out += "/>\n";
    return;
  }
  out += ">" + node.text;
  if (!node.children.empty()) out += "\n";
  for (const Node &child : node.children) write_file(child, out, indent + " ");
  out += "</" + node.name + ">\n";
}

inline void collect(Node &node, std::vector<Node *> &nodes) {
  nodes.push_back(&node);
  for (Node &child : node.children) collect(child, nodes);
}

/// Values that attributes are given to break them, or to show that they are good elsewhere.
inline constexpr std::string_view awkward_values[] = {"210",
                                                      "210 ",
                                                      "5mm",
                                                      "5 mm",
                                                      "5  mm",
                                                      "\t5mm\n",
                                                      "0mm",
                                                      "-0mm",
                                                      "-0.0mm",
                                                      "-3mm",
                                                      "0.0in",
                                                      "1e3mm",
                                                      "1e308",
                                                      "1e308mm",
                                                      "NaN",
                                                      "inf",
                                                      "INF",
                                                      "nanmm",
                                                      "6,5mm",
                                                      "5.mm",
                                                      ".5mm",
                                                      "+5mm",
                                                      "5MM",
                                                      "5 m",
                                                      "5px",
                                                      "5%",
                                                      "100%",
                                                      "100.00%",
                                                      "100.01%",
                                                      "101%",
                                                      "-1%",
                                                      "-0%",
                                                      "0%",
                                                      "50 %",
                                                      "120px",
                                                      "0px",
                                                      "-1px",
                                                      "9999999999px",
                                                      "1px 2px",
                                                      "",
                                                      " ",
                                                      "yes",
                                                      "no",
                                                      "Yes",
                                                      "maybe",
                                                      "photo",
                                                      "Photo",
                                                      "print",
                                                      "none",
                                                      "left",
                                                      "case",
                                                      "0",
                                                      "1",
                                                      "2",
                                                      "01",
                                                      "1.0",
                                                      "1.5",
                                                      "-5",
                                                      "360",
                                                      "360.0",
                                                      "360.001",
                                                      "-361",
                                                      "99999",
                                                      "100000",
                                                      "2147483648",
                                                      "300ppi",
                                                      "0ppi",
                                                      "300 ppi",
                                                      "300dpi",
                                                      "100000ppi",
                                                      "99999ppi",
                                                      "99999.5ppi",
                                                      "en",
                                                      "en-GB",
                                                      "e n",
                                                      "-en",
                                                      "toolonglanguage",
                                                      "a b",
                                                      "\xC5\xBB\xC3\xB3\xC5\x82w",
                                                      "\xEF\xBC\x95mm",
                                                      "0.0000001mm",
                                                      "0.00000000000001mm",
                                                      "9999.999mm",
                                                      "10000mm",
                                                      "10000.1mm",
                                                      "1001cm",
                                                      "394in",
                                                      "28347pt",
                                                      "99999999999999999999mm",
                                                      "0x10mm",
                                                      "5mm5mm",
                                                      "--5mm",
                                                      "5\xC2\xA0mm",
                                                      "1_000mm",
                                                      "90g/m2",
                                                      "90 g/m2",
                                                      "0.9g/m2",
                                                      "10000g/m2",
                                                      "90g",
                                                      "0.1",
                                                      "0.09",
                                                      "10.0",
                                                      "10.1",
                                                      "-0",
                                                      "9999.9",
                                                      "spine",
                                                      "block"};

/// One change to the tree of a document.
inline void mutate(Node &root, Chance &chance) {
  std::vector<Node *> nodes;
  collect(root, nodes);
  Node &node = *nodes[chance.below(nodes.size())];
  Node &other = *nodes[chance.below(nodes.size())];
  const auto some = [&](Node &of) -> std::pair<std::string, std::string> * {
    return of.attributes.empty() ? nullptr : &of.attributes[chance.below(of.attributes.size())];
  };
  const auto child = [&](Node &of) {
    return of.children.begin() + static_cast<std::ptrdiff_t>(chance.below(of.children.size()));
  };
  auto *attribute = some(node);
  switch (chance.below(16)) {
  case 0:
    if (attribute) node.attributes.erase(node.attributes.begin() + (attribute - node.attributes.data()));
    break;
  case 1:
    if (attribute) attribute->first.erase(chance.below(attribute->first.size()), 1);
    break;
  case 2:
    if (attribute) node.attributes.push_back(*attribute);
    break;
  case 3:
    if (!node.children.empty()) node.children.erase(child(node));
    break;
  case 4: node.name[chance.below(node.name.size())] = 'q'; break;
  case 5:
    if (!node.children.empty()) {
      const Node copy = *child(node);
      node.children.push_back(copy);
    }
    break;
  case 6:
  case 7:
  case 8:
  case 9:
    if (attribute) attribute->second = chance.pick(awkward_values);
    break;
  case 10:
    if (node.children.size() > 1) std::swap(node.children.front(), node.children.back());
    break;
  case 11:
    node.text = chance.pick(
        std::array{"stray", " ", "<![CDATA[ ]]>", "<![CDATA[x]]>", "&#32;", "<!-- c -->", "<?p i?>"});
    break;
  case 12: node.attributes.emplace_back("xmlns", chance.one_in(2) ? "urn:example:other" : ""); break;
  case 13:
    if (auto *source = some(other); attribute && source) attribute->second = source->second;
    break;
  case 14:
    node.attributes.emplace_back(
        chance.pick(std::array{"colour", "xml:lang", "Width", "xml:space", "p:x", "xmlns:p"}), "urn:p");
    break;
  case 15:
    if (!other.children.empty()) {
      const Node copy = *child(other);
      node.children.push_back(copy);
    }
    break;
  }
}

/// One change to the bytes of a document.
inline void mutate(std::string &text, Chance &chance) {
  static constexpr std::string_view pieces[] = {
      "<",   ">",       "&",      "\"",   "'",     "/",         "=",
      "--",  "]]>",     "<!--",   "-->",  "<?",    "?>",        "&amp;",
      "&x;", "&#0;",    "&#x41;", "\x01", "\xFF",  "\xC3",      "\xED\xA0\x80",
      "\t",  "\r",      "\n",     ":",    "xmlns", "<![CDATA[", "\xEF\xBF\xBE",
      "x",   "\xC2\x85"};
  const std::size_t at = chance.below(text.size());
  switch (chance.below(5)) {
  case 0: text.erase(at, 1); break;
  case 1: text.insert(at, chance.pick(pieces)); break;
  case 2: text.replace(at, 1, chance.pick(pieces)); break;
  case 3: text.insert(at, text.substr(chance.below(text.size()), chance.below(40))); break;
  case 4: text.resize(at + 1); break;
  }
}

} // namespace stoneproof::test
