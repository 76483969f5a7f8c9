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

/// Calls `check(placed)` once for each picture whose size is known and that a frame names, with its first
/// frame.
template <class Check>
void each_picture_shown(const Evidence &evidence, Check check) {
  std::vector<bool> seen(evidence.pictures.size());
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    if (seen[*placed.picture]) return;
    seen[*placed.picture] = true;
    check(placed);
  });
}

/// Calls `check(placed, shown)` for every frame whose pixels were measured.
template <class Check>
void each_measured_frame(const Evidence &evidence, Check check) {
  for (std::size_t i = 0; i < evidence.frames.size(); ++i)
    if (const Shown *shown = evidence.shown_at(i)) check(evidence.frames[i], *shown);
}

inline Finding about_share(Grade grade, const Evidence &evidence, const PlacedFrame &placed, double measured,
                           double wanted) {
  Finding finding = about_frame(grade, evidence, placed);
  finding.measured = Share{measured};
  finding.wanted = Share{wanted};
  return finding;
}

} // namespace stoneproof
