// A text file in memory, and the places in it.
#pragma once

#include "engine/outcome.h"
#include "engine/xml/source_fault.h"
#include "engine/xml/source_place.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

/// A description is text that people and layout programs write: the largest are a few megabytes.
inline constexpr std::size_t most_source_bytes = std::size_t{64} * 1024 * 1024;

class SourceText {
public:
  /// `name` is what messages call the text: a path. A UTF-8 byte order mark is taken off.
  SourceText(std::string name, std::string text);

  const std::string &name() const { return name_; }
  std::string_view text() const { return text_; }
  /// The place of a byte; the end of the text is a place too. CR, LF and CR LF each end a line.
  SourcePlace place_of(std::size_t offset) const;
  /// path:line:column
  std::string where(SourcePlace place) const;
  /// The fault at a place, with its source line.
  SourceFault fault_at(SourcePlace place, std::string what, std::string remedy) const;

private:
  std::string_view line(int number) const;
  std::size_t characters_before(std::size_t offset) const;

  std::string name_, text_;
  std::vector<std::size_t> line_starts_;
  std::vector<std::size_t> block_counts_; ///< characters before each block of bytes
};

/// Reads a file, opened read-only. Faults: missing, not readable, not a regular file (a FIFO does not hang),
/// empty, larger than `most_bytes`, UTF-16. `where` is the path.
Outcome<SourceText> read_source(const std::filesystem::path &file,
                                std::size_t most_bytes = most_source_bytes);

} // namespace stoneproof
