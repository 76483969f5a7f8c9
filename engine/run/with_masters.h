// A book read from a finished PDF -> the same book made of the files that its pictures were made from.
#pragma once

#include "engine/rules/evidence.h"

#include <cstddef>
#include <filesystem>

namespace stoneproof {

struct BookOfMasters {
  Book book;
  std::size_t found = 0, pictures = 0; ///< so many of the pictures have another file now
};

/// Where the master of a picture is sure and holds all that the picture's frames show, its file takes the
/// picture's place, and every frame goes on showing what it shows. `searched` is the folder in which masters
/// were looked for: the folders in it are taken for contributors by their names. Files are named from
/// `description` on, the folder of the description.
BookOfMasters with_masters(const Evidence &evidence, const std::filesystem::path &searched,
                           const std::filesystem::path &description);

} // namespace stoneproof
