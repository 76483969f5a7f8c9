// Whether the lines that stand beside a trace are such as an enlargement leaves.
#pragma once

#include "engine/measure/upsampling_peaks.h"

namespace stoneproof {

/// True where alpha is a line of a JPEG's blocks that were made smaller. Blocks of 8 pixels leave lines at
/// multiples of 1/8; of a JPEG that was then resized by s, at multiples of 1 / (8 s), folded at one. After an
/// enlargement these lie closer than 1/8, and its own trace is the eighth of them. After a reduction they lie
/// further apart, and the second to the sixth look like an enlargement: they are told by another of the same
/// row that stands beside, which no enlargement would leave there.
bool of_reduced_blocks(const std::vector<TracePeak> &peaks, double alpha);

/// True where a line stands out nearly as much as the strongest that no enlargement with its trace at alpha
/// explains: not by a multiple, by blocks that were enlarged with it, or by those of a JPEG saved since. A
/// pattern in the picture leaves many lines, an enlargement one.
bool of_a_pattern(const std::vector<TracePeak> &peaks, double alpha);

} // namespace stoneproof
