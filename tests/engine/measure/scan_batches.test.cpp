// Which pictures may share a glass.
#include "engine/measure/scan_batches.h"

#include "tests/support/catch.h"

using namespace stoneproof;
using Batches = std::vector<std::vector<std::size_t>>;

namespace {

ScanOrigin scan(std::string device, std::optional<std::size_t> contributor = std::nullopt,
                PixelSize size = {2480, 3508}) {
  return {size, Density::of_ppi(300), Density::of_ppi(300), std::move(device), contributor, false};
}

} // namespace

TEST_CASE("one size and one device, or one contributor where no device is named") {
  CHECK(scan_batches({scan("Flat 1"), scan("", 1), scan("Flat 1"), scan("", 2), scan("", 1)}) ==
        Batches{{0, 2}, {1, 4}});
  CHECK(scan_batches({scan("Flat 1", 1), scan("Flat 1", 2)}) == Batches{{0, 1}});
  CHECK(scan_batches({scan("Flat 1", 1), scan("Flat 2", 1), scan("", 1)}).empty());
}

TEST_CASE("pictures that share no grid are not compared") {
  CHECK(scan_batches({scan("Flat 1"), scan("Flat 1", {}, {3508, 2480})}).empty());
  ScanOrigin finer = scan("Flat 1");
  finer.across = finer.down = Density::of_ppi(600);
  CHECK(scan_batches({scan("Flat 1"), finer}).empty());
  ScanOrigin unnamed = scan("Flat 1");
  unnamed.across = unnamed.down = std::nullopt;
  CHECK(scan_batches({scan("Flat 1"), unnamed}).empty());
  CHECK(scan_batches({unnamed, unnamed}) == Batches{{0, 1}});
}

TEST_CASE("cameras have no glass, and strangers share none") {
  ScanOrigin camera = scan("Camera 1", 1);
  camera.camera = true;
  CHECK(scan_batches({camera, camera, camera}).empty());
  CHECK(scan_batches({scan(""), scan("")}).empty());
  CHECK(scan_batches({}).empty());
}
