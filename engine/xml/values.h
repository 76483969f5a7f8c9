// What the attributes of a description say, from text to exact values. Pure; shared by all readers.
// Every function gives a value or a Fault whose `where` is empty: the caller knows the place.
// White space at the ends is set aside, as XML Schema does.
#pragma once

#include "engine/outcome.h"
#include "engine/units/density.h"
#include "engine/units/geometry.h"
#include "engine/xml/characters.h"
#include "engine/xml/did_you_mean.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

/// No length of a book or a press is longer; a longer one is a slip.
inline constexpr Length longest_length = Length::of_ticks(10'000 * Length::ticks_per_mm);

/// NUMBER is [-]digits[.digits]; no exponent, no plus sign. A length is NUMBER and mm, cm, in or pt; a space
/// may stand between. It is rounded once, from the decimal as written to the nearest tick, half away from
/// zero.
Outcome<Length> parse_length(std::string_view text);           ///< -10 m to 10 m
Outcome<Length> parse_length_from_zero(std::string_view text); ///< not negative
Outcome<Length> parse_positive_length(std::string_view text);  ///< at least one tick

/// "12.5%" as the share 0.125, from 0 to 1.
Outcome<double> parse_share(std::string_view text);
Outcome<double> parse_positive_share(std::string_view text);

/// "300%" as the ink coverage 3, from 0 to 4: four inks of 100 % each.
Outcome<double> parse_coverage(std::string_view text);
/// A difference of colours in units of CIEDE2000, from 0 to 100; a bare number.
Outcome<double> parse_difference(std::string_view text);

/// A part of a picture's side: "12.5%" or "300px".
struct PictureExtent {
  double value = 0; ///< a share (0 to 1) or pixels
  bool pixels = false;
};
Outcome<PictureExtent> parse_picture_extent(std::string_view text);
Outcome<PictureExtent> parse_positive_picture_extent(std::string_view text);

Outcome<Density> parse_density(std::string_view text); ///< "300ppi", more than zero
Outcome<Turn> parse_turn(std::string_view text);       ///< degrees without a unit, -360 to 360
Outcome<int> parse_count(std::string_view text);       ///< a whole number from 1 to 99999
Outcome<int> parse_quality(std::string_view text);     ///< a whole number from 1 to 100

Outcome<double> parse_grammage(std::string_view text);       ///< "90g/m2": from 1 to below 10000 g/m2
Outcome<double> parse_bulk(std::string_view text);           ///< a bare number, cm3/g: from 0.1 to 10
Outcome<double> parse_pages_per_inch(std::string_view text); ///< a bare number from 1 to below 10000
Outcome<int> parse_signature(std::string_view text);         ///< a count that is even

Outcome<bool> parse_yes_no(std::string_view text);
/// Some text; white space at the ends is dropped and made single inside (XML Schema: token).
Outcome<std::string> parse_line(std::string_view text);
/// Some text without any white space inside, in any script.
Outcome<std::string> parse_id(std::string_view text);
/// Some text as it stands, for names of files.
Outcome<std::string> parse_file_name(std::string_view text);
/// The shape of a BCP 47 tag: "en", "pt-BR".
Outcome<std::string> parse_language(std::string_view text);

/// The fault of a word that is none of the known.
Fault unknown_word(std::string_view word, const std::vector<std::string_view> &known);

/// The parser of one of the words of a table such as `binding_words` (entries with `value` and `word`).
template <class Table>
auto one_of(const Table &table) {
  using Value = decltype(std::begin(table)->value);
  return [&table](std::string_view text) -> Outcome<Value> {
    const std::string word = collapsed(text);
    std::vector<std::string_view> known;
    for (const auto &entry : table) {
      if (entry.word == word) return Outcome<Value>(entry.value);
      known.push_back(entry.word);
    }
    return unknown_word(word, known);
  };
}

} // namespace stoneproof
