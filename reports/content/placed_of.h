// The placed frame that a finding is about. Used in this folder only.
#pragma once

#include "engine/rules/rule.h"

#include <algorithm>
#include <utility>

namespace stoneproof::content {

/// Null where it is about no frame.
inline const PlacedFrame *placed_of(const Evidence &evidence, const Finding &finding) {
  if (!finding.page || !finding.frame) return nullptr;
  const auto at = std::pair(*finding.page, *finding.frame);
  const auto before = [](const PlacedFrame &placed, const auto &place) {
    return std::pair(placed.page, placed.frame) < place;
  };
  // The frames stand in book order.
  const auto found = std::lower_bound(evidence.frames.begin(), evidence.frames.end(), at, before);
  const bool there = found != evidence.frames.end() && found->page == at.first && found->frame == at.second;
  return there ? &*found : nullptr;
}

} // namespace stoneproof::content
