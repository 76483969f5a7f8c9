// What the proof says, in the order in which it says it. Sentences and figures, no coordinates of the proof's
// pages.
#pragma once

#include "engine/rules/rule.h"
#include "reports/content/method_words.h"
#include "reports/content/object_words.h"
#include "reports/content/picture_words.h"
#include "reports/content/press_words.h"
#include "reports/content/rounds.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::content {

/// One finding as the proof tells it. Numbers run through the book in page order.
struct Mark {
  int number = 0;
  Grade grade = Grade::note;
  std::string title;   ///< the fault in a few words
  std::string page;    ///< "Page 7"
  std::string subject; ///< the file, frame or text
  std::string frame;   ///< id of the frame; empty where it is about no frame
  std::string owner;   ///< the contributor whose picture it is; empty where nobody is named
  std::string message, remedy;
  bool fresh = false;                 ///< new since the last round
  std::optional<std::size_t> surface; ///< index into ProofContent::surfaces
  std::vector<PageSide> sides;        ///< of the page, at which the place is wrong
  std::optional<Rect> area;           ///< the place, in the coordinates of that page
  std::optional<Corners> corners;     ///< of the place, where it is the whole of a turned frame
  std::optional<std::size_t> picture; ///< index into Book::pictures
  std::size_t finding = 0;            ///< index into the findings
};

/// What weighs most, all findings of one rule and grade together.
struct Matter {
  Grade grade = Grade::hold;
  std::size_t count = 0;
  std::string title; ///< the fault in a few words
  std::string where; ///< "Pages 3, 5, 7–8 and 9"
  std::size_t mark;  ///< index into ProofContent::marks: the first of them
};

/// Something that the last round found and this one does not.
struct MendedMark {
  std::string grade, title, page, message; ///< as the last round's record tells it
};

/// One page or spread of the book with the marks on it, from top to bottom.
struct Surface {
  std::string name;               ///< "Page 7"
  std::size_t page = 0;           ///< index into Book::pages
  std::vector<std::size_t> marks; ///< indexes into ProofContent::marks
};

struct ProofContent {
  std::string title;   ///< of the book
  std::string job;     ///< the book in one line: trim, binding, pages, pictures
  std::string verdict; ///< one line
  std::string file;    ///< of a finished PDF that has a title besides; empty: none
  std::string masters; ///< which files were found behind the pictures; empty: none were looked for
  std::string round;   ///< what changed since the last round; empty: there is none to compare

  bool clear = false;                     ///< no hold
  std::array<std::size_t, 3> counts{};    ///< by Grade
  std::vector<Mark> marks;                ///< by number
  std::vector<std::size_t> gravest_first; ///< indexes into marks, for the table of what must be done
  std::vector<Matter> matters;            ///< holds, then queries; those that are met most often first
  std::vector<MendedMark> mended;         ///< none: nothing, or there is no last round
  std::vector<Surface> surfaces;          ///< one for each of Book::pages
  ObjectWords object;
  std::vector<PictureWords> pictures; ///< one for each of Book::pictures
  std::string press;                  ///< which press sheet was used, and who has the last word
  std::vector<RequirementGroup> requirements;
  MethodWords method;
};

ProofContent proof_content(const Evidence &evidence, const std::vector<Finding> &findings);

/// Tells what changed since the last round: `now` is the record of the findings that the content was made of.
void tell_round(ProofContent &content, const RecordedRound &last, const RecordedRound &now);

/// The words for the verdict, also used by the terminal.
std::string verdict_line(const std::array<std::size_t, 3> &counts);

std::array<std::size_t, 3> count_grades(const std::vector<Finding> &findings);

/// Which press sheet was used, and that the printer has the last word. Names the sheet's file without its
/// folder, which is nobody's business. `did` is what was done by it.
std::string press_line(const PressSheet &press, std::string_view did = "Checked against");

} // namespace stoneproof::content
