// A decimal number with a unit, as written. For the value parsers of this folder alone.
#pragma once

#include "engine/outcome.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

struct Number {
  bool negative = false;
  std::string whole, fraction; ///< digits; no leading zeros in `whole`
  std::string unit;            ///< one of the quantity's units, or empty when it has none

  /// Exact, however many digits there are.
  bool is_zero() const;
  bool is_below_zero() const { return negative && !is_zero(); }
  bool is_above(int limit) const;

  /// Value x factor, rounded once, half away from zero. `whole` must have at most 9 digits, factor at most
  /// 10^7.
  std::int64_t times(std::int64_t factor) const;
  /// The nearest double. `whole` must have at most 9 digits.
  double value() const;
};

/// What is being read, in the words of its messages.
struct Quantity {
  std::string_view noun;               ///< "a length"
  std::vector<std::string_view> units; ///< empty: a bare number is meant
  std::string_view too_large;          ///< what is said of a number that is
  std::string_view remedy;             ///< how to write it, a whole sentence
};

/// Splits text into number and unit; faults: empty, no number, an exponent, a decimal comma, no unit, an
/// unknown unit, more than nine digits before the point.
Outcome<Number> parse_number(std::string_view text, const Quantity &quantity);

} // namespace stoneproof
