// Where the outputs go, and what stands in their way. Looked at before the long work begins.
#pragma once

#include "engine/outcome.h"

#include <filesystem>
#include <optional>
#include <string_view>
#include <vector>

namespace stoneproof::terminal {

/// A file that is written, and what it is called in a message.
struct Output {
  std::filesystem::path file;
  std::string_view kind;
};

/// A file that is read, and what it is called in a message.
struct Input {
  std::filesystem::path file;
  std::string_view kind;
};

/// What was asked for, else the name of the description with another ending, beside it: BOOK.proof.pdf for
/// BOOK.xml.
std::filesystem::path output_of(const std::filesystem::path &book, const char *ending,
                                const std::optional<std::filesystem::path> &asked);

/// An output that is an input or another output: by its path, also through links, or by the file that it
/// names.
std::optional<Fault> clash(const std::vector<Output> &outputs, const std::vector<Input> &inputs);

/// Why an output could not be written: its folder is missing or closed, or something else has its name.
std::vector<Fault> obstacles(const std::vector<Output> &outputs);

} // namespace stoneproof::terminal
