// The letters on one screen of the terminal.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof::terminal {

struct LetterLine {
  std::string name;           ///< of the contributor
  std::size_t pictures = 0;   ///< that need something; with none there is no letter
  std::filesystem::path file; ///< where the letter is, or would be
  bool written = false;
  bool old = false; ///< not written, and one from an earlier run lies there
};

struct LettersTold {
  std::string title; ///< of the book
  std::filesystem::path folder;
  std::optional<std::filesystem::path> csv = {}; ///< the table, where it was written
  std::vector<LetterLine> lines;                 ///< one for each contributor
  std::size_t nobodys = 0;                       ///< pictures that need something and have no contributor
};

/// How many letters there are and where, who gets none, what nobody is asked for: in at most
/// most_summary_lines lines.
std::string letters_summary(const LettersTold &told, int width, bool bold);

} // namespace stoneproof::terminal
