// A length is made from ticks by name only. Compiled twice by the tests, with and without the forbidden line.
#include "engine/units/density.h"
#include "engine/units/length.h"

using namespace stoneproof;
using namespace stoneproof::literals;

#ifdef FORBIDDEN
Length length = Length(std::int64_t{3});
#else
Length length = Length::of_ticks(3);
#endif
