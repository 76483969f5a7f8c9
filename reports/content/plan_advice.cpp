// How to scan. The only way in is scanning_advice; tested in tests/reports/content/plan_content.test.cpp.
// Common practice, but for what names its source: FADGI, Technical Guidelines for Digitizing Cultural
// Heritage Materials, 2016; 36 CFR 1236.48 (2023).
#include "reports/content/plan_content.h"

namespace stoneproof::content {

std::vector<Advice> scanning_advice() {
  return {
      // Figures and what belongs to them are kept together by no-break spaces.
      {"The setting",
       "Set the resolution, in ppi or dpi, to the figure of the pile, with the size left at 100 %. Never let "
       "the software enlarge: settings called interpolated or enhanced add pixels but no detail (the rules "
       "for United States federal records forbid them, 36 CFR 1236.48). A higher setting than asked does no "
       "harm but to the size of the file. To keep the scan beyond this book, use 300 ppi at the least, which "
       "is what FADGI (2016) considers the minimum for printing a photograph as large as it is."},
      {"Glass and print", "Wipe the glass with a dry, lint-free cloth, and take loose dust off the print "
                          "with a soft brush. Nothing wet."},
      {"The whole original", "Scan all of it, straight, and no strip of the glass beside it. Cropping is "
                             "done in the layout: the setting allows for it."},
      {"Colour and tone", "Colour, 24 bit, also for black and white photographs. Turn sharpening, dust "
                          "removal and automatic correction off; what they take away cannot be put back. "
                          "FADGI (2016) keeps masters free of retouching."},
      {"The file", "TIFF, or JPEG at the highest quality, saved once and not again. Name it as the plan "
                   "does. Send it as a file: programs for messages make pictures small."},
      {"Slides and negatives", "Blow dust off, use the film holder, and tell the software which kind of film "
                               "it is. What asks for more than your scanner truly resolves goes to a "
                               "scanning service. Glass plates are fragile originals."},
      {"Fragile originals", "What is torn, curled, flaking, stuck to glass or bound tightly is not pressed "
                            "on a scanner. Ask a qualified conservator first."},
      {"Objects", "Camera straight above or in front, even light from both sides, no flash, the object "
                  "filling the picture."},
      {"The printer", "The printer’s own specification has the last word. If it asks for other densities, "
                      "make the plan again with its press sheet."},
  };
}

} // namespace stoneproof::content
