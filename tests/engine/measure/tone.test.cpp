// Shares, range and comb of histograms made by hand.
#include "engine/measure/tone.h"

#include "tests/support/catch.h"

#include <cmath>
#include <map>

using namespace stoneproof;

namespace {

/// One channel for each map from values to counts; all of the same sum.
Histograms histograms_of(const std::vector<std::map<std::size_t, std::uint64_t>> &channels, int bits = 8) {
  Histograms histograms;
  histograms.bits = bits;
  for (const auto &channel : channels) {
    Histogram histogram{std::vector<std::uint64_t>(std::size_t{1} << bits)};
    std::int64_t pixels = 0;
    for (const auto &[value, count] : channel) {
      histogram.counts.at(value) = count;
      pixels += static_cast<std::int64_t>(count);
    }
    histograms.channels.push_back(histogram);
    histograms.pixels = pixels;
  }
  return histograms;
}

/// Slow hills from 40 to 190 without any gap, as a photograph has them.
std::vector<std::uint64_t> hills() {
  std::vector<std::uint64_t> counts(256);
  for (std::size_t value = 40; value <= 190; ++value)
    counts[value] = static_cast<std::uint64_t>(1000 + 600 * std::sin(static_cast<double>(value) / 17));
  return counts;
}

/// The same pixels after each value was moved to `factor` times its distance from 40.
std::vector<std::uint64_t> stretched(const std::vector<std::uint64_t> &counts, double factor) {
  std::vector<std::uint64_t> out(256);
  for (std::size_t value = 0; value < 256; ++value) {
    const double moved = std::round((static_cast<double>(value) - 40) * factor);
    out[static_cast<std::size_t>(std::min(255.0, std::max(0.0, moved)))] += counts[value];
  }
  return out;
}

Histograms gray(std::vector<std::uint64_t> counts) {
  Histograms histograms;
  for (const std::uint64_t count : counts) histograms.pixels += static_cast<std::int64_t>(count);
  histograms.channels.push_back({std::move(counts)});
  return histograms;
}

} // namespace

TEST_CASE("what lies on a bound is not clipped, the next value is") {
  struct Case {
    int bits;
    std::size_t low, high; ///< on the bounds
  };
  // 250 and 5 of 255; in 16 bits 257 times as much, in 12 bits (4015.) and (80.3) the last inside.
  for (const Case &c : {Case{8, 5, 250}, Case{16, 1285, 64250}, Case{12, 81, 4014}}) {
    CAPTURE(c.bits);
    const Tone inside = tone_of(histograms_of({{{c.low, 10}, {c.high, 30}}}, c.bits));
    CHECK(inside.white == 0);
    CHECK(inside.black == 0);
    const Tone outside = tone_of(histograms_of({{{c.low - 1, 10}, {c.high + 1, 30}}}, c.bits));
    CHECK(outside.white == 0.75);
    CHECK(outside.black == 0.25);
    CHECK(outside.channels[0].clipped_highlights == 0.75);
    CHECK(outside.channels[0].clipped_shadows == 0.25);
  }
  const Tone bilevel = tone_of(histograms_of({{{0, 1}, {1, 3}}}, 1));
  CHECK(bilevel.white == 0.75);
  CHECK(bilevel.black == 0.25);
  CHECK(bilevel.range == 1);
}

TEST_CASE("of three channels the least share counts for the whole, and each is told") {
  const Tone tone = tone_of(histograms_of({{{0, 50}, {100, 20}, {255, 30}},
                                           {{4, 10}, {5, 50}, {250, 20}, {251, 20}},
                                           {{3, 40}, {128, 10}, {254, 50}}}));
  REQUIRE(tone.channels.size() == 3);
  CHECK(tone.channels[0].clipped_highlights == Approx(0.3));
  CHECK(tone.channels[1].clipped_highlights == Approx(0.2));
  CHECK(tone.channels[2].clipped_highlights == Approx(0.5));
  CHECK(tone.white == Approx(0.2));
  CHECK(tone.channels[0].clipped_shadows == Approx(0.5));
  CHECK(tone.channels[1].clipped_shadows == Approx(0.1));
  CHECK(tone.channels[2].clipped_shadows == Approx(0.4));
  CHECK(tone.black == Approx(0.1));
}

TEST_CASE("the range leaves out half a percent of all samples at each end") {
  // 4 of 1000 samples at an end are dust; 6 are not.
  CHECK(tone_of(histograms_of({{{0, 4}, {50, 496}, {200, 496}, {255, 4}}})).range == Approx(150 / 255.0));
  CHECK(tone_of(histograms_of({{{0, 6}, {50, 494}, {200, 496}, {255, 4}}})).range == Approx(200 / 255.0));
  CHECK(tone_of(histograms_of({{{0, 4}, {50, 496}, {200, 494}, {255, 6}}})).range == Approx(205 / 255.0));
  // All channels together: red alone is bright.
  CHECK(tone_of(histograms_of({{{240, 100}}, {{20, 100}}, {{30, 100}}})).range == Approx(220 / 255.0));
  CHECK(tone_of(histograms_of({{{77, 1}}})).range == 0);
  CHECK(tone_of(histograms_of({{{0, 1}, {65535, 1}}}, 16)).range == 1);
}

TEST_CASE("a smooth histogram has no comb; stretched in 8 bits it has a gap for each value it lacks") {
  CHECK(tone_of(gray(hills())).comb == 0);
  for (const double factor : {1.2, 1.43, 1.6, 2.0, 2.5, 3.0, 4.0}) {
    CAPTURE(factor);
    std::vector<std::uint64_t> counts = hills();
    for (std::size_t value = 40; value < 256; ++value)
      if ((static_cast<double>(value) - 40) * factor > 210) counts[value] = 0; // to fit into 255
    counts = stretched(counts, factor);
    const Tone tone = tone_of(gray(counts));
    std::size_t first = 0, last = 255, missing = 0;
    while (counts[first] == 0) ++first;
    while (counts[last] == 0) --last;
    for (std::size_t value = first; value <= last; ++value) missing += counts[value] == 0;
    REQUIRE(missing > 0);
    CHECK(tone.comb == Approx(static_cast<double>(missing) / static_cast<double>(last - first)).margin(0.02));
  }
}

TEST_CASE("a wide hole in a histogram is no comb") {
  std::vector<std::uint64_t> counts(256, 1000); // ink on paper: dark, nothing between, light
  for (std::size_t value = 90; value < 150; ++value) counts[value] = 0;
  CHECK(tone_of(gray(counts)).comb == 0);
}

TEST_CASE("a value counts as missing with a tenth of its lesser neighbour, where that holds enough") {
  std::vector<std::uint64_t> counts(256, 1000);
  counts[100] = 100;
  counts[101] = 50'000;                               // a spike beside it says nothing
  const Approx one = Approx(1.0 / 253).epsilon(0.02); // the percentiles of a nearly flat histogram: 1 and 254
  CHECK(tone_of(gray(counts)).comb == one);
  counts[100] = 101;
  CHECK(tone_of(gray(counts)).comb == 0);
  // Among rare values, below 0.02 % of 230,000 pixels, nothing is missing.
  for (std::size_t value = 60; value < 110; ++value) counts[value] = value % 2 == 0 ? 0 : 40;
  CHECK(tone_of(gray(counts)).comb == 0);
}

TEST_CASE("a spike on a smooth slope is no comb") {
  std::vector<std::uint64_t> counts = hills(); // a cloudless sky, a plain wall
  counts[90] = counts[150] = 400'000;
  CHECK(tone_of(gray(counts)).comb == 0);
}

TEST_CASE("the channel with the most gaps counts") {
  Histograms histograms = gray(hills());
  histograms.channels.push_back({stretched(hills(), 1.6)});
  histograms.channels.push_back({hills()});
  CHECK(tone_of(histograms).comb == tone_of(gray(stretched(hills(), 1.6))).comb);
  CHECK(tone_of(histograms).comb > 0.3);
}

TEST_CASE("where a comb cannot be told it is 0") {
  const std::vector<std::uint64_t> comb = stretched(hills(), 1.6);
  REQUIRE(tone_of(gray(comb)).comb > 0.3);
  Histograms converted = gray(comb);
  converted.as_stored = false;
  CHECK(tone_of(converted).comb == 0);

  Histograms deep = gray(comb);
  deep.bits = 16;
  deep.channels[0].counts.resize(65536);
  CHECK(tone_of(deep).comb == 0);

  // Every second of 100 values, 200 pixels each: 10,000 pixels; one less is too few.
  std::vector<std::uint64_t> few(256);
  for (std::size_t value = 50; value < 150; value += 2) few[value] = 200;
  CHECK(tone_of(gray(few)).comb > 0.4);
  --few[50];
  CHECK(tone_of(gray(few)).comb == 0);

  // Tones of fewer than 32 steps: every second from 100 to 130 or to 132.
  for (const std::size_t last : {130u, 132u}) {
    std::vector<std::uint64_t> narrow(256);
    for (std::size_t value = 100; value <= last; value += 2) narrow[value] = 5000;
    CHECK((tone_of(gray(narrow)).comb > 0) == (last == 132));
  }
}
