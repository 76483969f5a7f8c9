// Sentences about what the binding swallows, parts or moves. The only ways in are the functions of
// binding_words.h; tested in tests/reports/content/book_words.test.cpp.
#include "reports/content/binding_words.h"

#include "reports/content/figures.h"
#include "reports/content/object_words.h"
#include "reports/content/sentences.h"

#include <fmt/format.h>

namespace stoneproof::content {

namespace {

Length length_of(const Measure &measure) { return std::get<Length>(measure); }

/// "the fold" or "the inner edge".
std::string_view binding_edge(const Evidence &evidence, const Finding &finding) {
  return evidence.spaces[*finding.page].fold ? "the fold" : "the inner edge";
}

} // namespace

std::string creep_at_trim_words(const Evidence &evidence, const Finding &finding) {
  const Length left = length_of(finding.measured);
  const std::string wanted = millimetres_up(length_of(finding.wanted));
  const bool back = evidence.press.creep_compensated;
  const std::string_view edge = back ? binding_edge(evidence, finding) : "the front edge";
  const std::string how =
      back ? "Moved back against the creep, it" : "As the inner pages are cut shorter, it";
  const std::string stands = left < Length{}
                                 ? fmt::format("{} passes {} by {}", how, edge, millimetres_up(-left))
                                 : fmt::format("{} comes to {} from {}", how, millimetres(left), edge);
  if (finding.grade == Grade::hold)
    return fmt::format("{}; {} {}.", stands, back ? "the binding swallows" : "the cut may wander by", wanted);
  if (finding.frame) return fmt::format("{}; the cut may wander by {}.", stands, wanted);
  return fmt::format("{}; the safe margin is {}. No other text in the book is left with less.", stands,
                     wanted);
}

std::string lost_in_gutter_words(const Evidence &evidence, const Finding &finding) {
  const Length loss = evidence.spaces[*finding.page].gutter_loss, found = length_of(finding.measured);
  const std::string swallows = fmt::format("the binding swallows {}", millimetres_up(loss));
  const std::string_view edge = binding_edge(evidence, finding);
  if (finding.grade == Grade::note)
    return fmt::format(
        "The binding swallows a strip of {} of this picture, at most {} on either side of the fold.",
        nearest_millimetres(found), millimetres_up(loss));
  if (finding.frame)
    return fmt::format("The point of the picture that matters lies {} from {}; {}.", millimetres(found), edge,
                       swallows);
  if (found <= Length{})
    return fmt::format("Runs {} over {}; {} of each page.", millimetres_up(-found), edge, swallows);
  return fmt::format("Stands {} from {}; {}.", millimetres(found), edge, swallows);
}

std::string lost_in_gutter_remedy(const Evidence &evidence, const Finding &finding) {
  if (finding.grade == Grade::note)
    return "Look whether a face or a word lies there, and move the picture if so.";
  if (finding.frame) return "Move the frame, or choose a crop that brings the point away from the binding.";
  const Length by = evidence.spaces[*finding.page].gutter_loss - length_of(finding.measured);
  return length_of(finding.measured) > Length{}
             ? fmt::format("Move it out by at least {}.", millimetres_up(by))
             : std::string("Move it onto one page, out of the gutter.");
}

std::string halves_apart_words(const Evidence &evidence, const Finding &finding) {
  const FrameAt &left = finding.same_picture.front();
  const std::string other = evidence.book.pages[left.page].frames[left.frame].id;
  if (const auto *scale = std::get_if<Share>(&finding.measured))
    return fmt::format("Its other half, frame {}, has another scale: {} apart.", other,
                       per_cent(scale->value));
  const std::string by = figure(finding.measured);
  switch (finding.sides.front()) {
  case PageSide::top: return fmt::format("Lies {} higher than its other half, frame {}.", by, other);
  case PageSide::bottom: return fmt::format("Lies {} lower than its other half, frame {}.", by, other);
  case PageSide::left:
    return fmt::format("A strip of {} is shown neither here nor in the other half, frame {}.", by, other);
  default:
    return fmt::format(
        "A strip of {} is shown both here and in the other half, frame {}, more than the binding "
        "swallows.",
        by, other);
  }
}

} // namespace stoneproof::content
