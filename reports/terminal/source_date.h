// The date that outputs carry.
#pragma once

#include "engine/outcome.h"

#include <cstdint>
#include <optional>

namespace stoneproof::terminal {

/// SOURCE_DATE_EPOCH: seconds since 1970-01-01 UTC, up to the end of the year 9999; none where it is not set:
/// outputs then carry no date, so that the same inputs give the same bytes. A Fault where it is something
/// else.
Outcome<std::optional<std::int64_t>> source_date();

} // namespace stoneproof::terminal
