// Sentences about near misses in the layout and about type. The only ways in are the functions of
// layout_words.h; tested in tests/reports/content/layout_words.test.cpp.
#include "reports/content/layout_words.h"

#include "reports/content/figures.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

/// "frame f2"; the other frame of a finding about two things.
std::string other_frame(const Evidence &evidence, const Finding &finding) {
  if (!finding.page || !finding.with_frame) return "another frame";
  return fmt::format("frame {}", evidence.book.pages[*finding.page].frames[*finding.with_frame].id);
}

/// The edge of a frame, as it is seen on the page.
std::string_view edge_name(PageSide side) {
  switch (side) {
  case PageSide::top: return "top";
  case PageSide::bottom: return "bottom";
  case PageSide::left: return "left";
  case PageSide::right: return "right";
  case PageSide::fold: return "inner";
  }
  return {};
}

/// Points to a hundredth, down for what there is and up for what is wanted, so that no rounding makes a size
/// that is too small look like enough.
constexpr double slack = 1e-6; // of doubles, far below a hundredth
std::string points(Length size) {
  return fmt::format("{:.6g} pt", std::floor(size.pt() * 100 + slack) / 100);
}
std::string points_up(Length size) {
  return fmt::format("{:.6g} pt", std::ceil(size.pt() * 100 - slack) / 100);
}

bool is_all(const Finding &finding) {
  const auto *share = std::get_if<Share>(&finding.measured);
  return share && share->value >= 1 - 1e-6;
}

} // namespace

std::string nearly_aligned_words(const Evidence &evidence, const Finding &finding) {
  const bool several = finding.sides.size() > 1;
  std::vector<std::string> edges;
  for (const PageSide side : finding.sides) edges.emplace_back(edge_name(side));
  return fmt::format("Its {} {} of {} by {}{}.", listed(edges),
                     several ? "edges miss those" : "edge misses that", other_frame(evidence, finding),
                     several ? "up to " : "", figure(finding.measured));
}

std::string sliver_overlap_words(const Evidence &evidence, const Finding &finding) {
  return fmt::format("Lies on {} by a strip of only {}.", other_frame(evidence, finding),
                     figure(finding.measured));
}

std::string stray_margin_words(const Evidence &evidence, const Finding &finding) {
  const bool several = finding.sides.size() > 1;
  return fmt::format("Margin {}: {}{}; on most pages of this side it is {}.", sides_phrase(evidence, finding),
                     several ? "one is " : "", figure(finding.measured), figure(finding.wanted));
}

std::string stray_caption_words(const Evidence &evidence, const Finding &finding) {
  if (!finding.with_frame) return "No picture stands on this page.";
  if (std::get<Length>(finding.wanted) > Length{})
    return fmt::format("Stands {} from the nearest picture, that in {}.", figure(finding.measured),
                       other_frame(evidence, finding));
  return fmt::format("Lies partly on {}, by {}.", other_frame(evidence, finding), figure(finding.measured));
}

std::string stray_caption_remedy(const Evidence &, const Finding &finding) {
  const auto *wanted = std::get_if<Length>(&finding.wanted);
  if (!wanted || *wanted > Length{}) return {}; // the rule's own
  return "Move the caption off the picture, or wholly onto a calm part of it.";
}

std::string hidden_text_words(const Evidence &evidence, const Finding &finding) {
  const std::string frame = other_frame(evidence, finding);
  if (is_all(finding)) return fmt::format("All of this text lies under {}, which was drawn later.", frame);
  const std::string covered = fmt::format("{} of this text block lies under {}, which was drawn later",
                                          figure_beside(finding.measured, Share{1}), frame);
  return covered + (finding.grade == Grade::hold ? "; the rest of it cannot hold the words."
                                                 : "; words are lost, unless the text runs round it.");
}

std::string type_on_picture_words(const Evidence &evidence, const Finding &finding) {
  const std::string frame = other_frame(evidence, finding);
  if (is_all(finding)) return fmt::format("Stands on the picture in {}: can it be read all along?", frame);
  return fmt::format("{} of this text block stands on the picture in {}, the rest beside it.",
                     figure_beside(finding.measured, Share{1}), frame);
}

std::string overfull_text_words(const Evidence &evidence, const Finding &finding) {
  const TextBlock &text = evidence.book.pages[*finding.page].texts[*finding.text];
  return fmt::format(
      "By a lean estimate, {} of type needs at least {} for these words; the block gives it {}. The end of "
      "the text may be missing.",
      points(text.type_size), figure(finding.measured), figure(finding.wanted));
}

std::string small_type_words(const Evidence &, const Finding &finding) {
  return fmt::format("Set in {}; the press sheet wants at least {}.",
                     points(std::get<Length>(finding.measured)), points_up(std::get<Length>(finding.wanted)));
}

} // namespace stoneproof::content
