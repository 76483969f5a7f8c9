// Collects faults and reads elements. Ways in: FaultList, ElementReader, check_root.
// Tested in tests/engine/xml/element_reader.test.cpp.
#include "engine/xml/element_reader.h"

#include "engine/xml/did_you_mean.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace stoneproof {
namespace {

// Editors write hints of this namespace (xsi:schemaLocation) to find the schema; a reader has no use for
// them.
constexpr std::string_view instance_space = "http://www.w3.org/2001/XMLSchema-instance";

bool is_schema_hint(const XmlAttribute &attribute) {
  return attribute.space == instance_space &&
         (attribute.name == "schemaLocation" || attribute.name == "noNamespaceSchemaLocation");
}

bool is_blank(std::string_view text) { return std::all_of(text.begin(), text.end(), is_xml_space); }

std::string list_of(const std::vector<std::string_view> &names) {
  std::string list;
  for (const auto name : names) list += fmt::format("{}{}", list.empty() ? "" : ", ", name);
  return list;
}

} // namespace

void FaultList::add(SourcePlace place, std::string what, std::string remedy) {
  if (full())
    ++beyond_;
  else
    faults_.push_back({place, std::move(what), std::move(remedy)});
}

std::vector<SourceFault> FaultList::sorted() const {
  std::vector<Placed> placed = faults_;
  std::stable_sort(placed.begin(), placed.end(), [](const Placed &a, const Placed &b) {
    return std::tie(a.place.line, a.place.column) < std::tie(b.place.line, b.place.column);
  });
  std::vector<SourceFault> faults;
  for (Placed &fault : placed)
    faults.push_back(source_.fault_at(fault.place, std::move(fault.what), std::move(fault.remedy)));
  if (beyond_ > 0)
    faults.push_back({{fmt::format("and {} more {}", beyond_, beyond_ == 1 ? "fault" : "faults"),
                       source_.name(), "Mend those above and run again."},
                      {},
                      0});
  return faults;
}

ElementReader::~ElementReader() {
  check_attributes();
  check_children();
  if (!text_asked_ && !is_blank(element_.text)) {
    const SourcePlace place = element_.text_place.line > 0 ? element_.text_place : element_.place;
    fault(place, fmt::format("there is text in <{}>, which takes none", element_.name), "Remove the text.");
  }
}

void ElementReader::check_attributes() {
  for (const XmlAttribute &attribute : element_.attributes) {
    const bool known = attribute.space.empty() &&
                       std::find(known_attributes_.begin(), known_attributes_.end(), attribute.name) !=
                           known_attributes_.end();
    if (known || is_schema_hint(attribute)) continue;
    const bool foreign = !attribute.space.empty();
    fault(attribute.place,
          fmt::format("<{}> has no attribute {}{}{}", element_.name, printable(attribute.name),
                      foreign ? " of another namespace" : "",
                      foreign ? std::string() : suggestion(attribute.name, known_attributes_)),
          known_attributes_.empty() ? "Remove it; it takes none."
                                    : fmt::format("Its attributes are {}.", list_of(known_attributes_)));
  }
}

void ElementReader::check_children() {
  for (const Element &child : element_.children) {
    const auto is_child = [&](std::string_view name) { return is(child, name); };
    if (std::any_of(known_children_.begin(), known_children_.end(), is_child)) continue;
    const bool foreign = child.space != element_.space;
    const std::string what =
        foreign ? fmt::format("<{}> is not in the namespace of <{}>", printable(child.name), element_.name)
                : fmt::format("<{}> takes no element <{}>{}", element_.name, printable(child.name),
                              suggestion(child.name, known_children_));
    fault(child.place, what,
          known_children_.empty() ? "Remove it; it takes none."
                                  : fmt::format("Its elements are {}.", list_of(known_children_)));
  }
}

const XmlAttribute *ElementReader::find(std::string_view name) const {
  for (const XmlAttribute &attribute : element_.attributes)
    if (attribute.space.empty() && attribute.name == name) return &attribute;
  return nullptr;
}

const XmlAttribute *ElementReader::ask(std::string_view name) {
  known_attributes_.push_back(name);
  return find(name);
}

void ElementReader::missing_attribute(std::string_view name) {
  fault(element_.place, fmt::format("<{}> lacks the attribute {}", element_.name, name),
        fmt::format("Add {}=\"...\".", name));
}

SourcePlace ElementReader::place_of(std::string_view name) const {
  const XmlAttribute *attribute = find(name);
  return attribute ? attribute->value_place : element_.place;
}

bool ElementReader::is(const Element &child, std::string_view name) const {
  return child.space == element_.space && child.name == name;
}

const Element *ElementReader::one(std::string_view name) {
  const Element *child = maybe(name);
  if (!child)
    fault(element_.place, fmt::format("<{}> lacks the element <{}>", element_.name, name),
          fmt::format("Add <{}> inside <{}>.", name, element_.name));
  return child;
}

const Element *ElementReader::maybe(std::string_view name) {
  const auto children = all({name});
  for (std::size_t i = 1; i < children.size(); ++i)
    fault(children[i]->place, fmt::format("<{}> takes one element <{}> only", element_.name, name),
          "Keep one of them.");
  return children.empty() ? nullptr : children.front();
}

std::vector<const Element *> ElementReader::all(std::initializer_list<std::string_view> names) {
  known_children_.insert(known_children_.end(), names.begin(), names.end());
  std::vector<const Element *> children;
  for (const Element &child : element_.children) {
    const auto is_child = [&](std::string_view name) { return is(child, name); };
    if (std::any_of(names.begin(), names.end(), is_child)) children.push_back(&child);
  }
  return children;
}

const std::string &ElementReader::text() {
  text_asked_ = true;
  return element_.text;
}

bool check_root(const Document &document, std::string_view name, std::string_view space, FaultList &faults) {
  const Element &root = document.root;
  if (root.name != name) {
    faults.add(root.place, fmt::format("the first element is <{}>, not <{}>", printable(root.name), name),
               fmt::format("Name a file that begins with <{} xmlns=\"{}\">.", name, space));
  } else if (root.space != space) {
    faults.add(root.place,
               root.space.empty() ? fmt::format("<{}> has no namespace", name)
                                  : fmt::format("<{}> is in the namespace {}", name, in_quotes(root.space)),
               fmt::format("Write <{} xmlns=\"{}\">.", name, space));
  }
  return faults.empty();
}

} // namespace stoneproof
