// JPEGs of every kind that is decoded, and the words for those that are not.
#include "engine/picture/preview.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <algorithm>

using namespace stoneproof;

namespace {

Outcome<Preview> try_preview(const std::filesystem::path &file, const PictureLimits &limits = {}) {
  const auto facts = read_facts(file, limits);
  if (!facts) return facts.fault();
  const PixelSize size = facts.value().size;
  const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
  const PreviewOrder whole{{0, 0, width, height}, static_cast<int>(width), static_cast<int>(height)};
  return read_preview(file, facts.value(), whole, limits);
}

// Where the header of the frame (SOF0) stands in a baseline file.
std::size_t frame_of(const made::Bytes &file) {
  const made::Bytes marker = {0xFF, 0xC0};
  return static_cast<std::size_t>(std::search(file.begin(), file.end(), marker.begin(), marker.end()) -
                                  file.begin());
}

} // namespace

TEST_CASE("JPEG: one flat colour comes out of every packing, sampling and colour model") {
  const test::Folder folder;
  made::Raster rgb{48, 40, 3, 8, {}}, cmyk{48, 40, 4, 8, {}}, gray{48, 40, 1, 8, {}};
  for (int i = 0; i < 48 * 40; ++i) {
    rgb.samples.insert(rgb.samples.end(), {200, 100, 50});
    cmyk.samples.insert(cmyk.samples.end(), {51, 102, 204, 51});
    gray.samples.push_back(77);
  }
  const auto check = [&](const std::array<int, 3> &wanted) {
    const auto preview = try_preview(folder / "j");
    if (!preview) FAIL(preview.fault().what);
    for (std::size_t i = 0; i < preview.value().rgb.size(); ++i)
      REQUIRE(std::abs(preview.value().rgb[i] - wanted[i % 3]) <= 3); // one step of a table of quality 90
  };
  for (const bool progressive : {false, true})
    for (const bool arithmetic : {false, true}) {
      CAPTURE(progressive, arithmetic);
      made::write_jpeg(folder / "j", gray, {.progressive = progressive, .arithmetic = arithmetic});
      check({77, 77, 77});
      for (const int across : {1, 2, 3, 4})
        for (const int down : {1, 2, 4}) {
          if (across * down > 8) continue; // a block of at most ten units (ITU-T T.81, B.2.3)
          CAPTURE(across, down);
          made::write_jpeg(
              folder / "j", rgb,
              {.sampling = {{across, down}}, .progressive = progressive, .arithmetic = arithmetic});
          check({200, 100, 50});
        }
      // By ink taken from white: (255 - 51)(255 - 51) / 255 and so on; with the Adobe marker the samples are
      // the wrong way round.
      made::write_jpeg(folder / "j", cmyk,
                       {.progressive = progressive, .arithmetic = arithmetic, .adobe = false});
      check({163, 122, 41});
      for (const bool ycck : {false, true}) {
        made::write_jpeg(folder / "j", cmyk,
                         {.progressive = progressive, .arithmetic = arithmetic, .ycck = ycck});
        check({51 * 51 / 255, 102 * 51 / 255, 204 * 51 / 255});
      }
    }
}

TEST_CASE("JPEG: sound files of kinds that are not decoded say so") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(40, 30, 3), {.full_chroma = true});
  const made::Bytes plain = made::read_bytes(folder / "j");
  struct Row {
    std::size_t at; ///< from the frame's marker on
    std::uint8_t value;
    std::string kind;
  };
  for (const Row &row : {Row{4, 12, "samples of more than 8 bits"},
                         Row{1, 0xC3, "pixels packed by a rare process, such as lossless JPEG"}}) {
    made::Bytes file = plain;
    file[frame_of(plain) + row.at] = row.value;
    made::write_bytes(folder / "j", file);
    const auto facts = read_facts(folder / "j");
    REQUIRE_FALSE(facts);
    CHECK(facts.fault() ==
          Fault{"the JPEG holds " + row.kind + ", which cannot be decoded here", (folder / "j").string(),
                "Export the picture as TIFF with 8 or 16 bits a channel in gray, RGB or CMYK."});
  }
  // Three samples of Y to two of Cb across.
  made::Bytes file = plain;
  file[frame_of(plain) + 11] = 0x31;
  file[frame_of(plain) + 14] = 0x21;
  made::write_bytes(folder / "j", file);
  const auto preview = try_preview(folder / "j");
  REQUIRE_FALSE(preview);
  CHECK(preview.fault().what ==
        "the JPEG holds colour channels of unusual sizes, which cannot be decoded here");
}

TEST_CASE("JPEG: many scans stop at the limit of time, and at their number") {
  const test::Folder folder;
  made::write_jpeg(folder / "j", made::busy(40, 30, 1), {.progressive = true});
  CHECK(try_preview(folder / "j", {.most_time = std::chrono::hours(1'000'000)}));
  const auto late = try_preview(folder / "j", {.most_time = std::chrono::seconds(0)});
  REQUIRE_FALSE(late);
  CHECK(late.fault().what ==
        "the JPEG holds more scans than there is time for, which cannot be decoded here");

  // The last scan, which refines, again and again.
  made::Bytes file = made::read_bytes(folder / "j");
  const made::Bytes marker = {0xFF, 0xDA};
  const auto scan = std::find_end(file.begin(), file.end(), marker.begin(), marker.end());
  const made::Bytes last(scan, file.end() - 2);
  file.resize(file.size() - 2);
  for (int i = 0; i < 600; ++i) file.insert(file.end(), last.begin(), last.end());
  file.insert(file.end(), {0xFF, 0xD9});
  made::write_bytes(folder / "j", file);
  const auto many = try_preview(folder / "j");
  REQUIRE_FALSE(many);
  CHECK(many.fault().what == "the JPEG holds more than 500 scans, which cannot be decoded here");
}
