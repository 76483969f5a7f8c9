// Parses lengths, shares, pixels, densities, words and names. Ways in: the functions of values.h.
// Tested in tests/engine/xml/values.test.cpp.
#include "engine/xml/values.h"

#include "engine/xml/number.h"

#include <fmt/format.h>

namespace stoneproof {
namespace {

const Quantity length_quantity{"a length",
                               {"mm", "cm", "in", "pt"},
                               "no length is more than 10 m",
                               "Write a number and its unit, mm, cm, in or pt, for example \"6.5mm\"."};
const Quantity share_quantity{"a share",
                              {"%"},
                              "a share is from 0% to 100%",
                              "Write a number from 0 to 100 and a per cent sign, for example \"12.5%\"."};
const Quantity coverage_quantity{"an ink coverage",
                                 {"%"},
                                 "an ink coverage must be from 0% to 400%",
                                 "Write the sum of all inks in per cent, for example \"300%\"."};
const Quantity difference_quantity{"a difference of colours",
                                   {},
                                   "a difference of colours must be from 0 to 100",
                                   "Write a number, for example \"5\"."};
const Quantity extent_quantity{
    "a part of a picture",
    {"%", "px"},
    "no picture is that large",
    "Write per cent of the picture or pixels, for example \"12.5%\" or \"300px\"."};
const Quantity density_quantity{"a density",
                                {"ppi"},
                                "no density is more than 99999 ppi",
                                "Write pixels per inch, for example \"300ppi\"."};
const Quantity turn_quantity{"a turn",
                             {},
                             "a turn is at most 360 degrees",
                             "Write degrees clockwise from -360 to 360, for example \"2.5\"."};
const Quantity count_quantity{
    "a whole number", {}, "this number must be from 1 to 99999", "Write a whole number, for example \"12\"."};
const Quantity quality_quantity{
    "a whole number", {}, "a quality must be from 1 to 100", "Write a whole number, for example \"75\"."};
const Quantity grammage_quantity{"a grammage",
                                 {"g/m2"},
                                 "a grammage must be from 1 to below 10000 g/m2",
                                 "Write grams per square metre, for example \"90g/m2\"."};
const Quantity bulk_quantity{"a bulk",
                             {},
                             "a bulk must be from 0.1 to 10 cm3/g",
                             "Write cubic centimetres per gram without a unit, for example \"1.3\"."};
const Quantity pages_per_inch_quantity{"a number of pages",
                                       {},
                                       "pages per inch must be from 1 to below 10000",
                                       "Write how many pages are an inch thick, for example \"400\"."};

Fault fault(std::string what, const Quantity &quantity) {
  return {std::move(what), {}, std::string(quantity.remedy)};
}

std::int64_t ticks_of(std::string_view unit) {
  if (unit == "mm") return Length::ticks_per_mm;
  if (unit == "cm") return Length::ticks_per_cm;
  if (unit == "in") return Length::ticks_per_in;
  return Length::ticks_per_pt;
}

Outcome<double> up_to(std::string_view text, int most, const Quantity &quantity) {
  const auto number = parse_number(text, quantity);
  if (!number) return number.fault();
  if (number.value().is_below_zero() || number.value().is_above(most))
    return fault(std::string(quantity.too_large), quantity);
  return number.value().value();
}

Outcome<double> share(std::string_view text, bool positive) {
  const auto number = parse_number(text, share_quantity);
  if (!number) return number.fault();
  if (number.value().is_below_zero() || number.value().is_above(100))
    return fault(std::string(share_quantity.too_large), share_quantity);
  const double value = number.value().value() / 100;
  if (positive && !(value > 0)) return fault("this share must be more than zero", share_quantity);
  return value;
}

Outcome<PictureExtent> extent(std::string_view text, bool positive) {
  const auto number = parse_number(text, extent_quantity);
  if (!number) return number.fault();
  const bool pixels = number.value().unit == "px";
  if (number.value().is_below_zero())
    return fault("a part of a picture must not be negative", extent_quantity);
  if (!pixels && number.value().is_above(100))
    return fault("a picture has no more than 100%", extent_quantity);
  const double value = number.value().value() / (pixels ? 1 : 100);
  if (positive && !(value > 0))
    return fault("this part of a picture must be more than zero", extent_quantity);
  return PictureExtent{value, pixels};
}

// From 1 to below 10000: the bounds leave every paper in, and every thickness above zero.
Outcome<double> up_to_four_digits(std::string_view text, const Quantity &quantity) {
  const auto number = parse_number(text, quantity);
  if (!number) return number.fault();
  const std::size_t digits = number.value().whole.size();
  if (number.value().negative || digits < 1 || digits > 4)
    return fault(std::string(quantity.too_large), quantity);
  return number.value().value();
}

enum class Sign { any, not_negative, positive };

Outcome<Length> length(std::string_view text, Sign sign) {
  const auto number = parse_number(text, length_quantity);
  if (!number) return number.fault();
  if (sign != Sign::any && number.value().is_below_zero())
    return fault("this length must not be negative", length_quantity);
  const Length length = Length::of_ticks(number.value().times(ticks_of(number.value().unit)));
  if (length > longest_length || length < -longest_length)
    return fault(std::string(length_quantity.too_large), length_quantity);
  if (sign == Sign::positive && length == Length())
    return fault("this length must be more than zero", length_quantity);
  return length;
}

Outcome<int> parse_whole(std::string_view text, const Quantity &quantity, int most) {
  const auto number = parse_number(text, quantity);
  if (!number) return number.fault();
  if (!number.value().fraction.empty()) return fault("this is not a whole number", quantity);
  if (number.value().negative || number.value().is_zero() || number.value().is_above(most))
    return fault(std::string(quantity.too_large), quantity);
  return static_cast<int>(number.value().value());
}

} // namespace

Outcome<Length> parse_length(std::string_view text) { return length(text, Sign::any); }
Outcome<Length> parse_length_from_zero(std::string_view text) { return length(text, Sign::not_negative); }
Outcome<Length> parse_positive_length(std::string_view text) { return length(text, Sign::positive); }

Outcome<double> parse_share(std::string_view text) { return share(text, false); }
Outcome<double> parse_positive_share(std::string_view text) { return share(text, true); }
Outcome<double> parse_coverage(std::string_view text) {
  const auto percent = up_to(text, 400, coverage_quantity);
  return percent ? Outcome<double>(percent.value() / 100) : percent;
}
Outcome<double> parse_difference(std::string_view text) { return up_to(text, 100, difference_quantity); }
Outcome<PictureExtent> parse_picture_extent(std::string_view text) { return extent(text, false); }
Outcome<PictureExtent> parse_positive_picture_extent(std::string_view text) { return extent(text, true); }

Outcome<Density> parse_density(std::string_view text) {
  const auto number = parse_number(text, density_quantity);
  if (!number) return number.fault();
  const double ppi = number.value().value();
  if (!(ppi > 0)) return fault("a density must be more than zero", density_quantity);
  if (number.value().is_above(99'999))
    return fault(std::string(density_quantity.too_large), density_quantity);
  return Density::of_ppi(ppi);
}

Outcome<Turn> parse_turn(std::string_view text) {
  const auto number = parse_number(text, turn_quantity);
  if (!number) return number.fault();
  Number size = number.value();
  size.negative = false;
  if (size.is_above(360)) return fault(std::string(turn_quantity.too_large), turn_quantity);
  return Turn{number.value().value()};
}

Outcome<int> parse_count(std::string_view text) { return parse_whole(text, count_quantity, 99'999); }
Outcome<int> parse_quality(std::string_view text) { return parse_whole(text, quality_quantity, 100); }

Outcome<double> parse_grammage(std::string_view text) { return up_to_four_digits(text, grammage_quantity); }
Outcome<double> parse_pages_per_inch(std::string_view text) {
  return up_to_four_digits(text, pages_per_inch_quantity);
}

Outcome<double> parse_bulk(std::string_view text) {
  const auto number = parse_number(text, bulk_quantity);
  if (!number) return number.fault();
  const std::string &fraction = number.value().fraction;
  const bool below_a_tenth = number.value().whole.empty() && (fraction.empty() || fraction.front() == '0');
  if (number.value().negative || below_a_tenth || number.value().is_above(10))
    return fault(std::string(bulk_quantity.too_large), bulk_quantity);
  return number.value().value();
}

Outcome<int> parse_signature(std::string_view text) {
  const auto pages = parse_count(text);
  if (pages && pages.value() % 2 != 0)
    return Fault{
        "a folded sheet has an even number of pages", {}, "Write an even number, for example \"16\"."};
  return pages;
}

Outcome<bool> parse_yes_no(std::string_view text) {
  const std::string word = collapsed(text);
  if (word == "yes" || word == "no") return word == "yes";
  return unknown_word(word, {"yes", "no"});
}

Outcome<std::string> parse_line(std::string_view text) {
  std::string line = collapsed(text);
  if (line.empty()) return Fault{"this must not be empty", {}, "Write some text."};
  return line;
}

Outcome<std::string> parse_id(std::string_view text) {
  std::string id = collapsed(text);
  if (id.empty()) return Fault{"this must not be empty", {}, "Write a name of your choice without spaces."};
  if (id.find(' ') != std::string::npos)
    return Fault{
        "there is a space inside this name", {}, "Write the name without spaces, for example with hyphens."};
  return id;
}

Outcome<std::string> parse_file_name(std::string_view text) {
  if (text.empty()) return Fault{"the name of a file is missing", {}, "Write the path of the file."};
  return std::string(text);
}

Outcome<std::string> parse_language(std::string_view text) {
  const Fault broken{"this is not a language tag", {}, "Write a tag such as \"en\", \"pl\" or \"pt-BR\"."};
  constexpr std::size_t longest_part = 8;
  const auto is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
  std::string tag = collapsed(text);
  std::size_t part = 0;
  bool first = true;
  for (const char c : tag) {
    const bool good = c == '-' ? part > 0 : is_letter(c) || (!first && c >= '0' && c <= '9');
    if (!good || (c != '-' && part == longest_part)) return broken;
    part = c == '-' ? 0 : part + 1;
    first = first && c != '-';
  }
  if (part == 0) return broken;
  return tag;
}

Fault unknown_word(std::string_view word, const std::vector<std::string_view> &known) {
  std::string list;
  for (std::size_t i = 0; i < known.size(); ++i)
    list += fmt::format("{}{}", i == 0 ? "" : i + 1 == known.size() ? " or " : ", ", known[i]);
  return {fmt::format("this is not one of the known words{}", suggestion(word, known)),
          {},
          fmt::format("Write {}.", list)};
}

} // namespace stoneproof
