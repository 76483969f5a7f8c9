// Measured picture files on the terminal.
#pragma once

#include "engine/run/measure_files.h"

#include <string>
#include <vector>

namespace stoneproof::terminal {

/// A block for each file, with a line between blocks: its name, its facts, the prints that it is good for.
/// At the end which press sheet was used.
/// Facts are broken to `width`; a path takes what it needs, since nobody could use less of it,
/// and tables up to 80 columns.
std::string measure_summary(const std::vector<MeasuredFile> &files, const PressSheet &press, int width,
                            bool bold);

} // namespace stoneproof::terminal
