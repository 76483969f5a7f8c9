// Reads what a press sheet says of the book as an object: page counts, inside margins, spine, type. Ways in:
// read_object.h. Tested in tests/engine/press/read.test.cpp and schema.test.cpp.
#include "engine/press/read_object.h"

#include "engine/press/read_each.h"

namespace stoneproof {

std::array<PageCountBar, 5> read_page_counts(const Element &list, FaultList &faults) {
  ElementReader reader(list, faults);
  std::array<PageCountBar, 5> bars;
  read_each(reader, "page-count", "binding", binding_words, "page count", faults,
            [&](ElementReader &one, BindingKind kind) {
              const std::size_t before = faults.count();
              const PageCountBar bar{one.required("multiple", parse_count),
                                     one.required("least", parse_count), one.required("most", parse_count)};
              if (faults.count() == before && bar.least > bar.most)
                one.fault(one.place_of("least"), "the least page count is above the most",
                          "Swap the two values.");
              bars[static_cast<std::size_t>(kind)] = bar;
            });
  return bars;
}

std::vector<InsideMargin> read_inside_margins(const Element &list, FaultList &faults) {
  ElementReader reader(list, faults);
  std::vector<InsideMargin> margins;
  for (const Element *element : reader.all({"inside-margin"})) {
    ElementReader one(*element, faults);
    const std::size_t before = faults.count();
    const InsideMargin margin{one.required("from", parse_count),
                              one.required("least", parse_length_from_zero)};
    if (faults.count() > before) continue; // what a faulty value stands for is no ground for further faults
    if (!margins.empty() && margin.from <= margins.back().from)
      one.fault(one.place_of("from"),
                fmt::format("the margin from {} pages on comes after that from {}", margin.from,
                            margins.back().from),
                "Write them in rising order, each number of pages once.");
    margins.push_back(margin);
  }
  return margins;
}

SpineBar read_spine(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  return {reader.required("leaf-tolerance", parse_length_from_zero),
          reader.required("text-from", parse_length_from_zero),
          reader.required("text-clear", parse_length_from_zero)};
}

std::array<Length, 5> read_type_sizes(const Element &list, FaultList &faults) {
  ElementReader reader(list, faults);
  std::array<Length, 5> sizes;
  read_each(reader, "type-size", "kind", text_words, "type size", faults,
            [&](ElementReader &one, TextKind kind) {
              sizes[static_cast<std::size_t>(kind)] = one.required("least", parse_length_from_zero);
            });
  return sizes;
}

} // namespace stoneproof
