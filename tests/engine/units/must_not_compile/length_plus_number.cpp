// Nothing but a length is added to a length. Compiled twice by the tests, with and without the forbidden
// line.
#include "engine/units/density.h"
#include "engine/units/length.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
Length length = 3_mm + 0.5;
#else
Length length = 3_mm + 0_mm;
#endif
