// Annotations of a page (ISO 32000-1, 12.5): comments, stamps, form fields.
#pragma once

#include "engine/import/pdf_file.h"
#include "engine/import/plane.h"

#include <string>
#include <vector>

namespace stoneproof::finished {

struct ShownNote {
  Box box;
  std::string kind; ///< Subtype of the annotation, e.g. "Text"
  bool prints = false;
  Object appearance; ///< the form that draws it, one of its AP; nothing where it has none
};

/// Links, what pops up and what is hidden aside; of 2,000 and more on a page the first 2,000.
std::vector<ShownNote> notes_of(const Object &page);

/// What brings the form of an annotation to its place (12.5.5, algorithm "appearance streams"), after the
/// form's own Matrix. None: the form has no area.
std::optional<Matrix> place_of_appearance(const ShownNote &note);

} // namespace stoneproof::finished
