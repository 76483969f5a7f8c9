// Every picture of the demo album: which scene, how large, how aged, how stored. demo/book.xml places them by
// name.
#pragma once

#include "demo/files/files.h"
#include "demo/paint/finish.h"
#include "demo/scenes/scenes.h"

#include <span>
#include <string>

namespace stoneproof::demo {

using Scene = void (*)(Canvas &, Random &);

/// What befell a file on its way to the album.
enum class Mishap { none, text_in_disguise, broke_off_early, broke_off_halfway };

struct AlbumPicture {
  std::string file; ///< in pictures/; the extension decides the format
  Scene scene;
  std::uint32_t seed;
  int width, height; ///< pixels as the picture is seen
  Finish finish = {};
  Storage storage = {};
  Mishap mishap = Mishap::none;
};

/// In the order of the book.
std::span<const AlbumPicture> album();

/// The picture as it was before it became a file.
Canvas painted(const AlbumPicture &picture);

} // namespace stoneproof::demo
