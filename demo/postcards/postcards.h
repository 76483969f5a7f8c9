// The postcards: a stapled booklet that comes as its finished PDF. demo/planted.md lists its planted faults.
#pragma once

#include <filesystem>

namespace stoneproof::demo {

/// Throws std::runtime_error when a font is not installed or the file cannot be written.
void write_postcards(const std::filesystem::path &file);

} // namespace stoneproof::demo
