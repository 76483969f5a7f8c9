// The help texts.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::terminal {

/// One option: how it is written, and what it does.
struct HelpRow {
  std::string option, does;
};

/// Help for a verb, examples first; for the whole program where `verb` is empty.
std::string help_text(std::string_view verb, const std::vector<HelpRow> &options);

/// The verbs in the order in which help shows them.
std::vector<std::string_view> verb_names();

} // namespace stoneproof::terminal
