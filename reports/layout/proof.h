// The proof as a laid-out document.
#pragma once

#include "engine/run/run.h"
#include "reports/content/proof_content.h"
#include "reports/layout/document.h"
#include "reports/type/typesetter.h"

#include <cstdint>
#include <optional>
#include <string>

namespace stoneproof::layout {

/// Small-copy pixels per inch of the printed book page that the proof's drawings can use: what to ask of the
/// engine.
Density copy_density(const Book &book);

struct ProofOptions {
  std::string fingerprint;             ///< of the inputs
  std::optional<std::int64_t> made_at; ///< seconds since 1970-01-01 UTC; none: the proof carries no date
  bool own_pages = false; ///< the pages of the finished PDF are shown; page i of the book is page i of it
};

/// A first sheet with the verdict, what weighs most and room to sign; the table of all that was found; the
/// pages at a glance; every page or spread with its pictures, lines and numbered marks, each explained beside
/// it; the book as an object; every picture with its facts; the press sheet; the method. Takes the small
/// copies and patches out of `checked`.
Document proof_document(const content::ProofContent &content, Checked &&checked, const Typesetter &typesetter,
                        const ProofOptions &options);

} // namespace stoneproof::layout
