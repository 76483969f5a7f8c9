// The moment by which a picture must be decoded.
#pragma once

#include <algorithm>
#include <chrono>

namespace stoneproof {

/// Counts from its making: after waiting for memory that other pictures hold, before the first pixel.
class Deadline {
public:
  /// A limit of "for ever" must not wrap.
  explicit Deadline(std::chrono::seconds most_time,
                    std::chrono::steady_clock::time_point begun = std::chrono::steady_clock::now())
      : end_(begun + std::min(most_time, std::chrono::seconds(std::chrono::hours(10'000)))) {}

  bool passed() const { return std::chrono::steady_clock::now() > end_; }

private:
  std::chrono::steady_clock::time_point end_;
};

} // namespace stoneproof
