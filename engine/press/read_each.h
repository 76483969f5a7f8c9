// Lists of a press sheet that hold one element for each word of a table. For the readers of this folder.
#pragma once

#include "engine/book/book.h"
#include "engine/xml/element_reader.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace stoneproof {

/// Reads every `child` of a list, which says in `attribute` which word it is for: each word once, none left
/// out. `read(reader, value)` reads the other attributes; `noun` is what messages call what an element holds.
template <class E, std::size_t N, class Read>
void read_each(ElementReader &list, std::string_view child, std::string_view attribute,
               const Word<E> (&words)[N], std::string_view noun, FaultList &faults, Read read) {
  const std::size_t before_all = faults.count();
  std::vector<E> given;
  for (const Element *element : list.all({child})) {
    ElementReader reader(*element, faults);
    const std::size_t before = faults.count();
    const E value = reader.required(attribute, one_of(words));
    const bool known = faults.count() == before;
    read(reader, value);
    if (!known || faults.count() > before) continue; // a faulty value is no ground for further faults
    if (std::find(given.begin(), given.end(), value) != given.end())
      reader.fault(reader.place_of(attribute),
                   fmt::format("the {} {} is written twice", attribute, word_of(words, value)),
                   "Keep one of the two.");
    given.push_back(value);
  }
  if (faults.count() > before_all) return;
  for (const auto &[value, word] : words)
    if (std::find(given.begin(), given.end(), value) == given.end())
      list.fault(list.element().place, fmt::format("there is no {} for the {} {}", noun, attribute, word),
                 fmt::format("Add <{} {}=\"{}\" .../>.", child, attribute, word));
}

} // namespace stoneproof
