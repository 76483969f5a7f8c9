#include "engine/xml/values.h"
#include "tests/support/catch.h"

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

template <class T>
std::string refusal(const Outcome<T> &outcome) {
  return outcome ? "accepted" : outcome.fault().what;
}

} // namespace

TEST_CASE("a length is exact, rounded once to the nearest tick") {
  struct Case {
    std::string_view text;
    std::int64_t ticks;
  };
  const Case cases[] = {
      {"1in", 9'144'000},
      {"72pt", 9'144'000}, // 72 points are an inch
      {"25.4mm", 9'144'000},
      {"2.54 cm", 9'144'000},
      {" 25.4mm\n", 9'144'000},
      {"0.1mm", 36'000},
      {"0.3mm", 108'000}, // 0.1 + 0.2 in binary would be a hair more
      {"0.001in", 9'144}, // a thousandth of an inch
      {"0.001pt", 127},
      {"0.001mm", 360}, // a micrometre
      {"-3mm", -1'080'000},
      {"-0mm", 0},
      {"007mm", 2'520'000},
      {"10000mm", 3'600'000'000},
      {"209.99999999999997mm", 75'600'000},                    // what binary arithmetic makes of 210
      {"0.00000138888888888888888888888888888888888mm", 0},    // just under half a tick
      {"0.00000138888888888888888888888888888888889mm", 1},    // just over it
      {"0.0000039370078740157480314960629921259842519in", 36}, // a ten-thousandth of a millimetre
      {"-0.0000014mm", -1},
  };
  for (const Case &c : cases) {
    INFO(c.text);
    const auto length = parse_length(c.text);
    REQUIRE(length);
    CHECK(length.value().ticks() == c.ticks);
  }
  CHECK(parse_length("72pt").value() == parse_length("1in").value());
}

TEST_CASE("what is no length is refused with what is wrong about it") {
  struct Case {
    std::string_view text, refusal;
  };
  const Case cases[] = {{"210", "a length needs a unit"},
                        {"-6.5", "a length needs a unit"},
                        {"", "a length is missing"},
                        {"  ", "a length is missing"},
                        {"NaN", "this is not a length"},
                        {"inf", "this is not a length"},
                        {"mm", "this is not a length"},
                        {"+5mm", "this is not a length"},
                        {"--5mm", "this is not a length"},
                        {"\xEF\xBC\x95mm", "this is not a length"}, // a full-width five
                        {"1e308", "an exponent is not allowed in a number"},
                        {"1e3mm", "an exponent is not allowed in a number"},
                        {"2.1E+2mm", "an exponent is not allowed in a number"},
                        {"6,5mm", "the decimal mark is a point, not a comma"},
                        {".5mm", "a number needs a digit before and after its point"},
                        {"5.mm", "a number needs a digit before and after its point"},
                        {"1.2.3mm", "a number needs a digit before and after its point"},
                        {"5px", "\"px\" is not a unit of length (did you mean pt?)"},
                        {"5MM", "\"MM\" is not a unit of length (did you mean mm?)"},
                        {"5mm5mm", "\"mm5mm\" is not a unit of length"},
                        {"5inches", "\"inches\" is not a unit of length"},
                        {"5\xC2\xA0mm", "\"\xC2\xA0mm\" is not a unit of length (did you mean mm?)"},
                        {"10000.1mm", "no length is more than 10 m"},
                        {"-394in", "no length is more than 10 m"},
                        {"99999999999999999999999mm", "no length is more than 10 m"}};
  for (const Case &c : cases) {
    INFO(c.text);
    const auto length = parse_length(c.text);
    CHECK(refusal(length) == c.refusal);
    CHECK(length.fault().remedy == "Write a number and its unit, mm, cm, in or pt, for example \"6.5mm\".");
  }
}

TEST_CASE("signs and zeros are refused where they make no sense") {
  CHECK(refusal(parse_length_from_zero("0mm")) == "accepted");
  CHECK(refusal(parse_length_from_zero("-0.0mm")) == "accepted");
  CHECK(refusal(parse_length_from_zero("-0.1mm")) == "this length must not be negative");
  CHECK(refusal(parse_length_from_zero("-0.000000000001mm")) == "this length must not be negative");
  CHECK(refusal(parse_positive_length("0.01mm")) == "accepted");
  CHECK(refusal(parse_positive_length("0mm")) == "this length must be more than zero");
  CHECK(refusal(parse_positive_length("0.000000001mm")) == "this length must be more than zero");
  CHECK(refusal(parse_positive_length("-1mm")) == "this length must not be negative");
}

TEST_CASE("shares, parts of a picture, densities, turns and counts") {
  CHECK(parse_share("50%").value() == 0.5);
  CHECK(parse_share("33.3 %").value() == 33.3 / 100);
  CHECK(refusal(parse_share("100.00%")) == "accepted");
  CHECK(refusal(parse_share("100.00000000000000000000001%")) == "a share is from 0% to 100%");
  CHECK(refusal(parse_share("-1%")) == "a share is from 0% to 100%");
  CHECK(refusal(parse_share("0.5")) == "a share needs a unit");
  CHECK(refusal(parse_positive_share("0%")) == "this share must be more than zero");

  CHECK(parse_picture_extent("12.5%").value().value == 0.125);
  CHECK_FALSE(parse_picture_extent("12.5%").value().pixels);
  CHECK(parse_picture_extent("300px").value().value == 300);
  CHECK(parse_picture_extent("300px").value().pixels);
  CHECK(refusal(parse_picture_extent("5mm")) == "\"mm\" is not a unit of part of a picture");
  CHECK(refusal(parse_picture_extent("100.1%")) == "a picture has no more than 100%");
  CHECK(refusal(parse_picture_extent("-1px")) == "a part of a picture must not be negative");
  CHECK(refusal(parse_picture_extent("9999999999px")) == "no picture is that large");
  CHECK(refusal(parse_positive_picture_extent("0px")) == "this part of a picture must be more than zero");

  CHECK(parse_density("299.962ppi").value() == Density::of_ppi(299.962));
  CHECK(refusal(parse_density("300")) == "a density needs a unit");
  CHECK(refusal(parse_density("300dpi")) == "\"dpi\" is not a unit of density (did you mean ppi?)");
  CHECK(refusal(parse_density("0ppi")) == "a density must be more than zero");
  CHECK(refusal(parse_density("-300ppi")) == "a density must be more than zero");
  CHECK(refusal(parse_density("99999.5ppi")) == "no density is more than 99999 ppi");

  CHECK(parse_turn("-2.5").value() == Turn{-2.5});
  CHECK(refusal(parse_turn("-360.0")) == "accepted");
  CHECK(refusal(parse_turn("-360.1")) == "a turn is at most 360 degrees");
  CHECK(refusal(parse_turn("90deg")) == "a turn is a plain number, without \"deg\"");
  CHECK(refusal(parse_turn("1e1")) == "an exponent is not allowed in a number");

  CHECK(parse_count("012").value() == 12);
  CHECK(refusal(parse_count("0")) == "this number must be from 1 to 99999");
  CHECK(refusal(parse_count("-1")) == "this number must be from 1 to 99999");
  CHECK(refusal(parse_count("100000")) == "this number must be from 1 to 99999");
  CHECK(refusal(parse_count("99999999999999999999")) == "this number must be from 1 to 99999");
  CHECK(refusal(parse_count("1.5")) == "this is not a whole number");
  CHECK(parse_quality("1").value() == 1);
  CHECK(parse_quality("100").value() == 100);
  CHECK(refusal(parse_quality("0")) == "a quality must be from 1 to 100");
  CHECK(refusal(parse_quality("101")) == "a quality must be from 1 to 100");
  CHECK(refusal(parse_quality("75.5")) == "this is not a whole number");
  CHECK(parse_signature("16").value() == 16);
  CHECK(refusal(parse_signature("7")) == "a folded sheet has an even number of pages");
  CHECK(refusal(parse_signature("0")) == "this number must be from 1 to 99999");
}

TEST_CASE("figures of paper") {
  CHECK(parse_grammage("90g/m2").value() == 90);
  CHECK(parse_grammage(" 0112.5 g/m2 ").value() == 112.5);
  CHECK(parse_grammage("9999.9g/m2").value() == 9999.9);
  for (const auto text : {"0.9g/m2", "0g/m2", "-90g/m2", "10000g/m2"})
    CHECK(refusal(parse_grammage(text)) == "a grammage must be from 1 to below 10000 g/m2");
  CHECK(refusal(parse_grammage("90")) == "a grammage needs a unit");
  CHECK(parse_bulk("1.3").value() == 1.3);
  CHECK(parse_bulk("0.1").value() == 0.1);
  CHECK(parse_bulk("10").value() == 10);
  for (const auto text : {"0", "0.09", "-1.3", "10.01"})
    CHECK(refusal(parse_bulk(text)) == "a bulk must be from 0.1 to 10 cm3/g");
  CHECK(refusal(parse_bulk("1.3cm3/g")) == "a bulk is a plain number, without \"cm3/g\"");
  CHECK(parse_pages_per_inch("512.5").value() == 512.5);
  for (const auto text : {"0", "0.5", "-400", "10000"})
    CHECK(refusal(parse_pages_per_inch(text)) == "pages per inch must be from 1 to below 10000");
}

TEST_CASE("names, lines, languages and words") {
  CHECK(parse_id(" zdj\xC4\x99"
                 "cie-1 ")
            .value() == "zdj\xC4\x99"
                        "cie-1");
  CHECK(refusal(parse_id("a b")) == "there is a space inside this name");
  CHECK(refusal(parse_id(" ")) == "this must not be empty");
  CHECK(parse_line(" two\n words ").value() == "two words");
  CHECK(refusal(parse_line("")) == "this must not be empty");
  CHECK(parse_file_name(" a  b.tif").value() == " a  b.tif");
  CHECK(refusal(parse_file_name("")) == "the name of a file is missing");
  for (const auto tag : {"en", "pt-BR", "zh-Hant-TW", "de-1996"})
    CHECK(refusal(parse_language(tag)) == "accepted");
  for (const auto tag : {"", "-en", "en-", "en--GB", "e n", "1en", "toolonglanguage", "\xC5\xBB"})
    CHECK(refusal(parse_language(tag)) == "this is not a language tag");
  CHECK(parse_yes_no("yes").value());
  CHECK_FALSE(parse_yes_no(" no").value());
  const auto no_boolean = parse_yes_no("true");
  CHECK(refusal(no_boolean) == "this is not one of the known words");
  CHECK(no_boolean.fault().remedy == "Write yes or no.");
  CHECK(refusal(parse_yes_no("Yes")) == "this is not one of the known words (did you mean yes?)");
}
