// Effective densities against poppler: the same pictures placed by the same matrices in a PDF, listed by
// pdfimages.
#include "engine/placement/placed.h"
#include "reports/pdf/write_pdf.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/programs.h"

#include <random>
#include <sstream>

using namespace stoneproof;

namespace {

struct Listed {
  int width, height, x_ppi, y_ppi;
};

/// The rows of `pdfimages -list`: page num type width height color comp bpc enc interp object ID x-ppi y-ppi
/// size ratio.
std::vector<Listed> list_images(const std::filesystem::path &pdf) {
  std::istringstream lines(test::run_command("pdfimages -list " + pdf.string()));
  std::vector<Listed> rows;
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::string type, colour, coding, interpolated;
    int page, number, components, bits, object, generation;
    Listed row{};
    if (words >> page >> number >> type >> row.width >> row.height >> colour >> components >> bits >>
        coding >> interpolated >> object >> generation >> row.x_ppi >> row.y_ppi)
      rows.push_back(row);
  }
  return rows;
}

Frame random_frame(std::mt19937 &random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Frame frame;
  frame.picture = 0;
  frame.rect = {Length::of_mm(between(0, 80)), Length::of_mm(between(0, 80)), Length::of_mm(between(20, 120)),
                Length::of_mm(between(20, 120))};
  frame.turn.degrees = random() % 2 ? 0 : between(-180, 180);
  frame.mirror = static_cast<Mirror>(random() % 3);
  switch (random() % 4) {
  case 0: frame.fit = Fill{between(0, 1), between(0, 1)}; break;
  case 1: frame.fit = Inside{}; break;
  case 2:
    frame.fit = CropShare{between(0, 0.4), between(0, 0.4), between(0.2, 0.6), between(0.2, 0.6)};
    break;
  default: frame.fit = PictureAt{frame.rect.grown(Length::of_mm(between(0, 30)))};
  }
  return frame;
}

} // namespace

TEST_CASE("effective densities agree with pdfimages on the same placements") {
  constexpr int count = 60;
  std::mt19937 random(2026);
  test::Folder folder;
  layout::Document document;
  std::vector<PlacedFrame> placed;
  for (int i = 0; i < count; ++i) {
    const int width = 200 + static_cast<int>(random() % 1200),
              height = 200 + static_cast<int>(random() % 1200);
    made::write_jpeg(folder / "picture.jpg", made::busy(width, height, 3));
    document.images.push_back({width, height, made::read_bytes(folder / "picture.jpg")});
    placed.push_back(place_frame(random_frame(random), PixelSize{width, height}));
    layout::DocumentPage page;
    page.size = {Length::of_mm(210), Length::of_mm(280)};
    const Corners &clip = placed.back().corners;
    page.items.emplace_back(layout::PictureItem{
        static_cast<std::size_t>(i), placed.back().picture_corners, {clip.begin(), clip.end()}, "a picture"});
    document.pages.push_back(std::move(page));
  }
  const auto typesetter = Typesetter::load();
  REQUIRE(typesetter);
  REQUIRE(write_pdf(document, typesetter.value(), folder / "placed.pdf"));

  const auto rows = list_images(folder / "placed.pdf");
  REQUIRE(rows.size() == count);
  for (int i = 0; i < count; ++i) {
    CAPTURE(i);
    const Laid &laid = *placed[static_cast<std::size_t>(i)].laid;
    const Listed &row = rows[static_cast<std::size_t>(i)];
    // pdfimages rounds to whole ppi, and the PDF's numbers have three decimals of a point.
    CHECK(row.x_ppi == Approx(laid.density_x.ppi()).epsilon(0.0005).margin(0.51));
    CHECK(row.y_ppi == Approx(laid.density_y.ppi()).epsilon(0.0005).margin(0.51));
  }
}
