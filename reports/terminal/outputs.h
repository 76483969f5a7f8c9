// Where the outputs go, and what stands in their way. Looked at before the long work begins.
#pragma once

#include "engine/outcome.h"

#include <filesystem>
#include <optional>
#include <string_view>
#include <vector>

namespace stoneproof::terminal {

struct Outputs {
  std::filesystem::path proof, record;
};

/// A file that is read, and what it is called in a message.
struct Input {
  std::filesystem::path file;
  std::string_view kind;
};

/// What was asked for, else BOOK.proof.pdf and BOOK.record.json beside the description BOOK.xml.
Outputs outputs_of(const std::filesystem::path &book, const std::optional<std::filesystem::path> &proof,
                   const std::optional<std::filesystem::path> &record);

/// An output that is an input or the other output: by its path, also through links, or by the file that it
/// names.
std::optional<Fault> clash(const Outputs &outputs, const std::vector<Input> &inputs);

/// Why an output could not be written: its folder is missing or closed, or something else has its name.
std::vector<Fault> obstacles(const Outputs &outputs);

} // namespace stoneproof::terminal
