// What a mark on a finished PDF says, looks like and is called; in XFDF and in the PDF itself alike.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"

#include <cstdint>
#include <map>
#include <string>
#include <string_view>

namespace stoneproof::record {

/// The graver, the darker and the less broken: told apart in grey, and by those who see no colours.
struct MarkLook {
  std::string_view colour, border; ///< "#rrggbb", and attributes of XFDF
};
MarkLook look_of(Grade grade);

/// Grade, page, subject, contributor; what is wrong; what to do: a line each.
std::string mark_words(const Evidence &evidence, const Finding &finding);

/// Seconds since 1970-01-01 UTC as PDF writes a date (ISO 32000-1, 7.9.4).
std::string pdf_date(std::int64_t seconds);

/// Names that stay the same from round to round, one of a kind in a file.
class MarkNames {
public:
  /// `evidence` must outlive this object.
  explicit MarkNames(const Evidence &evidence) : evidence_(evidence) {}
  std::string name_of(const Finding &finding);

private:
  const Evidence &evidence_;
  std::map<std::string, int> names_;
};

} // namespace stoneproof::record
