// The remedies of a picture with too few pixels. The only way in is rescue_words; tested in
// tests/reports/content.
#include "reports/content/rescue_words.h"

#include "reports/content/figures.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

std::string rescan_words(const Rescan &rescan) {
  if (!rescan.setting)
    return fmt::format(
        "A scan would need {:.0f} ppi, more than any usual scanner gives; use another picture or print "
        "it smaller.",
        std::ceil(rescan.needed_ppi));
  std::string words = fmt::format("Scan the original again at {} ppi.", *rescan.setting);
  if (rescan.film)
    words += " Film wants a film scanner, or a flatbed with a film holder.";
  else if (rescan.beyond_flatbed)
    words += " That is more than a usual flatbed really resolves: ask a scanning service.";
  return words;
}

/// Nobody prints a picture smaller than a postage stamp.
bool worth_printing(const Size &size) { return std::max(size.width, size.height) >= Length::of_mm(15); }

/// Rounded up to whole per cents, so that the crop is never a little too tight.
std::string crop_words(const LooserCrop &crop) {
  const auto whole = [](double share) { return std::min(100.0, std::ceil(share * 100 - 1e-9)); };
  return fmt::format(
      "Or loosen the crop: show at least {:.0f} % of the picture’s width and {:.0f} % of its height.",
      whole(crop.width_share), whole(crop.height_share));
}

} // namespace

std::string rescue_words(const Rescue &rescue, const PlacedFrame *placed) {
  std::string words;
  if (rescue.rescan) words += rescan_words(*rescue.rescan) + " ";
  if (rescue.print_no_larger && worth_printing(*rescue.print_no_larger)) {
    words += fmt::format("{} no larger than {}", words.empty() ? "Print it" : "Or print it",
                         size_down(*rescue.print_no_larger));
    if (placed && placed->laid && placed->laid->visible)
      words += fmt::format(" (now {})", size(placed->laid->visible->size()));
    words += ". ";
  }
  if (rescue.looser_crop) words += crop_words(*rescue.looser_crop) + " ";
  if (!words.empty()) words.pop_back();
  return words;
}

} // namespace stoneproof::content
