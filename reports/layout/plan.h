// The scanning plan as a laid-out document.
#pragma once

#include "reports/content/plan_content.h"
#include "reports/layout/document.h"
#include "reports/type/typesetter.h"

#include <cstdint>
#include <optional>
#include <string>

namespace stoneproof::layout {

struct PlanOptions {
  std::string fingerprint;             ///< of the inputs
  std::optional<std::int64_t> made_at; ///< seconds since 1970-01-01 UTC; none: the plan carries no date
};

/// The front with totals, people and what must be decided; then for each person, beginning on a sheet of
/// their own, the piles by setting with a box to tick for each original; at the end how to scan.
Document plan_document(const content::PlanContent &content, const Typesetter &typesetter,
                       const PlanOptions &options);

} // namespace stoneproof::layout
