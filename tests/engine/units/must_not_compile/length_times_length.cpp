// Two lengths multiply to no length. Compiled twice by the tests, with and without the forbidden line.
#include "engine/units/length.h"
#include "engine/units/density.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
Length length = 3_mm * 2_mm;
#else
Length length = 3_mm * 2.0;
#endif
