// Histograms against counting every sample one by one.
#include "engine/measure/tone_meter.h"

#include "tests/engine/measure/made_rows.h"
#include "tests/support/catch.h"

#include <cmath>
#include <functional>

using namespace stoneproof;

namespace {

using Counts = std::vector<std::vector<std::uint64_t>>;
/// The levels of a pixel of the raster, one for each channel.
using Levels = std::function<std::vector<int>(int x, int y)>;

Counts counted(const PixelPart &part, const RowLayout &layout, int channels, int bits, const Levels &levels) {
  Counts counts(static_cast<std::size_t>(channels), std::vector<std::uint64_t>(std::size_t{1} << bits));
  for (std::int64_t y = part.y; y < part.y + part.height; ++y)
    for (std::int64_t x = part.x; x < part.x + part.width; ++x) {
      const auto pixel = levels(static_cast<int>(x - layout.x), static_cast<int>(y - layout.y));
      for (std::size_t c = 0; c < counts.size(); ++c) ++counts[c].at(static_cast<std::size_t>(pixel.at(c)));
    }
  return counts;
}

Counts counts_of(const Histograms &histograms) {
  Counts counts;
  for (const Histogram &histogram : histograms.channels) counts.push_back(histogram.counts);
  return counts;
}

Histograms metered(const PixelPart &part, const RowLayout &layout, const made::Raster &r) {
  ToneMeter meter(part, layout);
  made::feed(meter, r, layout.y);
  return meter.take();
}

/// Whole, inside with odd edges, one column, one row, one pixel in the last corner.
std::vector<PixelPart> parts_of(const RowLayout &l) {
  return {{l.x, l.y, l.width, l.height},
          {l.x + 3, l.y + 2, l.width - 8, l.height - 5},
          {l.x + 5, l.y, 1, l.height},
          {l.x, l.y + 4, l.width, 1},
          {l.x + l.width - 1, l.y + l.height - 1, 1, 1}};
}

/// Counts what ToRgb makes of a layout, against `levels`, in every part.
void check_converted(const RowLayout &layout, const made::Raster &r, const Levels &levels) {
  for (const PixelPart &part : parts_of(layout)) {
    CAPTURE(part.x, part.y, part.width, part.height);
    const Histograms histograms = metered(part, layout, r);
    CHECK_FALSE(histograms.as_stored);
    CHECK(histograms.bits == 8);
    CHECK(histograms.pixels == part.width * part.height);
    CHECK(counts_of(histograms) == counted(part, layout, 3, 8, levels));
  }
}

int rounded(double level) { return static_cast<int>(std::lround(level)); }

} // namespace

TEST_CASE("gray and RGB are counted as the file holds them, in every depth, part and width") {
  struct Kind {
    ColourModel colour;
    int channels, bits;
    bool inverted;
  };
  const Kind kinds[] = {{ColourModel::bilevel, 1, 1, false}, {ColourModel::bilevel, 1, 1, true},
                        {ColourModel::gray, 1, 4, false},    {ColourModel::gray, 1, 4, true},
                        {ColourModel::gray, 1, 8, false},    {ColourModel::gray, 1, 8, true},
                        {ColourModel::gray, 1, 12, false},   {ColourModel::gray, 1, 16, false},
                        {ColourModel::gray, 1, 16, true},    {ColourModel::rgb, 3, 4, false},
                        {ColourModel::rgb, 3, 8, false},     {ColourModel::rgb, 3, 10, false},
                        {ColourModel::rgb, 3, 16, false}};
  for (const Kind &kind : kinds)
    for (const int width : {36, 37})
      for (const std::int64_t left : {0, 11}) { // rows that begin left of the part, and inside the picture
        const made::Raster r = made::busy(width, 23, kind.channels, kind.bits);
        RowLayout layout = made::layout_of(r, kind.colour, left, left * 2);
        layout.inverted = kind.inverted;
        const int most = (1 << kind.bits) - 1;
        const Levels levels = [&](int x, int y) {
          std::vector<int> pixel;
          for (int c = 0; c < kind.channels; ++c)
            pixel.push_back(kind.inverted ? most - r.at(x, y, c) : r.at(x, y, c));
          return pixel;
        };
        for (const PixelPart &part : parts_of(layout)) {
          CAPTURE(kind.channels, kind.bits, kind.inverted, width, left, part.x, part.width, part.height);
          const Histograms histograms = metered(part, layout, r);
          CHECK(histograms.as_stored);
          CHECK(histograms.bits == kind.bits);
          CHECK(histograms.pixels == part.width * part.height);
          CHECK(counts_of(histograms) == counted(part, layout, kind.channels, kind.bits, levels));
        }
      }
}

TEST_CASE("samples beyond their depth count as the brightest") {
  for (const int bits : {4, 12}) {
    made::Raster r{3, 1, 1, bits, {2, 15, 200}};
    if (bits == 12) r.samples = {2, 4095, 60'000};
    const RowLayout layout = made::layout_of(r, ColourModel::gray);
    const Histograms histograms = metered({0, 0, 3, 1}, layout, r);
    CHECK(histograms.channels[0].counts[2] == 1);
    CHECK(histograms.channels[0].counts.back() == 2);
  }
}

TEST_CASE("palettes are counted as the colours that they stand for") {
  const made::Raster r = made::busy(37, 23, 1, 4);
  RowLayout layout = made::layout_of(r, ColourModel::indexed, 2, 1);
  for (int i = 0; i < 16; ++i) // no colour twice, no channel in the order of the index
    layout.palette.push_back({static_cast<std::uint8_t>(i * 53 % 256), static_cast<std::uint8_t>(255 - i),
                              static_cast<std::uint8_t>(i * 7)});
  check_converted(layout, r, [&](int x, int y) {
    const auto &colour = layout.palette[r.at(x, y, 0)];
    return std::vector<int>(colour.begin(), colour.end());
  });
}

TEST_CASE("what is see-through is counted as it looks on white paper") {
  for (const int bits : {8, 16}) {
    const double unit = bits == 8 ? 1 : 257;
    const made::Raster rgb = made::busy(37, 23, 4, bits);
    RowLayout layout = made::layout_of(rgb, ColourModel::rgb, 2, 1);
    layout.alpha = 3;
    check_converted(layout, rgb, [&](int x, int y) {
      const int opacity = rounded(rgb.at(x, y, 3) / unit);
      std::vector<int> pixel;
      for (int c = 0; c < 3; ++c)
        pixel.push_back(rounded(rounded(rgb.at(x, y, c) / unit) * opacity / 255.0) + 255 - opacity);
      return pixel;
    });
  }
  const made::Raster gray = made::busy(37, 23, 2, 8);
  RowLayout layout = made::layout_of(gray, ColourModel::gray);
  layout.alpha = 1;
  check_converted(layout, gray, [&](int x, int y) {
    const int opacity = gray.at(x, y, 1);
    return std::vector<int>(3, rounded(gray.at(x, y, 0) * opacity / 255.0) + 255 - opacity);
  });
}

TEST_CASE("ink is counted as the light that it leaves, whichever way round the file counts it") {
  for (const int bits : {8, 16})
    for (const bool inverted : {false, true}) {
      CAPTURE(bits, inverted);
      const double unit = bits == 8 ? 1 : 257;
      const made::Raster r = made::busy(37, 23, 4, bits);
      RowLayout layout = made::layout_of(r, ColourModel::cmyk, 4, 2);
      layout.inverted = inverted;
      check_converted(layout, r, [&](int x, int y) {
        const auto light = [&](int c) {
          const int level = rounded(r.at(x, y, c) / unit);
          return inverted ? level : 255 - level;
        };
        return std::vector<int>{rounded(light(0) * light(3) / 255.0), rounded(light(1) * light(3) / 255.0),
                                rounded(light(2) * light(3) / 255.0)};
      });
    }
}

TEST_CASE("of large parts every n-th row is counted, from the first of the part on") {
  struct Case {
    std::int64_t height, step;
  };
  for (const Case &c : {Case{3999, 1}, Case{4000, 2}, Case{5999, 2}, Case{6000, 3}, Case{6001, 3}}) {
    CAPTURE(c.height);
    const std::int64_t top = 7; // rows above and below the part come too
    RowLayout layout;
    layout.stored = {4000, c.height + 2 * top};
    layout.width = 4000, layout.height = c.height + 2 * top;
    layout.channels = 1;
    layout.colour = ColourModel::gray;
    ToneMeter meter({0, top, 4000, c.height}, layout);
    std::vector<std::uint64_t> counts(256);
    std::int64_t rows = 0;
    for (std::int64_t y = 0; y < layout.height; ++y) {
      const auto level = static_cast<std::uint8_t>(y * y % 251);
      meter.add(y, made::Bytes(4000, level).data());
      if (y < top || y >= top + c.height || (y - top) % c.step != 0) continue;
      counts[level] += 4000;
      ++rows;
    }
    const Histograms histograms = meter.take();
    CHECK(histograms.pixels == rows * 4000);
    CHECK(histograms.pixels >= 8'000'000);
    CHECK(histograms.channels[0].counts == counts);
  }
}
