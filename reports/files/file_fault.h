// What is said when the system refuses to create, write or rename an output.
#pragma once

#include "engine/outcome.h"

#include <filesystem>

namespace stoneproof {

/// The Fault for an errno met while writing `target`. Where it says "folder", its place is the folder of
/// `target`.
Fault file_fault(int error, const std::filesystem::path &target);

/// The folder that `target` lies in, "." for a bare name.
std::filesystem::path folder_of(const std::filesystem::path &target);

} // namespace stoneproof
