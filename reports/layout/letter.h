// A letter to a contributor as a laid-out document.
#pragma once

#include "engine/picture/small_copy.h"
#include "reports/content/letter_content.h"
#include "reports/layout/document.h"
#include "reports/type/typesetter.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>

namespace stoneproof::layout {

struct LetterOptions {
  std::string fingerprint;             ///< of the inputs
  std::optional<std::int64_t> made_at; ///< seconds since 1970-01-01 UTC; none: the letter carries no date
};

/// How fine the small copies are made for letters, on the printed book page: what is printed 10 cm wide
/// still looks well as the largest thumbnail.
inline constexpr Density letter_copy_density = Density::of_ppi(130);

/// The greeting and what to do at a glance; each picture with the one thing to do; on the last page how to
/// scan, and the reply slip. `copies` holds one entry for each of Book::pictures.
Document letter_document(const content::LetterContent &content,
                         std::span<const std::optional<SmallCopy>> copies, const Typesetter &typesetter,
                         const LetterOptions &options);

} // namespace stoneproof::layout
