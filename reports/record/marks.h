// The findings as marks that other programs lay on the finished PDF of the book: XFDF (ISO 19444-1).
// schema/marks.md describes them, schema/marks.xsd is their schema.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"
#include "reports/record/finished_pdf.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof::record {

struct MarksOptions {
  FinishedFile file = FinishedFile::block;
  bool cover_apart =
      false; ///< the cover's own marks are written too; else the block's tell of the cover in notes
  std::optional<std::int64_t> made_at; ///< seconds since 1970-01-01 UTC, up to the year 9999; none: no date
};

/// UTF-8, ended by a newline. A square for each finding that has a place, on each page of the PDF that shows
/// some of it; else a note. What concerns the book as a whole is noted on the first page of the block. The
/// same input gives the same bytes.
std::string marks_text(const Evidence &evidence, const std::vector<Finding> &findings,
                       const MarksOptions &options);

} // namespace stoneproof::record
