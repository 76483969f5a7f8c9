// Four numbers in one vector register, for loops that compilers do not make vectors of by themselves.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace stoneproof {

/// An extension of both GCC and Clang: operators work lane by lane, a number with a vector in every lane.
using Lanes [[gnu::vector_size(16)]] = float;
using IntLanes [[gnu::vector_size(16)]] = std::int32_t;

inline constexpr std::size_t lane_count = 4;

inline Lanes lanes_at(const float *values) {
  Lanes lanes;
  std::memcpy(&lanes, values, sizeof lanes);
  return lanes;
}

inline Lanes lanes_at(const std::uint16_t *values) {
  using Words [[gnu::vector_size(8)]] = std::uint16_t;
  Words words;
  std::memcpy(&words, values, sizeof words);
  return __builtin_convertvector(__builtin_convertvector(words, IntLanes), Lanes);
}

/// Cut to whole numbers.
inline IntLanes whole(Lanes lanes) { return __builtin_convertvector(lanes, IntLanes); }

} // namespace stoneproof
