// The rules, explained.
#pragma once

#include "engine/outcome.h"

#include <string>
#include <string_view>

namespace stoneproof::terminal {

/// Every rule in a line: id, gravest grade, title.
std::string rule_list();

/// What a rule says of itself. A Fault where there is no such rule.
Outcome<std::string> rule_text(std::string_view id, int width);

} // namespace stoneproof::terminal
