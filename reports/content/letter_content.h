// What a letter to a contributor says, in the order in which it says it: sentences and figures in their
// language, no coordinates.
#pragma once

#include "reports/content/letter_asks.h"
#include "reports/content/letter_words.h"

#include <cstddef>
#include <string>
#include <vector>

namespace stoneproof::content {

/// One picture with the one thing to do.
struct LetterPicture {
  std::size_t picture = 0; ///< index into Book::pictures
  std::string number;      ///< "3", counted through the letter
  std::string name;        ///< of the file, without its folders
  std::string caption;     ///< "On page 7, printed 15.2 × 10.1 cm."
  std::string file;        ///< "Your file: house.jpg"; its name alone where it never came
  std::string glance;      ///< "Scan again"
  std::string setting;     ///< "600 dpi"; empty where there is nothing to set
  std::string badge;       ///< "Needed before printing"
  std::string instruction, why;
  std::string how;     ///< what to mind; or empty
  std::string if_lost; ///< what can still be done
};

/// The part about the scanner's glass.
struct LetterGlass {
  std::string heading, sentence;
  std::vector<SpotAt> spots; ///< none: there is nothing to draw
};

struct LetterSlip {
  std::string heading, back, from;
  std::string sent, lost, measure, help; ///< what can be ticked
  std::string sign;
};

struct LetterContent {
  std::string language; ///< BCP 47 tag of the letter's own words
  std::string letter_for, name, about, greeting, intro;
  std::vector<std::string> explained; ///< the words of the trade that the letter cannot do without
  std::string glance, glance_more, details, no_picture;
  std::vector<LetterPicture> pictures;
  std::vector<LetterGlass> glasses;
  std::string check_heading;
  std::vector<std::string> checks;
  LetterSlip slip;

  /// Fewer pictures need no list of what to do at a glance: all of them are seen at once.
  bool listed() const { return pictures.size() >= 3; }
};

/// The letter to one contributor, who is asked something; to nobody in the book's language.
LetterContent letter_content(const Book &book, const ContributorAsks &asks);

/// "dpi" and the figure before it, "15.2 × 10.1 cm" and the like are not broken between two lines.
std::string with_letter_figures_kept_whole(std::string text);

} // namespace stoneproof::content
