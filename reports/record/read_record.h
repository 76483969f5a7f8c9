// A record read back: what an earlier round found.
#pragma once

#include "engine/outcome.h"
#include "reports/content/rounds.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace stoneproof::record {

/// Faults: the file cannot be read, is no record, or is one of another schema number; `where` is the path.
Outcome<content::RecordedRound> read_record(const std::filesystem::path &file);

/// The same of a text; `name` stands for its place in a fault.
Outcome<content::RecordedRound> parse_record(std::string_view text, const std::string &name);

} // namespace stoneproof::record
