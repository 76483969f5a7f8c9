// The sweep against looking at every two boxes, and shares of turned boxes reckoned by hand.
#include "engine/placement/overlaps.h"

#include "engine/placement/placed.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <random>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

using Pairs = std::vector<std::pair<std::size_t, std::size_t>>;

/// Boxes on whole millimetres, so that many edges touch; some have no width.
std::vector<Rect> some_boxes(std::mt19937 &random, std::size_t count) {
  std::uniform_int_distribution<int> place(0, 60), size(0, 12);
  std::vector<Rect> boxes;
  for (std::size_t i = 0; i < count; ++i)
    boxes.push_back({1_mm * place(random), 1_mm * place(random), 1_mm * size(random), 1_mm * size(random)});
  return boxes;
}

Pairs sorted(Pairs pairs) {
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

} // namespace

TEST_CASE("the sweep finds what looking at every two boxes finds, each pair once") {
  std::mt19937 random(7);
  std::size_t found_in_all = 0;
  for (int round = 0; round < 60; ++round) {
    const auto ones = some_boxes(random, 3 + static_cast<std::size_t>(round)),
               others = some_boxes(random, 40);
    Pairs within, between, found_within, found_between;
    for (std::size_t a = 0; a < ones.size(); ++a) {
      for (std::size_t b = a + 1; b < ones.size(); ++b)
        if (shared_part(ones[a], ones[b])) within.emplace_back(a, b);
      for (std::size_t b = 0; b < others.size(); ++b)
        if (shared_part(ones[a], others[b])) between.emplace_back(a, b);
    }
    each_overlap(ones, [&](std::size_t a, std::size_t b) { found_within.emplace_back(a, b); });
    each_overlap(ones, others, [&](std::size_t a, std::size_t b) { found_between.emplace_back(a, b); });
    CHECK(sorted(found_within) == within);
    CHECK(sorted(found_between) == between);
    found_in_all += within.size() + between.size();
  }
  CHECK(found_in_all > 1000);
}

TEST_CASE("a heap of boxes costs no more than its limit for each box") {
  const std::vector<Rect> heap(2000, Rect{0_mm, 0_mm, 10_mm, 10_mm});
  std::size_t calls = 0;
  each_overlap(heap, [&](std::size_t, std::size_t) { ++calls; });
  CHECK(calls > heap.size());
  CHECK(calls <= heap.size() * most_overlaps);
}

TEST_CASE("no boxes, or one list without any, overlap nothing") {
  const std::vector<Rect> one = {{0_mm, 0_mm, 1_mm, 1_mm}}, none;
  const auto fail = [](std::size_t, std::size_t) { FAIL("called"); };
  each_overlap(none, fail);
  each_overlap(one, fail);
  each_overlap(one, none, fail);
  each_overlap(none, one, fail);
}

TEST_CASE("the part that a turned box shares with an upright one") {
  const Rect square = {0_mm, 0_mm, 20_mm, 20_mm};
  struct Case {
    Rect box;
    double turn, share;
  };
  const Case cases[] = {
      {{0_mm, 0_mm, 20_mm, 20_mm}, 0, 1},      {{10_mm, 0_mm, 20_mm, 20_mm}, 0, 0.5},
      {{0_mm, 0_mm, 20_mm, 10_mm}, 90, 0.375}, {{30_mm, 0_mm, 20_mm, 20_mm}, 0, 0},
      {{-20_mm, -20_mm, 60_mm, 60_mm}, 45, 1}, {{-10_mm, 0_mm, 20_mm, 20_mm}, 180, 0.5},
  };
  for (const auto &[box, turn, share] : cases) {
    CAPTURE(box.x.mm(), box.width.mm(), turn);
    CHECK(shared_part(turned(box, Turn{turn}, box.centre()), square).share == Approx(share).margin(1e-9));
  }
  // A square on its corner with the diagonal of the upright one: half of it.
  const Rect inner = {Length::of_mm(10 - 7.0710678), Length::of_mm(10 - 7.0710678), Length::of_mm(14.1421356),
                      Length::of_mm(14.1421356)};
  const SharedPart part = shared_part(turned(inner, Turn{45}, inner.centre()), square);
  CHECK(part.share == Approx(0.5).epsilon(1e-6));
  CHECK(part.box.width.mm() == Approx(20).epsilon(1e-6));
  // Its corner alone reaches in: the box round the turned one would tell far more.
  const Rect far = {25_mm, 25_mm, 10_mm, 10_mm};
  CHECK(shared_part(turned(far, Turn{45}, far.centre()), square).share == 0);
}

TEST_CASE("distances between boxes") {
  const Rect box = {10_mm, 10_mm, 10_mm, 10_mm};
  CHECK(distance_between(box, {15_mm, 15_mm, 1_mm, 1_mm}) == 0_mm);
  CHECK(distance_between(box, {20_mm, 10_mm, 5_mm, 5_mm}) == 0_mm);
  CHECK(distance_between(box, {0_mm, 10_mm, 5_mm, 5_mm}) == 5_mm);
  CHECK(distance_between(box, {23_mm, 24_mm, 5_mm, 5_mm}) == 5_mm);
  CHECK(distance_between({23_mm, 24_mm, 5_mm, 5_mm}, box) == 5_mm);
}
