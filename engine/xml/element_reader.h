// Reads the elements of a description one by one and collects every fault on the way. Shared by all readers.
#pragma once

#include "engine/xml/characters.h"
#include "engine/xml/document.h"
#include "engine/xml/source_fault.h"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

/// Faults beyond this many are counted, not kept: nobody mends more before the next run.
inline constexpr std::size_t most_faults = 25;

class FaultList {
public:
  explicit FaultList(const SourceText &source) : source_(source) {}

  bool empty() const { return faults_.empty(); }
  std::size_t count() const { return faults_.size() + beyond_; }
  bool full() const { return faults_.size() >= most_faults; }
  void add(SourcePlace place, std::string what, std::string remedy);
  /// In the order of the file; beyond the limit a closing fault says how many more there are.
  std::vector<SourceFault> sorted() const;

private:
  struct Placed {
    SourcePlace place;
    std::string what, remedy;
  };
  const SourceText &source_;
  std::vector<Placed> faults_;
  std::size_t beyond_ = 0;
};

/// Reads one element: ask for its attributes and children by name. When it goes out of scope, whatever was
/// never asked for is a fault, with the nearest of the names that were. A value that is missing or faulty
/// comes back as a default one, with the fault collected. Names without a prefix are in the element's own
/// namespace.
class ElementReader {
public:
  ElementReader(const Element &element, FaultList &faults) : element_(element), faults_(faults) {}
  ~ElementReader();
  ElementReader(const ElementReader &) = delete;
  ElementReader &operator=(const ElementReader &) = delete;

  /// `parse` is a function of values.h or like them: text -> Outcome<T>, `where` left empty.
  template <class Parse>
  auto required(std::string_view name, Parse parse) {
    using Value = std::decay_t<decltype(parse(std::string_view()).value())>;
    const XmlAttribute *attribute = ask(name);
    if (!attribute) missing_attribute(name);
    return attribute ? parsed(*attribute, parse).value_or(Value()) : Value();
  }
  template <class Parse>
  auto optional(std::string_view name, Parse parse) {
    using Value = std::decay_t<decltype(parse(std::string_view()).value())>;
    const XmlAttribute *attribute = ask(name);
    return attribute ? parsed(*attribute, parse) : std::optional<Value>();
  }
  bool has(std::string_view name) const { return find(name) != nullptr; }
  /// Where the value of an attribute stands; of an absent one, the element.
  SourcePlace place_of(std::string_view name) const;

  /// The one child of this name, which must be there; null after a fault.
  const Element *one(std::string_view name);
  /// The child of this name, at most one; null when there is none.
  const Element *maybe(std::string_view name);
  /// All children of these names in the order of the file.
  std::vector<const Element *> all(std::initializer_list<std::string_view> names);

  /// The element's own text, which is a fault if it is never asked for.
  const std::string &text();

  void fault(SourcePlace place, std::string what, std::string remedy) {
    faults_.add(place, std::move(what), std::move(remedy));
  }
  const Element &element() const { return element_; }

private:
  const XmlAttribute *find(std::string_view name) const;
  const XmlAttribute *ask(std::string_view name);
  void missing_attribute(std::string_view name);
  bool is(const Element &child, std::string_view name) const;
  void check_attributes();
  void check_children();

  template <class Parse>
  auto parsed(const XmlAttribute &attribute, Parse parse) {
    auto outcome = parse(std::string_view(attribute.value));
    using Value = std::decay_t<decltype(outcome.value())>;
    if (outcome) return std::optional<Value>(std::move(outcome).value());
    faults_.add(attribute.value_place,
                attribute.name + "=" + in_quotes(attribute.value) + ": " + outcome.fault().what,
                outcome.fault().remedy);
    return std::optional<Value>();
  }

  const Element &element_;
  FaultList &faults_;
  std::vector<std::string_view> known_attributes_, known_children_;
  bool text_asked_ = false;
};

/// Whether the root is the element that a reader knows; if not, the fault is collected.
bool check_root(const Document &document, std::string_view name, std::string_view space, FaultList &faults);

} // namespace stoneproof
