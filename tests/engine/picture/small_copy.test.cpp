// The compressed copy for a document.
#include "engine/picture/small_copy.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/engine/picture/slow_average.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

using namespace stoneproof;

TEST_CASE("a small copy is a JPEG of the preview, the same bytes each time") {
  const test::Folder folder;
  made::Raster ramp{150, 110, 3, 8, {}}; // smooth, so that compression changes next to nothing
  for (int y = 0; y < 110; ++y)
    for (int x = 0; x < 150; ++x)
      for (const int value : {x, 2 * y, 255 - x}) ramp.samples.push_back(static_cast<std::uint16_t>(value));
  made::write_png(folder / "p", ramp);
  const Facts facts = read_facts(folder / "p").value();
  const PreviewOrder order{{10, 20, 120, 80}, 60, 40};
  const auto copy = read_small_copy(folder / "p", facts, order);
  REQUIRE(copy);
  CHECK(copy.value().part == order.part);
  CHECK(copy.value().jpeg == read_small_copy(folder / "p", facts, order).value().jpeg);
  made::write_bytes(folder / "j", copy.value().jpeg);
  const Facts small = read_facts(folder / "j").value();
  CHECK(small.size == PixelSize{60, 40});
  CHECK(small.compression == "JPEG baseline");
  CHECK(small.colour == ColourModel::rgb);
  const Preview preview = read_preview(folder / "p", facts, order).value();
  const made::Raster decoded = made::decode_jpeg(folder / "j", 8);
  CHECK(made::worst_difference({{0, 0, 60, 40}, 60, 40, preview.rgb}, made::look_at(decoded)) < 10);
}

TEST_CASE("the faults of a preview are those of its copy") {
  const auto copy = read_small_copy("/none", Facts{.size = {10, 10}}, {{0, 0, 10, 10}, 5, 5});
  REQUIRE_FALSE(copy);
  CHECK(copy.fault().what == "there is no such file");
}
