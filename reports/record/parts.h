// The parts of the record as JSON values, and how plain values look in it. Used in this folder only.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"
#include "engine/run/measure_files.h"

#include <nlohmann/json.hpp>
#include <optional>
#include <string>

namespace stoneproof::record {

/// Keys stay in the order in which they were set.
using Json = nlohmann::ordered_json;

Json book_part(const Book &book, const std::string &sha256);
/// `binding` is that of the book.
Json press_part(const PressSheet &press, BindingKind binding);
Json object_part(const Evidence &evidence);
Json picture_part(const Evidence &evidence, std::size_t picture);
/// `frame` counts Evidence::frames.
Json frame_part(const Evidence &evidence, std::size_t frame);
/// Sets all that is known of the file itself, from "fault" to "true_detail".
void add_state(Json &part, const PictureState &state);
/// Null where nobody looked, or there is no ink to tell of.
Json tone_part(const Shown *shown);
Json detail_part(const Shown *shown);
Json ink_part(const Shown *shown);
Json glass_part(const Evidence &evidence, const Glass &glass);
Json dirt_part(const std::vector<DirtOn> &dirt);
Json finding_part(const Evidence &evidence, const Finding &finding);

template <class T>
Json or_null(const std::optional<T> &value) {
  return value ? Json(*value) : Json(nullptr);
}

/// The last part of a path: where the folder stands is nobody's business.
inline std::string bare_name(const std::filesystem::path &path) { return path.filename().string(); }

inline Json in_mm(Length length) { return length.mm(); }
inline Json in_mm(const Size &size) { return {{"width", size.width.mm()}, {"height", size.height.mm()}}; }

inline Json in_mm(const Rect &rect) {
  return {{"x", rect.x.mm()}, {"y", rect.y.mm()}, {"width", rect.width.mm()}, {"height", rect.height.mm()}};
}

inline Json in_mm(const Edges &edges) {
  return {{"top", edges.top.mm()},
          {"bottom", edges.bottom.mm()},
          {"outside", edges.outside.mm()},
          {"inside", edges.inside.mm()}};
}

inline Json in_px(const PixelRect &rect) {
  return {{"x", rect.x}, {"y", rect.y}, {"width", rect.width}, {"height", rect.height}};
}

/// A value in millimetres, or null.
template <class T>
Json in_mm_or_null(const std::optional<T> &value) {
  return value ? in_mm(*value) : Json(nullptr);
}

/// The id of the thing that an index names, or null.
template <class Things>
Json id_or_null(const Things &things, const std::optional<std::size_t> &index) {
  return index ? Json(things[*index].id) : Json(nullptr);
}

} // namespace stoneproof::record
