// Starting a finding: who and where it is about. Used by the rules only.
#pragma once

#include "engine/rules/rule.h"

namespace stoneproof {

inline Finding about_picture(Grade grade, const Evidence &evidence, std::size_t picture) {
  Finding finding;
  finding.grade = grade;
  finding.picture = picture;
  finding.contributor = evidence.book.pictures[picture].contributor;
  return finding;
}

inline Finding about_frame(Grade grade, const Evidence &evidence, const PlacedFrame &placed) {
  Finding finding = placed.picture ? about_picture(grade, evidence, *placed.picture) : Finding{};
  finding.grade = grade;
  finding.page = placed.page;
  finding.frame = placed.frame;
  finding.area = placed.box;
  return finding;
}

inline Finding about_text(Grade grade, const Evidence &evidence, std::size_t page, std::size_t text) {
  Finding finding;
  finding.grade = grade;
  finding.page = page;
  finding.text = text;
  finding.area = evidence.book.pages[page].texts[text].rect;
  return finding;
}

/// Calls `check(placed)` for every frame whose picture's size is known.
template <class Check>
void each_laid_frame(const Evidence &evidence, Check check) {
  for (const PlacedFrame &placed : evidence.frames)
    if (placed.laid) check(placed);
}

} // namespace stoneproof
