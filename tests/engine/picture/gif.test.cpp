// GIF: facts and pixels of made files.
#include "tests/engine/picture/newer_checks.h"

using namespace stoneproof;

namespace {

const std::vector<std::array<std::uint8_t, 3>> four_colours = {
    {250, 10, 20}, {30, 240, 40}, {50, 60, 230}, {200, 190, 70}};

std::vector<std::array<std::uint8_t, 3>> many_colours() {
  std::vector<std::array<std::uint8_t, 3>> colours;
  for (int i = 0; i < 256; ++i)
    colours.push_back(
        {static_cast<std::uint8_t>(i), static_cast<std::uint8_t>(255 - i), static_cast<std::uint8_t>(i * 5)});
  return colours;
}

/// The picture's colours; white where it is transparent or does not reach.
made::Look placed(const made::Raster &r, const made::GifKind &kind) {
  return [&r, kind](int x, int y) {
    const int px = x - kind.left, py = y - kind.top;
    if (px < 0 || py < 0 || px >= r.width || py >= r.height) return made::Rgb{255, 255, 255};
    const std::size_t index = r.at(px, py, 0);
    if (static_cast<int>(index) == kind.see_through) return made::Rgb{255, 255, 255};
    const auto &colour = kind.palette[index];
    return made::Rgb{double(colour[0]), double(colour[1]), double(colour[2])};
  };
}

} // namespace

TEST_CASE("GIF: facts") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 1, 2);
  made::write_gif(folder / "g", picture, {.interlaced = true, .palette = four_colours, .pages = 3});
  const auto read = read_facts(folder / "g");
  REQUIRE(read);
  const Facts &facts = read.value();
  CHECK(facts.format == Format::gif);
  CHECK(facts.size == PixelSize{61, 43});
  CHECK(facts.bits == 2);
  CHECK(facts.channels == 1);
  CHECK(facts.colour == ColourModel::indexed);
  CHECK_FALSE(facts.alpha);
  CHECK(facts.interlaced);
  CHECK(facts.pages == 3);
  CHECK(facts.compression == "LZW");
  CHECK(facts.tag == ColourTag::none);
  CHECK(facts.bytes == made::read_bytes(folder / "g").size());

  made::write_gif(folder / "g", picture, {.palette = four_colours, .local = true, .see_through = 1});
  CHECK(read_facts(folder / "g").value().alpha);
  CHECK(read_facts(folder / "g").value().pages == 1);
}

TEST_CASE("GIF: pixels in lines, interlaced, with either palette, see-through, small on the screen") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 1, 8);
  for (const bool interlaced : {false, true})
    for (const bool local : {false, true})
      for (const int see_through : {-1, 100})
        for (const int margin : {0, 6}) {
          CAPTURE(interlaced, local, see_through, margin);
          const made::GifKind kind{.screen_width = 61 + 2 * margin,
                                   .screen_height = 43 + 3 * margin,
                                   .left = margin,
                                   .top = 2 * margin,
                                   .interlaced = interlaced,
                                   .palette = many_colours(),
                                   .local = local,
                                   .see_through = see_through};
          made::write_gif(folder / "g", picture, kind);
          CHECK(read_facts(folder / "g").value().alpha == (see_through >= 0 || margin > 0));
          made::check_previews(folder / "g", placed(picture, kind), 0.51);
        }
}

TEST_CASE("GIF: a picture that reaches beyond its screen is shown whole; without a palette it is gray") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 1, 8);
  const made::GifKind kind{
      .screen_width = 20, .screen_height = 80, .left = 3, .top = 2, .palette = many_colours()};
  made::write_gif(folder / "g", picture, kind);
  CHECK(read_facts(folder / "g").value().size == PixelSize{64, 80});
  made::check_previews(folder / "g", placed(picture, kind), 0.51);

  made::Bytes bytes = made::read_bytes(folder / "g");
  bytes[10] = static_cast<std::uint8_t>(bytes[10] & 0x7F); // the screen's palette is no longer there
  bytes.erase(bytes.begin() + 13, bytes.begin() + 13 + 768);
  made::write_bytes(folder / "g", bytes);
  made::GifKind gray = kind;
  for (std::size_t i = 0; i < 256; ++i) gray.palette[i].fill(static_cast<std::uint8_t>(i));
  made::check_previews(folder / "g", placed(picture, gray), 0.51);
}

TEST_CASE("GIF: the profile") {
  const test::Folder folder;
  const made::Bytes icc = made::some_bytes(600);
  made::write_gif(folder / "g", made::busy(20, 10, 1, 2), {.palette = four_colours, .icc = icc});
  const auto facts = read_facts(folder / "g");
  REQUIRE(facts);
  CHECK(facts.value().tag == ColourTag::profile);
  CHECK(facts.value().profile);
  CHECK(made::icc_of(folder / "g") == icc);
}

TEST_CASE("GIF: cut files, broken headers, claims beyond the limits") {
  const test::Folder folder;
  const made::Raster picture = made::busy(61, 43, 1, 8);
  made::write_gif(folder / "g", picture, {.palette = many_colours()});
  made::check_cuts(folder / "g", 2);
  made::write_gif(folder / "i", picture, {.interlaced = true, .palette = many_colours()});
  made::check_cuts(folder / "i", 2);
  test::write_file(folder / "none", std::string_view("GIF89a\x10\0\x10\0\0\0\0;", 14));
  CHECK(made::fault_of(folder / "none").what == "the GIF header is broken (it holds no pixels)");

  made::Bytes huge = made::read_bytes(folder / "g");
  huge[6] = huge[7] = huge[8] = huge[9] = 0xFF;
  made::write_bytes(folder / "huge", huge);
  CHECK(made::fault_of(folder / "huge").what ==
        "the picture claims 65,535 × 65,535 pixels; the limit is 1,000,000,000 in all");
  CHECK(
      made::fault_of(folder / "i", {.most_memory = 61 * 43}).what.starts_with("decoding the picture needs"));
  CHECK(made::fault_of(folder / "g", {.most_memory = 61 * 43}).what.empty());
}
