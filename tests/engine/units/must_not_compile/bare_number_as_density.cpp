// A bare number does not become a density. Compiled twice by the tests, with and without the forbidden line.
#include "engine/units/density.h"
#include "engine/units/length.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
Density density = 300.0;
#else
Density density = Pixels{300} / 1_in;
#endif
