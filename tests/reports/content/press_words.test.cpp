#include "reports/content/press_words.h"

#include "engine/press/read.h"
#include "tests/support/catch.h"
#include "tests/support/small_book.h"

#include <algorithm>

using namespace stoneproof;
using namespace stoneproof::content;

namespace {

std::string asks(const PressSheet &press, std::string_view name, const Book &book = test::small_book()) {
  for (const RequirementGroup &group : press_words(press, book))
    for (const Requirement &row : group.rows)
      if (row.name == name) return row.asks;
  return "no such row";
}

} // namespace

TEST_CASE("every bar of the sheet is told with its figures") {
  PressSheet press = built_in_press_sheet();
  press.density[0] = {Density::of_ppi(280), Density::of_ppi(180)};
  press.jpeg_quality = {85, 60};
  press.ink = {3.2, Length::of_mm(5)};
  press.bleed = {Length::of_mm(3), Length::of_mm(3), Length::of_mm(3), {}};
  press.safe_margin = {Length::of_mm(5), Length::of_mm(6), Length::of_mm(7), {}};
  press.formats = {Format::jpeg, Format::tiff};
  press.colours = {ColourModel::rgb};
  press.page_counts[static_cast<std::size_t>(BindingKind::perfect)] = {8, 40, 600};
  CHECK(asks(press, "Photos") == "280 ppi wanted, 180 ppi at the least");
  CHECK(asks(press, "JPEG quality") == "85 wanted, 60 at the least");
  CHECK(asks(press, "Ink") == "at most 320 % in all, on a square of 5 mm");
  CHECK(asks(press, "Bleed") == "at least 3 mm");
  CHECK(asks(press, "Safe margin") == "at least 5 mm at the top, 6 mm at the bottom, 7 mm outside");
  CHECK(asks(press, "Files") == "JPEG and TIFF");
  CHECK(asks(press, "Colours") == "RGB");
  CHECK(asks(press, "Pages") == "a multiple of 8, from 40 to 600");
}

TEST_CASE("what the sheet asks of other bindings and longer books is left out") {
  PressSheet press = built_in_press_sheet();
  press.inside_margins = {{1, Length::of_mm(10)}, {200, Length::of_mm(15)}};
  press.page_counts[static_cast<std::size_t>(BindingKind::saddle)] = {4, 8, 64};
  CHECK(asks(press, "Margin at the binding") == "at least 10 mm in a book of 3 pages");
  Book book = test::small_book();
  book.binding.kind = BindingKind::saddle;
  CHECK(asks(press, "Pages", book) == "a multiple of 4, from 8 to 64");
  press.inside_margins.clear();
  CHECK(asks(press, "Margin at the binding") == "no such row");
}

TEST_CASE("a profile is named, and that there is none is said") {
  PressSheet press = built_in_press_sheet();
  press.profile = nullptr;
  CHECK(asks(press, "Profile") == "none named: colours were not converted for the press");
  CHECK(asks(press, "Colours beyond the press") == "no such row");
  auto profile = std::make_shared<PressProfile>();
  profile->file = "paper.icc";
  profile->facts.description = "Smooth paper";
  profile->difference = 5;
  profile->share = 0.02;
  press.profile = profile;
  CHECK(asks(press, "Profile") == "“Smooth paper” (paper.icc)");
  CHECK(asks(press, "Colours beyond the press") ==
        "at most 2 % of what a frame shows, counted from a difference of 5 (CIEDE2000)");
}
