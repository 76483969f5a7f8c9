// Writing an output so that a reader finds the old file or the whole new one, never half of it.
#pragma once

#include "engine/outcome.h"

#include <filesystem>
#include <functional>
#include <ostream>
#include <string_view>

namespace stoneproof {

/// Writes a file's content into the stream it is given. A Fault means that the content could not be made;
/// failures of the stream itself need no looking after, they are found when it is closed.
using ContentWriter = std::function<Outcome<Done>(std::ostream &)>;

/// Writes to a new file in the folder of `target`, brings it to the disk and renames it to `target`. On any
/// failure, an exception of `write` included, the new file is removed and what was at `target` stays as it
/// was. The new file has the mode that the umask gives. A symbolic link at `target` is replaced, not
/// followed. A folder or a device at `target` is a Fault.
Outcome<Done> replace_file(const std::filesystem::path &target, const ContentWriter &write);

/// The same with content that is already in memory.
Outcome<Done> replace_file(const std::filesystem::path &target, std::string_view content);

} // namespace stoneproof
