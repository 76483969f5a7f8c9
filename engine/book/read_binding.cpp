// Reads how the book is bound. Only way in: read_binding. Tested in tests/engine/book/read_object.test.cpp.
#include "engine/book/read_parts.h"
#include "engine/xml/values.h"

namespace stoneproof {

Binding read_binding(const Element &element, FaultList &faults) {
  ElementReader reader(element, faults);
  Binding binding;
  binding.kind = reader.required("kind", one_of(binding_words));
  binding.first_page = reader.optional("first-page", one_of(side_words)).value_or(Side::right);
  binding.signature = reader.optional("signature", parse_signature);
  binding.board_width = reader.optional("board-width", parse_positive_length);
  const auto read = [&](std::string_view name, Length &length) {
    length = reader.optional(name, parse_length_from_zero).value_or(length);
  };
  read("gutter-loss", binding.gutter_loss);
  read("grind-off", binding.grind_off);
  read("glue", binding.glue);
  read("board", binding.board);
  read("square", binding.square);
  read("turn-in", binding.turn_in);
  read("hinge", binding.hinge);
  read("spine-lining", binding.spine_lining);
  return binding;
}

} // namespace stoneproof
