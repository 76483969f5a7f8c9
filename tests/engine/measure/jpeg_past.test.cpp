// A picture's past as a JPEG, on textures of known past.
#include "engine/measure/jpeg_past.h"

#include "engine/measure/jpeg_quality.h"
#include "tests/engine/measure/made_texture.h"
#include "tests/support/catch.h"

using namespace stoneproof;

namespace {

using made::Raster;

const Raster &original() {
  static const Raster texture = made::texture(600, 560);
  return texture;
}

JpegPast past_of(const made::Saved &picture) {
  return jpeg_past(made::tiles_of(picture.pixels), picture.table);
}
JpegPast past_of(const Raster &lossless) { return jpeg_past(made::tiles_of(lossless), {}); }

void says_nothing(const JpegPast &past) {
  CHECK(past.certainty == Certainty::no);
  CHECK(past.kind == JpegPastKind::none);
}

void says(const JpegPast &past, JpegPastKind kind, int quality) {
  CHECK(past.certainty == Certainty::firm);
  CHECK(past.kind == kind);
  CHECK(std::abs(past.earlier.quality - quality) <= 3);
  CHECK(past.earlier.low <= quality);
  CHECK(past.earlier.high >= quality);
}

bool is_at(const JpegPast &past, int x, int y) { return past.shift_x == x && past.shift_y == y; }

} // namespace

TEST_CASE("a picture saved once, or never as a JPEG, has no past") {
  says_nothing(past_of(original()));
  for (const int quality : {75, 85, 92, 97, 100}) {
    CAPTURE(quality);
    says_nothing(past_of(made::saved(original(), quality)));
  }
}

TEST_CASE("a JPEG saved before on the same grid tells its first quality") {
  for (const int first : {50, 60, 70, 80}) {
    const Raster before = made::saved(original(), first).pixels;
    for (const int second : {85, 90, 95, 100}) {
      CAPTURE(first, second);
      const JpegPast past = past_of(made::saved(before, second));
      says(past, JpegPastKind::aligned, first);
      CHECK(past.earlier.standard);
      CHECK(is_at(past, 0, 0));
    }
  }
}

TEST_CASE("saved again at the same quality, a picture tells no more than before") {
  for (const int quality : {60, 75, 90}) {
    CAPTURE(quality);
    const Raster once = made::saved(original(), quality).pixels;
    const made::Saved twice = made::saved(once, quality);
    says_nothing(past_of(twice));
    says(past_of(twice.pixels), JpegPastKind::was_jpeg, quality);
  }
}

TEST_CASE("cropping between two savings moves the grid") {
  for (const auto &[x, y] : {std::pair{3, 5}, {1, 7}, {12, 2}}) {
    const Raster part = made::cropped(made::saved(original(), 60).pixels, x, y);
    for (const int second : {85, 92, 100}) {
      CAPTURE(x, y, second);
      const JpegPast past = past_of(made::saved(part, second));
      says(past, JpegPastKind::moved, 60);
      CHECK(is_at(past, (16 - x) % 8, (16 - y) % 8));
    }
  }
}

TEST_CASE("pixels that were a JPEG tell its quality and where its grid lies") {
  for (const int quality : {50, 75, 90, 95}) {
    CAPTURE(quality);
    const Raster pixels = made::saved(original(), quality).pixels;
    const JpegPast whole = past_of(pixels), part = past_of(made::cropped(pixels, 5, 10));
    says(whole, JpegPastKind::was_jpeg, quality);
    CHECK(is_at(whole, 0, 0));
    says(part, JpegPastKind::was_jpeg, quality);
    CHECK(is_at(part, 3, 6));
  }
}

TEST_CASE("a mirror or a quarter turn changes nothing but the place of the grid") {
  const Raster pixels = made::cropped(made::saved(original(), 75).pixels, 3, 0); // 597 x 560
  const JpegPast mirrored = past_of(made::mirrored(pixels)), turned = past_of(made::turned(pixels));
  says(mirrored, JpegPastKind::was_jpeg, 75);
  CHECK(is_at(mirrored, 0, 0)); // the grid ends where the picture did
  says(turned, JpegPastKind::was_jpeg, 75);
  CHECK(is_at(turned, 0, 5));
}

TEST_CASE("steps that are no standard ones are told as such") {
  made::JpegKind kind;
  kind.tables.resize(1);
  for (std::size_t i = 0; i < 64; ++i)
    kind.tables[0][i] = static_cast<std::uint16_t>(6 + (i / 8 + i % 8)); // flatter than any of Annex K's
  const made::Saved first = made::saved(original(), kind);
  const JpegPast lossless = past_of(first.pixels), again = past_of(made::saved(first.pixels, 97));
  CHECK(lossless.certainty == Certainty::firm);
  CHECK(lossless.kind == JpegPastKind::was_jpeg);
  CHECK_FALSE(lossless.earlier.standard);
  CHECK(again.certainty == Certainty::firm);
  CHECK(again.kind == JpegPastKind::aligned);
  CHECK_FALSE(again.earlier.standard);
}

TEST_CASE("what is flat, clipped or too small cannot tell") {
  Raster flat{300, 300, 1, 8, std::vector<std::uint16_t>(90000, 120)};
  Raster clipped = made::texture(300, 300);
  for (std::size_t i = 0; i < clipped.samples.size(); i += 5) clipped.samples[i] = 255;
  for (const Raster &picture : {flat, clipped}) {
    CHECK(past_of(picture).certainty == Certainty::cannot_tell);
    CHECK(past_of(made::saved(picture, 90)).kind == JpegPastKind::none);
  }
  CHECK(past_of(made::saved(flat, 90)).certainty == Certainty::cannot_tell);
  CHECK(jpeg_past({}, {}).certainty == Certainty::cannot_tell);
  CHECK(past_of(made::texture(100, 100)).certainty == Certainty::cannot_tell);
}

TEST_CASE("found steps stand for the quality that their whole table would have") {
  for (const int quality : {30, 60, 90}) {
    CAPTURE(quality);
    const QuantTable table = standard_luma(quality);
    std::vector<FoundStep> steps;
    for (const BlockMode &mode : block_modes()) steps.push_back({mode, table[mode.at()]});
    const EarlierQuality found = nearest_quality(steps);
    CHECK(std::abs(found.quality - quality) <= 6);
    CHECK(found.low <= quality);
    CHECK(found.high >= quality);
  }
  CHECK(nearest_quality({}).quality == 0);
}
