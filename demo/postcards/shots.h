// The pictures of the postcards, as a layout program exported them from those of the album.
#pragma once

#include "demo/postcards/card_file.h"

namespace stoneproof::demo {

/// With so many pixels that each comes to about 300 an inch on its page, or more; what does not is planted.
/// Names: lake, house, wheat, mill, night, valley, picnic, kite, flood, street, coast, ferry.
void add_shots(CardFile &cards);

/// How many times as wide as high a picture of add_shots is.
double aspect_of(const std::string &name);

} // namespace stoneproof::demo
