// The method and its limits. The only way in is method_words; tested in
// tests/reports/content/method_words.test.cpp.
#include "reports/content/method_words.h"

#include "reports/content/figures.h"

#include <algorithm>

namespace stoneproof::content {

namespace {

std::string marks_text() {
  return "A hold must be mended before printing, a query wants somebody’s decision, a note is good to know. "
         "The grade stands in words beside each mark and shows in its line: whole, dashed or dotted. Numbers "
         "run through the book in page order; the same number stands in the table at the front. The "
         "heavier side of a frame is the one at fault.";
}

std::string pictures_text(const Evidence &evidence) {
  if (!evidence.pixels_measured)
    return "This was a quick proof: the header of every picture file was read and every file hashed "
           "(SHA-256), but the pixels were not measured. Tones, inks, detail and dirt were not looked at.";
  return "Every picture file was read to its last row and hashed (SHA-256). The density is the number of "
         "pixels that a frame shows, divided by the inches on which it prints them, along both sides; the "
         "smaller one counts. It is rounded down, but for a tenth, and a scanner setting up, so that no "
         "rounding hides a shortfall.";
}

std::string patches_text() {
  return "The patches in the list of pictures are cut out at the size at which the book prints them. Print "
         "this proof at 100 %, on good paper, and look at them from where you would read the book: as soft "
         "or "
         "as coarse as the patch is, so will the picture be. An office printer’s own dots are coarser than a "
         "press’s.";
}

std::string estimates_text() {
  return "Pixels, sizes and distances are exact. For how much detail a picture holds, what it went through "
         "as "
         "a JPEG, whether software enlarged it, where a scanner’s glass is dirty and how a book comes out as "
         "an object, the figures are estimates: the range is given, or the word “about”. Where nothing can "
         "be "
         "told (a flat sky, fog, a picture meant to be soft) nothing is said.";
}

std::string colours_text(const Evidence &evidence) {
  if (!evidence.pixels_measured) return "Colours and inks were not looked at in this quick proof.";
  if (evidence.press.profile)
    return "Colours were converted for the press by the profile that the press sheet names, and never seen "
           "on "
           "paper. Only a proof print of the printer’s own shows how they come out.";
  return "The press sheet names no profile of the press, so no colour was converted for it: inks were "
         "reckoned for CMYK pictures only, and colours that the press cannot print were not looked for.";
}

std::string limits_text() {
  return "Nobody looked at what the pictures mean. Whether the right aunt stands over the caption, whether a "
         "blur is meant, whether a tear belongs to the picture, whether a word is spelled right: that is for "
         "the reader of this proof. Fragile, stuck or flaking originals go to a conservator, not on a "
         "scanner. The printer’s own specification always has the last word.";
}

} // namespace

MethodWords method_words(const Evidence &evidence, const std::vector<Finding> &findings) {
  MethodWords words;
  words.parts = {{"The marks", marks_text()},
                 {"The pictures", pictures_text(evidence)},
                 {"Estimates", estimates_text()},
                 {"Colours and inks", colours_text(evidence)},
                 {"Limits", limits_text()}};
  if (evidence.pixels_measured)
    words.parts.insert(words.parts.begin() + 2, {"True-size patches", patches_text()});
  for (const Rule *rule : all_rules()) {
    if (rule->of_finished_pdf && !evidence.book.print_file) continue;
    const auto times = std::ranges::count(findings, rule->id, &Finding::rule);
    if (times == 0)
      ++words.silent;
    else
      words.rules.push_back({std::string(rule->title),
                             count(static_cast<std::size_t>(times), "time", "times"),
                             std::string(rule->measure)});
  }
  return words;
}

} // namespace stoneproof::content
