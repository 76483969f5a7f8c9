// Sentences about detail and enlargement. The only ways in are the functions of detail_words.h; tested in
// tests/reports/content.
#include "reports/content/detail_words.h"

#include "reports/content/figures.h"
#include "reports/content/placed_of.h"
#include "reports/content/rescue_words.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>

namespace stoneproof::content {

namespace {

/// The frame and what was measured in it; none where it is about no measured frame.
struct Measured {
  const PlacedFrame &placed;
  const Detail &detail;
};
std::optional<Measured> measured_of(const Evidence &evidence, const Finding &finding) {
  const PlacedFrame *placed = placed_of(evidence, finding);
  if (!placed || !placed->laid) return std::nullopt;
  const Shown *shown = evidence.shown_at(static_cast<std::size_t>(placed - evidence.frames.data()));
  if (!shown) return std::nullopt;
  return Measured{*placed, shown->detail};
}

std::string times(double factor) { return fmt::format("{:.2g}", factor); }

/// What the file seems to be good for.
std::string effective(const Measured &measured) { return ppi(measured.placed.laid->effective()); }

/// What is better than pixels made up, then a rescan where it can be computed.
std::string with_rescan(std::string first, const Evidence &evidence, const Finding &finding) {
  if (!finding.rescue.rescan) return {};
  return std::move(first) + " " + rescue_words({finding.rescue.rescan, {}, {}}, placed_of(evidence, finding));
}

} // namespace

std::string earlier_quality(const EarlierQuality &earlier) {
  if (!earlier.standard) return fmt::format("about quality {}", earlier.quality);
  if (earlier.low == earlier.high) return fmt::format("quality {}", earlier.quality);
  return fmt::format("quality {} to {}", earlier.low, earlier.high);
}

std::string enlarged_words(const Evidence &evidence, const Finding &finding) {
  const auto measured = measured_of(evidence, finding);
  if (!measured) return {};
  const Upsampling &found = measured->detail.upsampling;
  const std::string factor = times(found.factor.value_or(1)), before = figure(finding.measured);
  if (!found.factor_sure)
    return fmt::format(
        "Was enlarged in software, at least about {} times: of its {} no more than about {} are its own.",
        factor, effective(*measured), before);
  return fmt::format("Was enlarged in software {} times: of its {} only {} are its own. Wanted are {}.",
                     factor, effective(*measured), before, figure(finding.wanted));
}

std::string enlarged_remedy(const Evidence &evidence, const Finding &finding) {
  return with_rescan("Ask for the file as it was before it was enlarged.", evidence, finding);
}

std::string soft_words(const Evidence &evidence, const Finding &finding) {
  const auto measured = measured_of(evidence, finding);
  if (!measured) return {};
  const Density told = std::get<Density>(finding.measured);
  return fmt::format(
      "Has pixels for {}, but holds detail for only about {} ({} to {}); at least {} are wanted.",
      effective(*measured), ppi(told), ppi(told * DetailLimit::least), ppi(told * DetailLimit::most),
      figure(finding.wanted));
}

std::string soft_remedy(const Evidence &evidence, const Finding &finding) {
  return with_rescan("Look at it at its printed size. If the original is sharper:", evidence, finding);
}

std::string saved_before_words(const Evidence &evidence, const Finding &finding) {
  const auto measured = measured_of(evidence, finding);
  if (!measured) return {};
  const JpegPast &past = measured->detail.past;
  const std::string quality = earlier_quality(past.earlier), wanted = figure(finding.wanted);
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
                       times(found.factor.value_or(1)), found.nearest ? ", by repeating pixels" : "");
  std::string words = found.certainty == Certainty::hint
                          ? fmt::format("signs of an enlargement in software, about {} times; ",
                                        times(found.factor.value_or(1)))
                          : std::string();
  if (found.certainty == Certainty::cannot_tell || !found.detail.known) return words + "cannot tell";
  const double share = std::min(found.detail.across, found.detail.down);
  if (share > 0.9) return words + "every pixel counts";
  return words + fmt::format("enough for about {:.0f} % of its pixels a side ({:.0f} to {:.0f} %)",
                             std::floor(share * 100), std::floor(share * 100 * DetailLimit::least),
                             std::min(100.0, std::floor(share * 100 * DetailLimit::most)));
}

} // namespace stoneproof::content
