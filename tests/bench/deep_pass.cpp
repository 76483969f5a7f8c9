// Time of the pass over all pixels (tone, ink, small copy) against the bare libraries decoding the same files
// whole, on one thread and on several. Goals: at most 1.35 x the bare libraries, of a JPEG with detail 1.6 x;
// two threads at least 1.8 x one. Prints, asserts nothing. Usage: bench_deep_pass PRESS_PROFILE FILE... (JPEG
// and TIFF; - for no press profile)
#include "engine/measure/pixel_pass.h"
#include "tests/bench/bare_jpeg.h"
#include "tests/bench/best_time.h"

#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <memory>
#include <string>
#include <thread>

#include <tiffio.h>

namespace {

using namespace stoneproof;

void bare_tiff(const char *path) {
  TIFF *tiff = TIFFOpen(path, "r");
  if (!tiff) std::exit(3);
  std::uint32_t height = 0;
  TIFFGetField(tiff, TIFFTAG_IMAGELENGTH, &height);
  std::vector<std::uint8_t> bytes(
      static_cast<std::size_t>(TIFFIsTiled(tiff) ? TIFFTileSize(tiff) : TIFFScanlineSize(tiff)));
  if (TIFFIsTiled(tiff))
    for (std::uint32_t tile = 0; tile < TIFFNumberOfTiles(tiff); ++tile)
      TIFFReadEncodedTile(tiff, tile, bytes.data(), -1);
  else
    for (std::uint32_t row = 0; row < height; ++row) TIFFReadScanline(tiff, bytes.data(), row);
  TIFFClose(tiff);
}

bool is_jpeg(const std::string &path) { return path.ends_with(".jpg") || path.ends_with(".jpeg"); }

std::vector<std::uint8_t> bytes_of(const std::string &path) {
  if (path == "-") return {};
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Everything at once: the whole picture as one look, ink over squares of a tenth of its width, a small copy.
void measure(const std::string &path, const PressTable *table, bool detail) {
  const auto facts = read_facts(path);
  if (!facts) std::exit(3);
  const auto size = facts.value().size;
  const PixelRect whole{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)};
  PassOrder order;
  order.copy = PreviewOrder{whole, 530, 353};
  order.detail = detail;
  order.looks = {Look{whole, whole.width / 10, whole.width / 10}};
  if (table)
    order.press_table = [&](const auto &, ProfileSpace space) {
      return space == table->space() ? table : nullptr;
    };
  if (const auto result = measure_pixels(path, facts.value(), order); !result) {
    std::printf("%s: %s\n", path.c_str(), result.fault().what.c_str());
    std::exit(3);
  }
}

template <class Work>
double wall(unsigned threads, const std::vector<std::string> &files, const Work &work) {
  return bench::best_wall_time(3, [&] {
    std::atomic<std::size_t> next = 0;
    std::vector<std::thread> workers;
    for (unsigned i = 0; i < threads; ++i)
      workers.emplace_back([&] {
        for (std::size_t at = next++; at < files.size(); at = next++) work(files[at]);
      });
    for (auto &worker : workers) worker.join();
  });
}

} // namespace

int main(int count, char **words) {
  if (count < 3) return 2;
  const std::vector<std::uint8_t> press = bytes_of(words[1]);
  const std::vector<std::string> files(words + 2, words + count);
  std::optional<PressTable> table;
  if (!press.empty()) {
    auto made = PressTable::make({}, ProfileSpace::rgb, press, 6);
    if (!made) return 3;
    table = std::move(made).value();
  }
  const auto bare = [](const std::string &path) {
    is_jpeg(path) ? bench::bare_jpeg(path.c_str(), 8) : bare_tiff(path.c_str());
  };
  const PressTable *press_table = table ? &*table : nullptr;
  const auto ours = [&](const std::string &path) { measure(path, press_table, true); };
  const auto without = [&](const std::string &path) { measure(path, press_table, false); };
  double one = 0;
  for (const unsigned threads : {1u, 2u}) {
    const double theirs = wall(threads, files, bare), deep = wall(threads, files, ours),
                 plain = wall(threads, files, without);
    std::printf("%zu files, %u thread%s: bare %.0f ms, deep pass %.0f ms, ratio %.2f; without detail %.0f "
                "ms, ratio %.2f\n",
                files.size(), threads, threads == 1 ? "" : "s", theirs, deep, deep / theirs, plain,
                plain / theirs);
    if (threads == 1)
      one = deep;
    else
      std::printf("two threads against one: %.2f x\n", one / deep);
  }
}
