// What a press sheet says of the book as an object. For the reader of this folder.
#pragma once

#include "engine/press/press_sheet.h"
#include "engine/xml/element_reader.h"

namespace stoneproof {

std::array<PageCountBar, 5> read_page_counts(const Element &list, FaultList &faults);
std::vector<InsideMargin> read_inside_margins(const Element &list, FaultList &faults);
SpineBar read_spine(const Element &element, FaultList &faults);
std::array<Length, 5> read_type_sizes(const Element &list, FaultList &faults);

} // namespace stoneproof
