// Pixels of real files that nobody here made, against ImageMagick's: a small copy of each, and the means of
// its channels at full size. Both rest on the same libraries for packing and transforms; what is compared is
// all that stoneproof does with what they give. The files are fetched by tests/get-samples.sh.
#include "engine/picture/orientation.h"
#include "engine/picture/preview.h"
#include "engine/picture/rows.h"
#include "tests/outside/samples.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <atomic>
#include <cmath>
#include <cstring>
#include <fmt/format.h>
#include <mutex>
#include <thread>

using namespace stoneproof;

namespace {

// What may differ, in 1/255: the small copy, channel by channel in the mean over its pixels, and over its
// squares of 4 x 4 pixels; and the mean of a channel at full size.
struct Bound {
  double copy, squares, mean;
};

// Every pixel is decoded, and a JPEG by the same library on both sides: the copy is cut to 8 bits before it
// is averaged here and after it there, and rounded once more. The means are of what the file holds.
constexpr Bound exact{1, 1, 0.02};
// Signed samples are moved up by 128 here, by 127.5 there.
constexpr Bound lab{0, 0, 0.51};

struct Difference {
  const char *file, *why;
};

// Files whose pixels differ, and why stoneproof is content with its own.
constexpr Difference known[] = {
    {"hopper2I.tif", "white is 0: ImageMagick does not turn 2 bits round, libvips does"},
    {"hopper2IR.tif", "the same"},
    {"hopper4I.tif", "the same with 4 bits"},
    {"hopper4IR.tif", "the same with 4 bits"},
    {"minisblack-2c-8b-alpha.tiff",
     "ImageMagick puts a second plane, of opacity, into green; libvips does not"},
    {"tiff_tiled_cmyk_jpeg.tif", "ImageMagick cannot read it"},
};

bool is_known(const std::filesystem::path &file) {
  return std::any_of(std::begin(known), std::end(known),
                     [&](const Difference &one) { return file.native().ends_with(one.file); });
}

// The mean of each colour channel as stored, 0 to 1, turned so that more is lighter in gray and more ink in
// inks.
Outcome<std::vector<double>> means_of(const std::filesystem::path &file, const Facts &facts) {
  const PixelSize size = Orientation(facts.orientation).stored(facts.size);
  auto source = open_rows(file, {0, 0, size.width, size.height, size.width, size.height});
  if (!source) return source.fault();
  const RowLayout &layout = source.value()->layout();
  const auto channels = static_cast<std::size_t>(layout.channels);
  const std::size_t colours = layout.colour == ColourModel::cmyk                                       ? 4
                              : layout.colour == ColourModel::rgb || layout.colour == ColourModel::lab ? 3
                                                                                                       : 1;
  std::vector<double> sums(colours);
  for (std::int64_t y = 0; y < layout.height; ++y) {
    const auto row = source.value()->next();
    if (!row) return row.fault();
    for (std::size_t x = 0; x < static_cast<std::size_t>(layout.width); ++x)
      for (std::size_t c = 0; c < colours; ++c) {
        const std::size_t at = x * channels + c;
        std::uint16_t value = layout.bits > 8 ? 0 : row.value()[at];
        if (layout.bits > 8) std::memcpy(&value, row.value().data() + at * 2, 2);
        // As offsets from the middle; there they are, and so they are in the coding of ICC.
        if (layout.signed_ab && c > 0) value ^= static_cast<std::uint16_t>(1 << (layout.bits - 1));
        sums[c] += value;
      }
  }
  const double most = (1 << layout.bits) - 1;
  for (double &sum : sums) {
    sum /= most * static_cast<double>(layout.width * layout.height);
    if (layout.inverted) sum = 1 - sum;
  }
  return sums;
}

struct Ours {
  Preview copy;
  std::vector<double> means; ///< empty: not asked for
};

// Decoding the large ones once more, on both sides, would take most of the time and show nothing else.
constexpr std::int64_t most_pixels_for_means = 2'000'000;

// As the pass over all pixels makes it, from the whole picture: read_preview lets libjpeg reduce a JPEG
// first.
Outcome<Preview> copy_of(const std::filesystem::path &file, const Facts &facts, const PreviewOrder &order) {
  const auto plan = plan_preview(file, facts, order, {});
  if (!plan) return plan.fault();
  const PixelSize size = Orientation(facts.orientation).stored(facts.size);
  auto source = open_rows(file, {0, 0, size.width, size.height, size.width, size.height});
  if (!source) return source.fault();
  PreviewMaker maker(plan.value(), source.value()->layout());
  for (std::int64_t y = 0; y < size.height; ++y) {
    const auto row = source.value()->next();
    if (!row) return row.fault();
    maker.add(row.value().data());
  }
  return maker.take(facts.orientation);
}

Outcome<Ours> read_ours(const std::filesystem::path &file, const Facts &facts) {
  const auto width = static_cast<double>(facts.size.width), height = static_cast<double>(facts.size.height);
  const double scale = 64 / std::max(width, height);
  const PreviewOrder order{{0, 0, width, height},
                           static_cast<int>(std::max(1.0, std::round(width * scale))),
                           static_cast<int>(std::max(1.0, std::round(height * scale)))};
  auto copy = copy_of(file, facts, order);
  if (!copy) return copy.fault();
  if (facts.size.width * facts.size.height > most_pixels_for_means) return Ours{std::move(copy).value(), {}};
  auto means = means_of(file, facts);
  if (!means) return means.fault();
  return Ours{std::move(copy).value(), std::move(means).value()};
}

// The mean difference of the channel that differs most, over squares of `side` x `side` pixels.
double difference(const Preview &ours, const std::string &theirs, int side) {
  std::array<double, 3> sums{};
  double squares = 0;
  for (int top = 0; top < ours.height; top += side)
    for (int left = 0; left < ours.width; left += side, ++squares) {
      const int right = std::min(left + side, ours.width), bottom = std::min(top + side, ours.height);
      for (std::size_t c = 0; c < 3; ++c) {
        double sum = 0;
        for (int y = top; y < bottom; ++y)
          for (int x = left; x < right; ++x) {
            const std::size_t at = static_cast<std::size_t>(y * ours.width + x) * 3 + c;
            sum += double{0} + ours.rgb[at] - static_cast<unsigned char>(theirs[at]);
          }
        sums[c] += std::abs(sum) / ((right - left) * (bottom - top));
      }
    }
  return *std::max_element(sums.begin(), sums.end()) / squares;
}

// In single quotes for the shell.
std::string quoted(const std::string &text) {
  std::string out = "'";
  for (const char c : text) c == '\'' ? out += "'\\''" : out += c;
  return out + "'";
}

// Compares one file; gives lines of what differs by more than it may.
std::string compare(const std::filesystem::path &file, const std::string &raw, std::atomic<int> &compared) {
  const auto facts = read_facts(file);
  if (!facts) return {};
  const auto ours = read_ours(file, facts.value());
  if (!ours) return {};
  const Preview &copy = ours.value().copy;
  const ColourModel colour = facts.value().colour;
  const bool rgb_like = colour != ColourModel::cmyk && colour != ColourModel::lab;
  const std::string inks = colour == ColourModel::cmyk ? " %[fx:mean.k]" : "";
  // Without a conversion: samples stay what they are, as they do here.
  const std::string theirs =
      test::print_of("convert " + quoted(file.string() + "[0]") + (rgb_like ? " -set colorspace sRGB" : "") +
                     (facts.value().format == Format::png ? "" : " -auto-orient") +
                     (ours.value().means.empty()
                          ? " "
                          : " -precision 9 -print '%[fx:mean.r] %[fx:mean.g] %[fx:mean.b]" + inks + "\\n'") +
                     " -background white -alpha remove -depth 8 -scale " +
                     fmt::format("{}x{}! rgb:{} 2>/dev/null", copy.width, copy.height, raw))
          .out;
  const std::string pixels = test::content_of(raw);
  if (pixels.size() != copy.rgb.size()) return {};
  const Bound bound = colour == ColourModel::lab ? lab : exact;
  std::string report;
  // Inks and Lab become RGB by a conversion that is another one there; their channels are compared instead.
  if (rgb_like) {
    for (const auto &[side, most] : {std::pair{1, bound.copy}, std::pair{4, bound.squares}})
      if (const double found = difference(copy, pixels, side); found > most)
        report +=
            fmt::format("{}: the copy differs by {:.2f} in squares of {}\n", file.string(), found, side);
    ++compared;
  }
  // Colours under opacity are kept apart from it in several ways; the copy, over white, shows them.
  if (!ours.value().means.empty() && !facts.value().alpha && colour != ColourModel::indexed) {
    std::istringstream numbers(theirs);
    for (const double mean : ours.value().means) {
      double other = 0;
      numbers >> other;
      if (std::abs(mean - other) * 255 > bound.mean)
        report += fmt::format("{}: a mean of {:.3f}, {:.3f} there\n", file.string(), mean * 255, other * 255);
    }
    ++compared;
  }
  return report;
}

} // namespace

TEST_CASE("small copies and means agree with ImageMagick") {
  const auto files = test::samples();
  const test::Folder folder;
  std::atomic<std::size_t> next = 0;
  std::atomic<int> compared = 0;
  std::mutex mutex;
  std::string differences;
  const auto work = [&](const std::string &raw) {
    for (std::size_t i = next++; i < files.size(); i = next++) {
      const std::string lines = compare(files[i], raw, compared);
      std::filesystem::remove(raw);
      const std::lock_guard lock(mutex);
      if (!is_known(files[i])) differences += lines;
    }
  };
  std::thread other([&] { work(folder.file("a")); });
  work(folder.file("b"));
  other.join();
  CHECK(compared > 1000);
  CHECK(differences == "");
}
