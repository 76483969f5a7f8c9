// Optional content: which layers of a PDF show (ISO 32000-1, 8.11).
#pragma once

#include "engine/import/pdf_file.h"

#include <cstdint>
#include <set>

namespace stoneproof::finished {

/// The layers as the document opens.
class Layers {
public:
  explicit Layers(const Object &catalog);

  /// Whether what belongs to this group, or membership dictionary, shows. Visibility expressions (VE) are not
  /// followed: the groups beside them count, and without those it shows. A group that the document does not
  /// list counts as none.
  bool show(const Object &content) const;

private:
  bool group_shows(const Object &group) const { return off_.count(group.id()) == 0; }

  std::set<std::uint32_t> listed_, off_;
};

} // namespace stoneproof::finished
