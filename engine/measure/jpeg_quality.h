// The quality setting that the quantization tables of a JPEG stand for, from 1 (coarsest) to 100.
//
// The standard tables are those of ITU-T T.81 (09/92), Annex K, tables K.1 (luminance) and K.2 (chrominance).
// The usual scaling is that of the Independent JPEG Group's library, jpeg_quality_scaling and
// jpeg_add_quant_table: S = 5000 / quality below 50 in whole numbers, else 200 - 2 quality; a step is
// (step of the standard table x S + 50) / 100 in whole numbers, at least 1 and at most 255, or at most 32767
// where the writer did not hold itself to baseline JPEG.
//
// Quality speaks of the last saving only, and is no measure of what is seen: what an earlier, coarser saving
// has lost stays lost.
#pragma once

#include "engine/picture/facts.h"

#include <optional>

namespace stoneproof {

/// The largest step that a writer allows itself.
enum class LargestStep : int { baseline = 255, extended = 32767 };

/// The standard tables scaled to a quality from 1 to 100.
QuantTable standard_luma(int quality, LargestStep largest = LargestStep::baseline);
QuantTable standard_chroma(int quality, LargestStep largest = LargestStep::baseline);

struct JpegQuality {
  int quality = 100;
  bool exact = true; ///< every table is the standard one at this quality; else the quality is the nearest
  double error = 0;  ///< root mean square, over all steps, of step / standard step at this quality - 1
};

/// Where the luma table is a standard one, its quality, which it alone stands for: the 100 tables differ.
/// Else the quality whose S is nearest in the least squares of step / standard step: S = 100 x their mean
/// over the luma table, quality = (200 - S) / 2 up to S = 100, else 5000 / S. A chroma table is also standard
/// when it is the luma table of the same quality, as some writers use one table for all. None where there is
/// no luma table or where a step is 0, which T.81, B.2.4.1 forbids.
std::optional<JpegQuality> jpeg_quality(const JpegFacts &facts);

} // namespace stoneproof
