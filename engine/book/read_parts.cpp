// Reads edges and rectangles, and keeps the names that things are given. Ways in: read_parts.h.
// Tested in tests/engine/book/read_book.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/did_you_mean.h"
#include "engine/xml/values.h"

#include <fmt/format.h>

namespace stoneproof {

void Names::give(const std::string &id, std::size_t index, ElementReader &reader) {
  if (id.empty() || indices_.emplace(id, index).second) return; // an empty id has its own fault already
  reader.fault(reader.place_of("id"), fmt::format("another {} has the id {}", noun_, in_quotes(id)),
               "Give each its own id.");
}

std::optional<std::size_t> Names::find(std::string_view attribute, ElementReader &reader,
                                       const FaultList &faults) const {
  const auto id = reader.optional(attribute, parse_id);
  if (!id) return std::nullopt;
  const auto found = indices_.find(*id);
  if (found != indices_.end()) return found->second;
  std::vector<std::string_view> known;
  if (!faults.full()) // comparing with every name is for faults that are shown
    for (const auto &entry : indices_) known.push_back(entry.first);
  reader.fault(reader.place_of(attribute),
               fmt::format("no {} has the id {}{}", noun_, in_quotes(*id), suggestion(*id, known)),
               fmt::format("Write the id of a <{}>, or add one.", noun_));
  return std::nullopt;
}

Edges read_edges(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  Edges edges;
  edges.top = reader.required("top", parse_length_from_zero);
  edges.bottom = reader.required("bottom", parse_length_from_zero);
  edges.outside = reader.required("outside", parse_length_from_zero);
  edges.inside = reader.required("inside", parse_length_from_zero);
  return edges;
}

bool leaves_room(const Book &book, const Size &page) {
  if (page.width <= Length() || page.height <= Length()) return true;
  const Edges &safe = book.safe_margin;
  return safe.top + safe.bottom < page.height && safe.inside + safe.outside < page.width &&
         book.binding.gutter_loss < page.width;
}

Rect read_rect(ElementReader &reader) {
  Rect rect;
  rect.x = reader.required("x", parse_length);
  rect.y = reader.required("y", parse_length);
  rect.width = reader.required("width", parse_positive_length);
  rect.height = reader.required("height", parse_positive_length);
  return rect;
}

} // namespace stoneproof
