// Splits a decimal number and its unit. Only way in: parse_number. Tested in
// tests/engine/xml/values.test.cpp.
#include "engine/xml/number.h"

#include "engine/xml/characters.h"
#include "engine/xml/did_you_mean.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace stoneproof {
namespace {

constexpr std::size_t most_whole_digits = 9;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string take_digits(std::string_view &rest) {
  std::size_t count = 0;
  while (count < rest.size() && is_digit(rest[count])) ++count;
  std::string digits(rest.substr(0, count));
  rest.remove_prefix(count);
  return digits;
}

bool is_exponent(std::string_view rest) {
  if (rest.empty() || (rest[0] != 'e' && rest[0] != 'E')) return false;
  rest.remove_prefix(1);
  if (!rest.empty() && (rest[0] == '+' || rest[0] == '-')) rest.remove_prefix(1);
  return !rest.empty() && is_digit(rest[0]);
}

Fault fault(std::string what, const Quantity &quantity) {
  return {std::move(what), {}, std::string(quantity.remedy)};
}

// The unit, or what is wrong with what stands behind the number.
Outcome<std::string> unit_of(std::string_view rest, const Quantity &quantity) {
  if (is_exponent(rest)) return fault("an exponent is not allowed in a number", quantity);
  if (rest.starts_with(',')) return fault("the decimal mark is a point, not a comma", quantity);
  if (rest.starts_with('.')) return fault("a number needs a digit before and after its point", quantity);
  if (quantity.units.empty()) {
    if (rest.empty()) return std::string();
    return fault(fmt::format("{} is a plain number, without {}", quantity.noun, in_quotes(rest)), quantity);
  }
  if (rest.starts_with(' ')) rest.remove_prefix(1);
  if (rest.empty()) return fault(fmt::format("{} needs a unit", quantity.noun), quantity);
  if (std::find(quantity.units.begin(), quantity.units.end(), rest) != quantity.units.end())
    return std::string(rest);
  return fault(fmt::format("{} is not a unit of {}{}", in_quotes(rest), quantity.noun.substr(2),
                           suggestion(rest, quantity.units)),
               quantity);
}

} // namespace

bool Number::is_zero() const {
  return whole.find_first_not_of('0') == std::string::npos &&
         fraction.find_first_not_of('0') == std::string::npos;
}

bool Number::is_above(int limit) const {
  int whole_part = 0;
  if (!whole.empty()) std::from_chars(whole.data(), whole.data() + whole.size(), whole_part);
  const bool more = whole_part == limit && fraction.find_first_not_of('0') != std::string::npos;
  return !negative && (whole_part > limit || more);
}

std::int64_t Number::times(std::int64_t factor) const {
  std::int64_t whole_part = 0;
  if (!whole.empty()) std::from_chars(whole.data(), whole.data() + whole.size(), whole_part);
  // Long multiplication of the fraction's digits: what carries out in front is the integral part, exactly.
  std::string digits = fraction;
  std::int64_t carry = 0;
  for (auto digit = digits.rbegin(); digit != digits.rend(); ++digit) {
    carry += (*digit - '0') * factor;
    *digit = static_cast<char>('0' + carry % 10);
    carry /= 10;
  }
  const bool up = !digits.empty() && digits.front() >= '5';
  const std::int64_t result = whole_part * factor + carry + (up ? 1 : 0);
  return negative ? -result : result;
}

double Number::value() const {
  const std::string text = (whole.empty() ? "0" : whole) + "." + (fraction.empty() ? "0" : fraction);
  double result = 0; // stays zero when the number is too small for a double
  std::from_chars(text.data(), text.data() + text.size(), result);
  return negative ? -result : result;
}

Outcome<Number> parse_number(std::string_view text, const Quantity &quantity) {
  const std::string trimmed = collapsed(text);
  std::string_view rest = trimmed;
  if (rest.empty()) return fault(fmt::format("{} is missing", quantity.noun), quantity);
  Number number;
  if (rest.starts_with('-')) number.negative = true, rest.remove_prefix(1);
  number.whole = take_digits(rest);
  if (number.whole.empty() && !rest.starts_with('.'))
    return fault(fmt::format("this is not {}", quantity.noun), quantity);
  if (!number.whole.empty() && rest.size() > 1 && rest[0] == '.' && is_digit(rest[1])) {
    rest.remove_prefix(1);
    number.fraction = take_digits(rest);
  }
  auto unit = unit_of(rest, quantity);
  if (!unit) return unit.fault();
  number.unit = std::move(unit).value();
  number.whole.erase(0, std::min(number.whole.find_first_not_of('0'), number.whole.size()));
  if (number.whole.size() > most_whole_digits) return fault(std::string(quantity.too_large), quantity);
  return number;
}

} // namespace stoneproof
