// What annotations look like, and where. The only ways in are those of notes.h; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/notes.h"

#include <algorithm>

namespace stoneproof::finished {

namespace {

constexpr int hidden_flag = 2, print_flag = 4; // ISO 32000-1, table 165

/// Of several states the one that the annotation is in.
Object appearance_of(const Object &note) {
  const Object normal = note["AP"]["N"];
  return normal.is_stream() ? normal : normal[note["AS"].name()];
}

} // namespace

std::vector<ShownNote> notes_of(const Object &page) {
  const Object list = page["Annots"];
  std::vector<ShownNote> notes;
  for (std::size_t i = 0; i < std::min<std::size_t>(list.size(), 2'000); ++i) {
    const Object note = list.at(i);
    const auto box = box_in(note["Rect"]);
    const std::string kind = note["Subtype"].name();
    const int flags = note["F"].whole_or(0, 0, 65'535);
    if (!box || kind == "Link" || kind == "Popup" || (flags & hidden_flag)) continue;
    notes.push_back({*box, kind, (flags & print_flag) != 0, appearance_of(note)});
  }
  return notes;
}

std::optional<Matrix> place_of_appearance(const ShownNote &note) {
  const auto box = box_in(note.appearance["BBox"]);
  if (!box) return std::nullopt;
  const auto drawn = box_round(outline_of(*box, matrix_of(note.appearance["Matrix"])));
  if (!drawn || drawn->width() <= 0 || drawn->height() <= 0) return std::nullopt;
  const double x = note.box.width() / drawn->width(), y = note.box.height() / drawn->height();
  return Matrix{x, 0, 0, y, note.box.left - x * drawn->left, note.box.bottom - y * drawn->bottom};
}

} // namespace stoneproof::finished
