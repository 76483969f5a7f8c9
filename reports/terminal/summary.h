// The summary on the terminal.
#pragma once

#include "reports/content/proof_content.h"

#include <filesystem>
#include <optional>
#include <string>

namespace stoneproof::terminal {

/// What was written.
struct ProofFiles {
  std::filesystem::path proof, record;
  std::optional<std::filesystem::path> marks = {}, cover_marks = {}, annotated = {};
};

/// Lines that a summary takes at most, so that it fits a screen of 24 with the prompt. A path that is wider
/// than the screen is not shortened, since nobody could use it, and takes what it needs.
inline constexpr int most_summary_lines = 23;

/// Verdict, counts, the gravest findings as far as they fit, where the files are, which press sheet was used.
std::string summary(const content::ProofContent &content, const ProofFiles &files, int width, bool bold);

} // namespace stoneproof::terminal
