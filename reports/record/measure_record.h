// Measured picture files as JSON text. schema/measure.schema.json and schema/measure.md describe the keys.
#pragma once

#include "engine/run/measure_files.h"

#include <string>
#include <vector>

namespace stoneproof::record {

/// The number of the schema. A key is never renamed, dropped or given another meaning without a new one.
inline constexpr int measure_schema_number = 1;

/// UTF-8, indented by two spaces, ended by a newline. The same files give the same bytes. `version` is the
/// program's. Bytes that are not UTF-8 become U+FFFD.
std::string measure_text(const std::vector<MeasuredFile> &files, const PressSheet &press,
                         const std::string &version);

} // namespace stoneproof::record
