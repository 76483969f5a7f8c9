// Reads SOURCE_DATE_EPOCH (reproducible-builds.org/specs/source-date-epoch). The only way in is source_date;
// tested in tests/reports/terminal.
#include "reports/terminal/source_date.h"

#include "engine/xml/characters.h"

#include <charconv>
#include <cstdlib>
#include <string_view>

namespace stoneproof::terminal {

Outcome<std::optional<std::int64_t>> source_date() {
  constexpr std::int64_t end_of_9999 = 253'402'300'799;
  const char *set = std::getenv("SOURCE_DATE_EPOCH");
  if (!set) return std::optional<std::int64_t>();
  const std::string_view text = set;
  std::int64_t seconds = -1;
  const auto [stopped, error] = std::from_chars(text.data(), text.data() + text.size(), seconds);
  if (error != std::errc() || stopped != text.data() + text.size() || seconds < 0 || seconds > end_of_9999)
    return Fault{"this is not a date: " + in_quotes(text), "SOURCE_DATE_EPOCH",
                 "Set it to whole seconds since 1970-01-01 UTC, up to the year 9999, or unset it."};
  return std::optional(seconds);
}

} // namespace stoneproof::terminal
