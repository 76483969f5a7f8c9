// Facts and colours of GIF, WebP, HEIC and AVIF files that nobody here made, against what ImageMagick says of
// them. The files are fetched by tests/get-samples.sh and named by STONEPROOF_SAMPLES; without that the test
// is passed over.
#include "engine/picture/orientation.h"
#include "engine/picture/preview.h"
#include "engine/picture/rows.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <array>
#include <cmath>
#include <cstdlib>
#include <fmt/format.h>
#include <optional>
#include <sstream>

using namespace stoneproof;

namespace {

/// Every file that is read as one of the four formats, by its signature.
std::vector<std::filesystem::path> samples() {
  std::vector<std::filesystem::path> found;
  const char *folder = std::getenv("STONEPROOF_SAMPLES");
  if (!folder) return found;
  for (const auto &entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    const auto facts = read_facts(entry.path());
    if (facts && facts.value().format >= Format::gif) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  REQUIRE(found.size() > 50);
  return found;
}

struct Seen {
  PixelSize size; ///< as it is stored
  std::array<double, 3> mean{};
};

/// ImageMagick's word of the first picture, laid on its canvas and over white; none where it gives up or
/// warns.
std::optional<Seen> by_magick(const std::filesystem::path &file) {
  const auto printed =
      test::print_of("convert '" + file.string() +
                     "[0]' -coalesce -colorspace sRGB -background white -alpha remove -format "
                     "'%w %h %[fx:mean.r*255] %[fx:mean.g*255] %[fx:mean.b*255]' info: 2>&1");
  std::istringstream words(printed.out);
  Seen seen;
  words >> seen.size.width >> seen.size.height >> seen.mean[0] >> seen.mean[1] >> seen.mean[2];
  if (printed.status != 0 || !words || !words.eof()) return std::nullopt;
  return seen;
}

/// The mean colour over white, by every pixel.
std::array<double, 3> mean_of(const std::filesystem::path &file, const Facts &facts) {
  const PixelSize size = facts.size;
  const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
  const auto preview = read_preview(file, facts, {{0, 0, width, height}, 1 << 20, 1 << 20});
  if (!preview) return {-1, -1, -1};
  std::array<double, 3> sum{};
  const auto &rgb = preview.value().rgb;
  for (std::size_t i = 0; i < rgb.size(); ++i) sum[i % 3] += rgb[i];
  for (double &value : sum) value /= width * height;
  return sum;
}

} // namespace

TEST_CASE("sizes and mean colours of GIF, WebP, HEIC and AVIF agree with ImageMagick") {
  int compared = 0;
  std::string differences;
  for (const auto &file : samples()) {
    const auto theirs = by_magick(file);
    if (!theirs) continue;
    const Facts facts = read_facts(file).value();
    // ImageMagick 6.9.11 does not read the opacity of a HEIC.
    if (facts.format == Format::heic && facts.alpha) continue;
    const PixelSize stored = Orientation(facts.orientation).stored(facts.size);
    const auto ours = mean_of(file, facts);
    ++compared;
    if (stored != theirs->size)
      differences += fmt::format("{}: {} x {} here, {} x {} there\n", file.string(), stored.width,
                                 stored.height, theirs->size.width, theirs->size.height);
    for (std::size_t c = 0; c < 3; ++c)
      // Rounding of each pixel's opacity and colour on both sides.
      if (std::abs(ours[c] - theirs->mean[c]) > 1)
        differences += fmt::format("{}: mean {} is {:.2f} here, {:.2f} there\n", file.string(), c, ours[c],
                                   theirs->mean[c]);
  }
  CHECK(differences == "");
  CHECK((compared > 50 || !std::getenv("STONEPROOF_SAMPLES")));
}
