// Density is pixels over length, at full precision. Tests engine/units/density.h.
#include "engine/units/density.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

static_assert((Pixels{3000} / 10_in).ppi() == 300.0);
static_assert((Pixels{3000} / 254_mm).ppi() == 300.0);
static_assert((Pixels{300} / 72_pt).ppi() == 300.0);
static_assert(Pixels{600} / Density::of_ppi(300) == 2_in);
static_assert((Density::of_ppi(300) * 8.25_in).count == 2475.0);
static_assert(Density::of_ppi(299.999) < Density::of_ppi(300));
static_assert(Density::of_ppi(150) / Density::of_ppi(300) == 0.5);
static_assert(Density::of_ppi(300) * 0.5 == Density::of_ppi(150));

TEST_CASE("a density is not rounded") {
  CHECK((Pixels{2480} / 210_mm).ppi() == Approx(2480 / (210 / 25.4)).epsilon(1e-15));
  CHECK(Pixels{2480} / 210_mm < Density::of_ppi(300));
  CHECK(Pixels{2480.5} / 210_mm > Density::of_ppi(300));
}
