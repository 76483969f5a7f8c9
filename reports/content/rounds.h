// Two rounds of proofing side by side: what is new, what still stands, what was mended.
#pragma once

#include "engine/rules/finding.h"

#include <optional>
#include <string>
#include <vector>

namespace stoneproof::content {

/// A finding as a record keeps it.
struct RecordedFinding {
  std::string rule;
  Grade grade = Grade::note;
  std::optional<int> page; ///< its number; 0: the cover; none: the book or a picture as a whole
  std::optional<std::string> frame, text, picture; ///< ids, and the words of a text block
  std::string message;
};

/// "Page 7", "Cover", "The book".
std::string page_name(const RecordedFinding &finding);

/// What a record tells of one round.
struct RecordedRound {
  std::string title;
  bool held = false;
  std::vector<std::string> frames; ///< ids
  std::vector<RecordedFinding> findings;
  bool pixels_measured = true; ///< false: a quick proof, which finds nothing that only pixels show
};

/// Places in the findings of the earlier round (mended, unlooked) and of the later one (fresh, standing), in
/// their order.
struct Rounds {
  std::vector<std::size_t> fresh, standing, mended;
  std::vector<std::size_t> unlooked; ///< nobody looked whether they still stand: the later round was quick
};

/// Each finding of the later round is the same as one of the earlier round where the rule is, and the frame,
/// picture and words that it is about; else where the frame is the same, whatever picture it shows now; else
/// the picture, whatever frame shows it; else the words; a finding about none of these where the page is, or
/// both are about the whole book. So renumbered pages and moved frames change nothing. Each is matched once.
Rounds compare_rounds(const RecordedRound &before, const RecordedRound &now);

/// Whether the records can be of one book: the same title, or a frame in common.
bool same_book(const RecordedRound &before, const RecordedRound &now);

/// "3 new, 40 standing, 5 mended", and "2 not looked at" where there are some.
std::string round_words(const Rounds &rounds);

} // namespace stoneproof::content
