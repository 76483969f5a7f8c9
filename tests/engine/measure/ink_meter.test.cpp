// Ink against a slow search: every square at every cell, from every pixel that it covers.
#include "engine/measure/ink_meter.h"

#include "tests/engine/measure/made_rows.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>

using namespace stoneproof;

namespace {

/// The ink of a pixel of the picture, 0 to 4.
using InkAt = std::function<double(std::int64_t x, std::int64_t y)>;

struct SlowAxis {
  std::int64_t cell, cells, window;
};
SlowAxis slow_axis(double side, std::int64_t pixels) {
  const bool cut = side >= static_cast<double>(pixels);
  const auto cell =
      static_cast<std::int64_t>(std::max(1.0, std::floor(std::min(side, static_cast<double>(pixels)) / 8)));
  const auto cells = (pixels + cell - 1) / cell;
  const auto window = static_cast<std::int64_t>(std::max(1.0, std::round(side / static_cast<double>(cell))));
  return {cell, cells, cut ? cells : std::min(cells, window)};
}

double mean_of(const PixelPart &part, const InkAt &ink) {
  double sum = 0;
  for (std::int64_t y = part.y; y < part.y + part.height; ++y)
    for (std::int64_t x = part.x; x < part.x + part.width; ++x) sum += ink(x, y);
  return sum / static_cast<double>(part.pixels());
}

/// The square of `order` at cell (column, row).
PixelPart square_at(const InkOrder &order, std::int64_t column, std::int64_t row) {
  const PixelPart &part = order.part;
  const SlowAxis x = slow_axis(order.square_width, part.width),
                 y = slow_axis(order.square_height, part.height);
  return {part.x + column * x.cell, part.y + row * y.cell,
          std::min(x.window * x.cell, part.width - column * x.cell),
          std::min(y.window * y.cell, part.height - row * y.cell)};
}

double slow_most(const InkOrder &order, const InkAt &ink) {
  const SlowAxis x = slow_axis(order.square_width, order.part.width),
                 y = slow_axis(order.square_height, order.part.height);
  double most = -1;
  for (std::int64_t row = 0; row + y.window <= y.cells; ++row)
    for (std::int64_t column = 0; column + x.window <= x.cells; ++column)
      most = std::max(most, mean_of(square_at(order, column, row), ink));
  return most;
}

Ink metered(const InkOrder &order, const RowLayout &layout, const made::Raster &r,
            const PressTable *table = nullptr) {
  InkMeter meter(order, layout, table);
  made::feed(meter, r, layout.y);
  const auto ink = meter.take();
  REQUIRE(ink);
  return *ink;
}

/// `ink.most` is the slow maximum, and the mean of the square that is named.
void check_most(const Ink &ink, const InkOrder &order, const InkAt &at) {
  CHECK(ink.most == Approx(slow_most(order, at)).epsilon(1e-9));
  CHECK(ink.most == Approx(mean_of(ink.where, at)).epsilon(1e-9));
  const PixelPart &part = order.part;
  CHECK(ink.where.x >= part.x);
  CHECK(ink.where.y >= part.y);
  CHECK(ink.where.x + ink.where.width <= part.x + part.width);
  CHECK(ink.where.y + ink.where.height <= part.y + part.height);
}

InkAt inks_in(const made::Raster &r, const RowLayout &layout) {
  return [&](std::int64_t x, std::int64_t y) {
    double sum = 0;
    for (int c = 0; c < 4; ++c) {
      const double share = r.at(static_cast<int>(x - layout.x), static_cast<int>(y - layout.y), c) /
                           static_cast<double>((1 << layout.bits) - 1);
      sum += layout.inverted ? 1 - share : share;
    }
    return sum;
  };
}

made::Raster plain_paper(int width, int height) {
  return {width, height, 4, 8, std::vector<std::uint16_t>(static_cast<std::size_t>(width * height * 4), 20)};
}

constexpr const char *press_file =
    "/usr/share/color/icc/ghostscript/default_cmyk.icc"; // Debian's libgs-common

/// The table of sRGB or gray on that press; none where it is not installed, which is said.
std::optional<PressTable> table_of(ProfileSpace space) {
  const std::string press = test::content_of(press_file);
  if (press.empty()) {
    WARN("not compared: there is no " << press_file);
    return std::nullopt;
  }
  auto made = PressTable::make({}, space, std::vector<std::uint8_t>(press.begin(), press.end()), 5);
  if (!made) FAIL(made.fault().what);
  return std::move(made).value();
}

} // namespace

TEST_CASE("the largest mean of CMYK, plain and inverted, in 8 and 16 bits, in parts and odd squares") {
  const std::pair<double, double> squares[] = {{1, 1},    {0.2, 3.5}, {7.4, 5.5}, {8, 16},
                                               {15.9, 9}, {24, 31.7}, {200, 20},  {1e6, 1e6}};
  for (const int bits : {8, 16})
    for (const bool inverted : {false, true})
      for (const int channels : {4, 5}) { // the fifth is opacity
        const made::Raster r = made::busy(73, 61, channels, bits);
        RowLayout layout = made::layout_of(r, ColourModel::cmyk, 5, 3);
        layout.inverted = inverted;
        if (channels == 5) layout.alpha = 4;
        for (const PixelPart &part :
             {PixelPart{5, 3, 73, 61}, {9, 10, 50, 41}, {77, 3, 1, 61}, {30, 30, 1, 1}})
          for (const auto &[width, height] : squares) {
            CAPTURE(bits, inverted, channels, part.x, part.width, width, height);
            const InkOrder order{part, width, height};
            const Ink ink = metered(order, layout, r);
            check_most(ink, order, inks_in(r, layout));
            CHECK_FALSE(ink.out_of_gamut);
          }
      }
}

TEST_CASE("a dark patch is found where it lies, and of equal ones the first") {
  made::Raster r = plain_paper(120, 90);
  const auto patch = [&](int left, int top) {
    for (int y = top; y < top + 16; ++y)
      for (int x = left; x < left + 24; ++x)
        for (int c = 0; c < 4; ++c) r.at(x, y, c) = 255;
  };
  patch(66, 40); // at whole cells of 3 x 2
  const RowLayout layout = made::layout_of(r, ColourModel::cmyk);
  const InkOrder order{{0, 0, 120, 90}, 24, 16};
  CHECK(metered(order, layout, r).most == Approx(4).epsilon(1e-12));
  CHECK(metered(order, layout, r).where == PixelPart{66, 40, 24, 16});
  patch(12, 40);
  CHECK(metered(order, layout, r).where == PixelPart{12, 40, 24, 16});
  patch(90, 4);
  CHECK(metered(order, layout, r).where == PixelPart{90, 4, 24, 16});
  // Outside the part it does not count.
  CHECK(metered({{0, 20, 120, 70}, 24, 16}, layout, r).where == PixelPart{12, 40, 24, 16});
  CHECK(metered({{36, 60, 80, 30}, 24, 16}, layout, r).most == Approx(4 * 20 / 255.0).epsilon(1e-12));
}

TEST_CASE("a square larger than the part is the part, and a part of one pixel is that pixel") {
  const made::Raster r = made::busy(40, 30, 4);
  const RowLayout layout = made::layout_of(r, ColourModel::cmyk);
  const InkAt at = inks_in(r, layout);
  const Ink all = metered({{4, 6, 30, 20}, 1000, 1000}, layout, r);
  CHECK(all.where == PixelPart{4, 6, 30, 20});
  const Ink one = metered({{17, 9, 1, 1}, 12, 12}, layout, r);
  CHECK(one.where == PixelPart{17, 9, 1, 1});
  CHECK(one.most == Approx(at(17, 9)));
}

TEST_CASE("rows that never come leave nothing measured") {
  const made::Raster r = made::busy(40, 30, 4);
  const RowLayout layout = made::layout_of(r, ColourModel::cmyk);
  InkMeter meter({{0, 0, 40, 30}, 8, 8}, layout, nullptr);
  CHECK_FALSE(meter.take());
}

TEST_CASE("colours are measured through the table of the press") {
  const auto table = table_of(ProfileSpace::rgb);
  if (!table) return;
  struct Kind {
    ColourModel colour;
    int channels, bits, alpha;
  };
  for (const Kind &kind : {Kind{ColourModel::rgb, 3, 8, -1}, Kind{ColourModel::rgb, 3, 16, -1},
                           Kind{ColourModel::rgb, 4, 8, 3}}) {
    const made::Raster r = made::busy(47, 39, kind.channels, kind.bits);
    RowLayout layout = made::layout_of(r, kind.colour, 3, 1);
    layout.alpha = kind.alpha;
    const auto printed = [&](std::int64_t x, std::int64_t y) {
      std::array<std::uint8_t, 3> level{};
      for (int c = 0; c < 3; ++c) {
        const auto at = [&](int channel) {
          const auto sample = r.at(static_cast<int>(x - layout.x), static_cast<int>(y - layout.y), channel);
          return std::round(sample / (kind.bits == 16 ? 257.0 : 1.0));
        };
        const double opacity = kind.alpha < 0 ? 255 : at(kind.alpha);
        level[static_cast<std::size_t>(c)] =
            static_cast<std::uint8_t>(std::round(at(c) * opacity / 255) + 255 - opacity);
      }
      return table->at(level[0], level[1], level[2]);
    };
    for (const PixelPart &part : {PixelPart{3, 1, 47, 39}, {10, 5, 31, 22}}) {
      CAPTURE(kind.channels, kind.bits, part.x);
      const InkOrder order{part, 13, 9.5};
      const Ink ink = metered(order, layout, r, &*table);
      check_most(ink, order,
                 [&](std::int64_t x, std::int64_t y) { return printed(x, y).ink_tenths / 1000.0; });
      double out = 0;
      for (std::int64_t y = part.y; y < part.y + part.height; ++y)
        for (std::int64_t x = part.x; x < part.x + part.width; ++x) out += printed(x, y).out_of_gamut;
      REQUIRE(ink.out_of_gamut);
      CHECK(*ink.out_of_gamut == Approx(out / static_cast<double>(part.pixels())).epsilon(1e-12));
      CHECK((out > 0 && out < static_cast<double>(part.pixels())));
    }
  }
}

TEST_CASE("gray is measured through a table of grays, whichever way round the file counts it") {
  const auto table = table_of(ProfileSpace::gray);
  if (!table) return;
  for (const bool inverted : {false, true}) {
    const made::Raster r = made::busy(40, 30, 1);
    RowLayout layout = made::layout_of(r, ColourModel::gray);
    layout.inverted = inverted;
    const InkOrder order{{0, 0, 40, 30}, 10, 10};
    check_most(metered(order, layout, r, &*table), order, [&](std::int64_t x, std::int64_t y) {
      const int level = r.at(static_cast<int>(x), static_cast<int>(y), 0);
      return table->at(static_cast<std::uint8_t>(inverted ? 255 - level : level)).ink_tenths / 1000.0;
    });
  }
}

TEST_CASE("large squares are sampled, at least 64 x 64 times, and come near the full mean") {
  // Noise without any structure. A pixel's ink, a sum of four even spreads, deviates by 0.577; the mean of
  // 64 x 64 or more samples by at most 0.577 / 64 = 0.009. Four times that is not passed.
  std::mt19937 random(11);
  for (const double side : {128.0, 190.0, 300.0, 512.0}) {
    CAPTURE(side);
    made::Raster r{600, 560, 4, 8, {}};
    for (int i = 0; i < r.width * r.height * 4; ++i)
      r.samples.push_back(static_cast<std::uint16_t>(random() % 256));
    const RowLayout layout = made::layout_of(r, ColourModel::cmyk);
    const InkOrder order{{0, 0, 600, 560}, side, side};
    const Ink ink = metered(order, layout, r);
    CHECK(std::abs(ink.most - mean_of(ink.where, inks_in(r, layout))) < 0.036);
    CHECK(std::abs(ink.most - 2) < 0.036);
    // To whole cells of an eighth, and less of the last one at an edge.
    CHECK(static_cast<double>(ink.where.width) > side * 6 / 8);
    CHECK(static_cast<double>(ink.where.width) < side * 9 / 8);
  }
  // Flat squares are exact.
  made::Raster r = plain_paper(600, 560);
  for (int y = 128; y < 128 + 256; ++y)
    for (int x = 64; x < 64 + 256; ++x) r.at(x, y, 2) = 255;
  const RowLayout layout = made::layout_of(r, ColourModel::cmyk);
  const Ink ink = metered({{0, 0, 600, 560}, 256, 256}, layout, r);
  CHECK(ink.where == PixelPart{64, 128, 256, 256});
  CHECK(ink.most == Approx((3 * 20 + 255) / 255.0).epsilon(1e-12));
}

TEST_CASE("the window over cells is the slow search, and cells without samples are passed over") {
  std::mt19937 random(3);
  for (int round = 0; round < 200; ++round) {
    const auto columns = static_cast<std::int64_t>(1 + random() % 9),
               rows = static_cast<std::int64_t>(random() % 9);
    const auto width = static_cast<std::int64_t>(1 + random() % 10),
               height = static_cast<std::int64_t>(1 + random() % 10);
    std::vector<std::vector<SquareMaximum::Cell>> grid;
    SquareMaximum squares(columns, width, height);
    for (std::int64_t row = 0; row < rows; ++row) {
      grid.emplace_back();
      for (std::int64_t i = 0; i < columns; ++i) {
        const auto count = static_cast<double>(random() % 3);
        grid.back().push_back({count * static_cast<double>(random() % 50), count});
      }
      squares.add(grid.back());
    }
    const std::int64_t wide = std::min(width, columns), high = std::min(height, rows);
    std::optional<SquareMaximum::Found> slow;
    for (std::int64_t top = 0; rows > 0 && top + high <= rows; ++top)
      for (std::int64_t left = 0; left + wide <= columns; ++left) {
        double sum = 0, count = 0;
        for (std::int64_t y = top; y < top + high; ++y)
          for (std::int64_t x = left; x < left + wide; ++x) {
            sum += grid[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)].sum;
            count += grid[static_cast<std::size_t>(y)][static_cast<std::size_t>(x)].count;
          }
        // Sums of whole numbers are exact, so that the first of equal squares is the same one.
        if (count > 0 && (!slow || sum / count > slow->mean))
          slow = SquareMaximum::Found{sum / count, {left, top, wide, high}};
      }
    const auto found = squares.take();
    CAPTURE(round, columns, rows, width, height);
    REQUIRE(found.has_value() == slow.has_value());
    if (!found) continue;
    CHECK(found->mean == slow->mean);
    CHECK(found->cells == slow->cells);
  }
}
