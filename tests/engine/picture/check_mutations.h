// Sound files changed at random: whatever comes of it must be a value or a whole fault.
#pragma once

#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <random>
#include <vector>

namespace made {

/// Changes each file fifty times by `mutated(bytes, random)` and reads facts and a preview of it.
template <class Mutated>
void check_mutations(const std::vector<Bytes> &files, unsigned seed, Mutated mutated) {
  using namespace stoneproof;
  const test::Folder folder;
  const PictureLimits limits{.most_pixels = 4'000'000, .most_memory = 32'000'000};
  std::mt19937 random(seed);
  int values = 0, faults = 0;
  const auto whole = [](const Fault &fault) {
    return !fault.what.empty() && !fault.where.empty() && !fault.remedy.empty();
  };
  for (const made::Bytes &sound : files)
    for (int i = 0; i < 50; ++i) {
      made::write_bytes(folder / "m", mutated(sound, random));
      const auto facts = read_facts(folder / "m", limits);
      if (!facts) {
        REQUIRE(whole(facts.fault()));
        ++faults;
        continue;
      }
      const PixelSize size = facts.value().size;
      REQUIRE((size.width > 0 && size.height > 0 && size.width * size.height <= limits.most_pixels));
      REQUIRE((facts.value().orientation >= 1 && facts.value().orientation <= 8 && facts.value().pages >= 1));
      const PixelRect part{1, 2, static_cast<double>(size.width), static_cast<double>(size.height) / 2};
      const auto preview = read_preview(folder / "m", facts.value(), {part, 20, 20}, limits);
      if (preview)
        REQUIRE(preview.value().rgb.size() ==
                static_cast<std::size_t>(preview.value().width * preview.value().height * 3));
      if (!preview) REQUIRE(whole(preview.fault()));
      ++(preview ? values : faults);
    }
  // Both ends must have been reached, else the mutations are too weak or too strong to show anything.
  CHECK(values > 50);
  CHECK(faults > 50);
}

} // namespace made
