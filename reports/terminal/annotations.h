// The findings as notes on a copy of the user's own PDF.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"
#include "reports/content/proof_content.h"
#include "reports/pdf/user_pdf.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace stoneproof::terminal {

/// A note for each finding of a book that was read from a finished PDF, in their order, with the number of
/// its mark in the proof: a box round its place, clear of what it marks, and of several round one place each
/// outside the last; where it has none, a sign at the head of its page. What concerns the book as a whole
/// stands on the first page.
/// `made_at`: seconds since 1970-01-01 UTC; none: without a date.
std::vector<pdf::UserNote> notes_on_pdf(const Evidence &evidence, const std::vector<Finding> &findings,
                                        const content::ProofContent &content,
                                        std::optional<std::int64_t> made_at);

} // namespace stoneproof::terminal
