// Pixels are not compared with lengths. Compiled twice by the tests, with and without the forbidden line.
#include "engine/units/density.h"
#include "engine/units/length.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
bool less = Pixels{300} < 1_in;
#else
bool less = Pixels{300} < Pixels{301};
#endif
