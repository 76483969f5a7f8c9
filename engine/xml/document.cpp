// Builds the tree: pugixml parses and decodes, the marks of our own scan say where each part stands, and
// names are resolved to namespaces here. pugixml is included nowhere else. Ways in: read_document and
// parse_document. Tested in tests/engine/xml/document.test.cpp.
#include "engine/xml/document.h"

#include "engine/xml/characters.h"

#include <fmt/format.h>
#include <pugixml.hpp>

#include <algorithm>
#include <optional>

namespace stoneproof {
namespace {

constexpr std::string_view xml_space = "http://www.w3.org/XML/1998/namespace";
constexpr std::string_view xmlns_space = "http://www.w3.org/2000/xmlns/";

struct Declared {
  std::string_view prefix, space;
};

struct QualifiedName {
  std::string_view prefix, local;
};

// The two parts of a name, or nothing when it has a colon where none may be (Namespaces in XML 1.0, QName).
std::optional<QualifiedName> split(std::string_view name) {
  const std::size_t colon = name.find(':');
  if (colon == std::string_view::npos) return QualifiedName{{}, name};
  const QualifiedName parts{name.substr(0, colon), name.substr(colon + 1)};
  const bool good = !parts.prefix.empty() && is_name_start(decode(parts.local, 0).character) &&
                    parts.local.find(':') == std::string_view::npos;
  return good ? std::optional(parts) : std::nullopt;
}

class Builder {
public:
  Builder(const SourceText &source, const std::vector<ElementMark> &marks) : source_(source), marks_(marks) {}

  // Recursion is bounded by ScanLimits::most_depth.
  bool build(const pugi::xml_node &node, Element &element);
  const SourceFault &fault() const { return *fault_; }

private:
  bool declare(const pugi::xml_node &node, const ElementMark &mark);
  bool declare(std::string_view prefix, std::string_view space, SourcePlace place);
  bool attributes(const pugi::xml_node &node, const ElementMark &mark, Element &element);
  bool resolve(std::string_view name, SourcePlace place, bool attribute, std::string &space,
               std::string &local);
  bool fail(SourcePlace place, std::string what, std::string remedy) {
    fault_ = source_.fault_at(place, std::move(what), std::move(remedy));
    return false;
  }

  const SourceText &source_;
  const std::vector<ElementMark> &marks_;
  std::size_t next_mark_ = 0;
  std::vector<Declared> bindings_{{"xml", xml_space}};
  std::optional<SourceFault> fault_;
};

bool is_declaration(std::string_view name) { return name == "xmlns" || name.starts_with("xmlns:"); }

bool Builder::declare(std::string_view prefix, std::string_view space, SourcePlace place) {
  if (prefix == "xmlns" || space == xmlns_space || (prefix == "xml") != (space == xml_space))
    return fail(place, "this namespace cannot be declared", "Remove the declaration.");
  if (!prefix.empty() && space.empty())
    return fail(place, fmt::format("the prefix {} is given no namespace", printable(prefix)),
                "Give it one, or remove the declaration.");
  bindings_.push_back({prefix, space});
  return true;
}

bool Builder::declare(const pugi::xml_node &node, const ElementMark &mark) {
  std::size_t index = 0;
  for (const pugi::xml_attribute &attribute : node.attributes()) {
    const std::string_view name = attribute.name();
    const std::size_t at = mark.attributes[index++].name;
    if (!is_declaration(name)) continue;
    const auto parts = split(name);
    if (!parts) return fail(source_.place_of(at), "this is not a name", "Mend the name after xmlns:.");
    if (!declare(parts->prefix.empty() ? std::string_view() : parts->local, attribute.value(),
                 source_.place_of(at)))
      return false;
  }
  return true;
}

bool Builder::resolve(std::string_view name, SourcePlace place, bool attribute, std::string &space,
                      std::string &local) {
  const auto parts = split(name);
  if (!parts)
    return fail(place, fmt::format("the name {} has a colon where none is allowed", in_quotes(name)),
                "Mend the name.");
  local = parts->local;
  if (attribute && parts->prefix.empty()) return true;
  const auto found = std::find_if(bindings_.rbegin(), bindings_.rend(),
                                  [&](const Declared &binding) { return binding.prefix == parts->prefix; });
  if (found != bindings_.rend())
    space = found->space;
  else if (!parts->prefix.empty())
    return fail(place, fmt::format("the prefix {} is not declared", in_quotes(parts->prefix)),
                "Remove the prefix and the colon, or declare the prefix with xmlns:.");
  return true;
}

bool Builder::attributes(const pugi::xml_node &node, const ElementMark &mark, Element &element) {
  std::size_t index = 0;
  for (const pugi::xml_attribute &attribute : node.attributes()) {
    const AttributeMark &at = mark.attributes[index++];
    if (is_declaration(attribute.name())) continue;
    XmlAttribute read;
    read.place = source_.place_of(at.name);
    read.value_place = source_.place_of(at.value);
    read.value = attribute.value();
    if (!resolve(attribute.name(), read.place, true, read.space, read.name)) return false;
    const auto same = [&](const XmlAttribute &other) {
      return other.space == read.space && other.name == read.name;
    };
    if (std::any_of(element.attributes.begin(), element.attributes.end(), same))
      return fail(read.place, fmt::format("the attribute {} is written twice", printable(read.name)),
                  "Keep one of the two.");
    element.attributes.push_back(std::move(read));
  }
  return true;
}

bool Builder::build(const pugi::xml_node &node, Element &element) {
  const ElementMark &mark = marks_[next_mark_++];
  const std::size_t outer = bindings_.size();
  element.place = source_.place_of(mark.tag);
  if (mark.text) element.text_place = source_.place_of(*mark.text);
  if (!declare(node, mark)) return false;
  if (!resolve(node.name(), element.place, false, element.space, element.name)) return false;
  if (!attributes(node, mark, element)) return false;
  for (const pugi::xml_node &child : node.children()) {
    if (child.type() == pugi::node_element) {
      if (!build(child, element.children.emplace_back())) return false;
    } else {
      element.text += child.value();
    }
  }
  bindings_.resize(outer);
  return true;
}

} // namespace

std::variant<Document, SourceFault> parse_document(SourceText source, const ScanLimits &limits) {
  const auto scanned = scan(source.text(), limits);
  if (const auto *fault = std::get_if<ScanFault>(&scanned))
    return source.fault_at(source.place_of(fault->offset), fault->what, fault->remedy);
  constexpr unsigned flags = pugi::parse_cdata | pugi::parse_escapes | pugi::parse_wconv_attribute |
                             pugi::parse_eol | pugi::parse_ws_pcdata;
  pugi::xml_document parsed;
  const auto result =
      parsed.load_buffer(source.text().data(), source.text().size(), flags, pugi::encoding_utf8);
  if (!result)
    return source.fault_at(source.place_of(static_cast<std::size_t>(result.offset)), result.description(),
                           "Mend the XML at this place.");
  Element root;
  Builder builder(source, std::get<std::vector<ElementMark>>(scanned));
  if (!builder.build(parsed.document_element(), root)) return builder.fault();
  return Document{std::move(source), std::move(root)};
}

std::variant<Document, SourceFault> read_document(const std::filesystem::path &file) {
  auto source = read_source(file);
  if (!source) return SourceFault{source.fault(), {}, 0};
  return parse_document(std::move(source).value());
}

} // namespace stoneproof
