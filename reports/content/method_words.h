// How the book was checked and what no check can know, in plain words.
#pragma once

#include "engine/rules/rule.h"

#include <string>
#include <vector>

namespace stoneproof::content {

/// One matter, under a heading of a few words.
struct MethodPart {
  std::string heading, text;
};

/// A rule that found something: the fault, how often, and what was measured after which source.
struct RuleUsed {
  std::string title, count, measure;
};

struct MethodWords {
  std::vector<MethodPart> parts;
  std::vector<RuleUsed> rules; ///< in reading order of the rules
  std::size_t silent = 0;      ///< rules that found nothing
};

MethodWords method_words(const Evidence &evidence, const std::vector<Finding> &findings);

} // namespace stoneproof::content
