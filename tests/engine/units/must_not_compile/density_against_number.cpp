// A density is not compared with a bare number. Compiled twice by the tests, with and without the forbidden
// line.
#include "engine/units/density.h"
#include "engine/units/length.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
bool less = Density::of_ppi(299) < 300.0;
#else
bool less = Density::of_ppi(299) < Density::of_ppi(300);
#endif
