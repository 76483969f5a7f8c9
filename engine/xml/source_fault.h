// A fault in a text file, with the line it stands on, and what a reader of such files gives back.
#pragma once

#include "engine/outcome.h"

#include <optional>
#include <string>
#include <vector>

namespace stoneproof {

/// A fault and the source line that shows it. `fault.where` is path:line:column, or the path alone where the
/// fault belongs to no line; then the line is empty and the column 0.
struct SourceFault {
  Fault fault;
  std::string
      source_line; ///< UTF-8 without line end or control characters; of a very long line the part around
  int column = 0;  ///< 1-based, in characters of `source_line`: where the caret goes

  friend bool operator==(const SourceFault &, const SourceFault &) = default;
};

/// The fault as lines of text, each ended by a newline: where and what, the source line, the caret, the
/// remedy. A tab shows as one space and a line longer than `width` characters is shortened around the caret.
/// Columns are code points, so under characters that a terminal draws two cells wide the caret stands to the
/// left.
std::string with_caret(const SourceFault &fault, int width = 100);

/// What a reader gives back: the value, or every fault found (at least one, in the order of the file).
template <class T>
struct [[nodiscard]] Reading {
  std::optional<T> value;
  std::vector<SourceFault> faults;

  explicit operator bool() const { return value.has_value(); }
};

} // namespace stoneproof
