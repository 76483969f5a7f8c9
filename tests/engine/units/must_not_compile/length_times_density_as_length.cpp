// A density times a length is pixels, no length. Compiled twice by the tests, with and without the forbidden
// line.
#include "engine/units/length.h"
#include "engine/units/density.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
Length length = Density::of_ppi(300) * 1_in;
#else
Pixels pixels = Density::of_ppi(300) * 1_in;
#endif
