// A rule: one file, one id, one check, with the explanation that `explain` prints.
#pragma once

#include "engine/rules/evidence.h"
#include "engine/rules/finding.h"

#include <span>
#include <string_view>
#include <vector>

namespace stoneproof {

/// `id` names the fault, not the cure, and is never used again for another rule. The texts are whole
/// sentences.
struct Rule {
  std::string_view id;
  Grade grade;              ///< the gravest that it gives
  std::string_view title;   ///< the fault in a few words
  std::string_view why;     ///< what goes wrong in print
  std::string_view measure; ///< what is measured, with its formula and where it comes from
  std::string_view remedy;  ///< how to mend it
  void (*check)(const Evidence &,
                std::vector<Finding> &); ///< adds findings; their `rule` is filled in afterwards
  bool of_pixels = false;                ///< it finds nothing where nobody looked at the pixels
  bool of_finished_pdf = false;          ///< it speaks of books that come as their finished PDF alone
};

/// Every rule, in reading order.
std::span<const Rule *const> all_rules();

/// The rule of an id, or null.
const Rule *find_rule(std::string_view id);

/// Runs every rule. Gravest first; within a grade in book order, then in reading order of the rules.
std::vector<Finding> check_rules(const Evidence &);

} // namespace stoneproof
