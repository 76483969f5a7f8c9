// The record of one check as JSON text: which files were looked at, every figure with what it was computed
// from, every finding. schema/record.schema.json and schema/record.md describe the keys.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof::record {

/// The number of the schema. A key is never renamed, dropped or given another meaning without a new one.
inline constexpr int schema_number = 1;

struct RecordOptions {
  std::string version;                 ///< of the program
  std::string book_sha256;             ///< of the description's file
  std::optional<std::int64_t> made_at; ///< seconds since 1970-01-01 UTC, up to the year 9999; none: no date
};

/// UTF-8, indented by two spaces, ended by a newline. The same input gives the same bytes. Lengths are
/// millimetres at full precision. Files are named as the description names them, so no folder of the machine
/// is told unless the description tells it. Bytes that are not UTF-8 become U+FFFD.
std::string record_text(const Evidence &evidence, const std::vector<Finding> &findings,
                        const RecordOptions &options);

} // namespace stoneproof::record
