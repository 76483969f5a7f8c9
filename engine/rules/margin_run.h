// The margin that the pages of one side of a book keep, and who strays from it. Used by stray-margin only.
#pragma once

#include "engine/rules/layout.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace stoneproof {

/// One margin on all pages of one side, a value for each.
class MarginRun {
public:
  /// At least so many pages, and half of all, make a run, and so many make a design of their own beside it.
  /// Our own choice.
  static constexpr std::size_t least = 4;
  /// A margin that is further off is meant to be another. Our own choice.
  static constexpr Length most = Length::of_ticks(Length::ticks_per_mm * 3);

  explicit MarginRun(std::vector<Length> margins) : margins_(std::move(margins)) {
    std::sort(margins_.begin(), margins_.end());
    std::size_t pages = 0;
    for (const Length margin : margins_) {
      const std::size_t count = sharing(margin);
      if (count > pages) kept_ = margin;
      pages = std::max(pages, count);
    }
    if (pages < least || pages * 2 < margins_.size()) kept_.reset();
  }

  /// By how much a margin is off the run; none where there is no clear run.
  std::optional<Length> off(Length margin) const {
    return kept_ ? std::optional(margin - *kept_) : std::nullopt;
  }

  /// Whether a margin that is off by so much strays: seen, not meant, and not shared by pages enough.
  bool strays(Length margin) const {
    const auto by = off(margin);
    if (!by || sharing(margin) >= least) return false;
    const Length size = std::max(*by, -*by);
    return size > hair && size < most;
  }

private:
  /// Pages whose margin is the same within a hair.
  std::size_t sharing(Length margin) const {
    const auto first = std::lower_bound(margins_.begin(), margins_.end(), margin - hair);
    const auto last = std::upper_bound(margins_.begin(), margins_.end(), margin + hair);
    return static_cast<std::size_t>(last - first);
  }

  std::vector<Length> margins_; ///< rising
  std::optional<Length> kept_;
};

} // namespace stoneproof
