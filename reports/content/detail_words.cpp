// Sentences about detail and enlargement. The only ways in are the functions of detail_words.h; tested in
// tests/reports/content.
#include "reports/content/detail_words.h"

#include "reports/content/figures.h"
#include "reports/content/placed_of.h"
#include "reports/content/rescue_words.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

const PlacedFrame &frame_of(const Evidence &evidence, const Finding &finding) {
  return *placed_of(evidence, finding);
}

const Detail &detail_of(const Evidence &evidence, const Finding &finding) {
  const auto index = static_cast<std::size_t>(&frame_of(evidence, finding) - evidence.frames.data());
  return evidence.shown_at(index)->detail;
}

/// "quality 60", "quality 57 to 63", "about quality 60".
std::string quality_words(const EarlierQuality &earlier) {
  if (!earlier.standard) return fmt::format("about quality {}", earlier.quality);
  if (earlier.low == earlier.high) return fmt::format("quality {}", earlier.quality);
  return fmt::format("quality {} to {}", earlier.low, earlier.high);
}

std::string times(double factor) { return fmt::format("{:.2g}", factor); }

/// "300 ppi of pixels": what the file seems to be good for.
std::string effective(const Evidence &evidence, const Finding &finding) {
  return ppi(frame_of(evidence, finding).laid->effective());
}

/// What is better than pixels made up, then a rescan where it can be computed.
std::string with_rescan(std::string first, const Evidence &evidence, const Finding &finding) {
  if (!finding.rescue.rescan) return {};
  return std::move(first) + " " + rescue_words({finding.rescue.rescan, {}, {}}, placed_of(evidence, finding));
}

} // namespace

std::string enlarged_words(const Evidence &evidence, const Finding &finding) {
  const Upsampling &found = detail_of(evidence, finding).upsampling;
  const std::string factor = times(*found.factor), before = figure(finding.measured);
  if (found.certainty == Certainty::hint)
    return fmt::format(
        "Shows signs of having been enlarged in software, about {} times: then only {} of its {} are "
        "its own.",
        factor, before, effective(evidence, finding));
  if (!found.factor_sure)
    return fmt::format(
        "Was enlarged in software, at least about {} times: of its {} no more than about {} are its own.",
        factor, effective(evidence, finding), before);
  return fmt::format("Was enlarged in software {} times: of its {} only {} are its own. Wanted are {}.",
                     factor, effective(evidence, finding), before, figure(finding.wanted));
}

std::string enlarged_remedy(const Evidence &evidence, const Finding &finding) {
  return with_rescan("Ask for the file as it was before it was enlarged.", evidence, finding);
}

std::string soft_words(const Evidence &evidence, const Finding &finding) {
  const Density told = std::get<Density>(finding.measured);
  return fmt::format(
      "Has pixels for {}, but holds detail for only about {} ({} to {}); at least {} are wanted.",
      effective(evidence, finding), ppi(told), ppi(told * DetailLimit::least), ppi(told * DetailLimit::most),
      figure(finding.wanted));
}

std::string soft_remedy(const Evidence &evidence, const Finding &finding) {
  return with_rescan("Look at it at its printed size. If the original is sharper:", evidence, finding);
}

std::string saved_before_words(const Evidence &evidence, const Finding &finding) {
  const JpegPast &past = detail_of(evidence, finding).past;
  const std::string quality = quality_words(past.earlier), wanted = figure(finding.wanted);
  switch (past.kind) {
  case JpegPastKind::aligned:
    return fmt::format("Was saved as a JPEG of {} before; {} is wanted.", quality, wanted);
  case JpegPastKind::moved:
    return fmt::format("Was saved as a JPEG of {} before, and then cropped or moved; {} is wanted.", quality,
                       wanted);
  case JpegPastKind::was_jpeg:
    return fmt::format("Its pixels were those of a JPEG of {} before it became this file.", quality);
  case JpegPastKind::none: break;
  }
  return {};
}

std::string detail_fact(const Detail &detail) {
  const Upsampling &found = detail.upsampling;
  if (found.certainty == Certainty::firm)
    return fmt::format("enlarged in software {}{} times{}", found.factor_sure ? "" : "at least about ",
                       times(*found.factor), found.nearest ? ", by repeating pixels" : "");
  std::string words =
      found.certainty == Certainty::hint
          ? fmt::format("signs of an enlargement in software, about {} times; ", times(*found.factor))
          : std::string();
  if (found.certainty == Certainty::cannot_tell || !found.detail.known) return words + "cannot tell";
  const double share = std::min(found.detail.across, found.detail.down);
  if (share > 0.9) return words + "every pixel counts";
  return words + fmt::format("enough for about {:.0f} % of its pixels a side ({:.0f} to {:.0f} %)",
                             std::floor(share * 100), std::floor(share * 100 * DetailLimit::least),
                             std::min(100.0, std::floor(share * 100 * DetailLimit::most)));
}

} // namespace stoneproof::content
