// Regular things that a camera meets, drawn in perspective and with the irregularity that they have: none of
// them is a printed screen.
#pragma once

#include "tests/bench/detail/pixels.h"

#include <functional>

namespace bench {

/// Brightness, 0 to 1, at a place of the thing itself, whose pattern repeats every unit along both axes.
using Pattern = std::function<double(double, double)>;
struct NamedPattern {
  const char *name;
  Pattern pattern;
};
extern const std::vector<NamedPattern> patterns;

/// Seen by a camera that stands a little aslant, turned by chance, 900 x 900 pixels, repeating every 3 to 14
/// pixels, every repeat a little off its place and of its own brightness.
Pixels draw_pattern(const Pattern &pattern, std::mt19937 &random);

} // namespace bench
