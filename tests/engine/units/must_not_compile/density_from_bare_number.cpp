// A density is made from ppi by name only. Compiled twice by the tests, with and without the forbidden line.
#include "engine/units/density.h"
#include "engine/units/length.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
Density density = Density(300.0);
#else
Density density = Density::of_ppi(300);
#endif
