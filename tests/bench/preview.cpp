// Time of read_preview on a 24-megapixel JPEG against libjpeg-turbo's own reduced decoding of the same file.
// Goal: at most 1.15 x. Prints, asserts nothing. Run: bench_preview [FILE.jpg...]
#include "engine/picture/preview.h"
#include "tests/bench/bare_jpeg.h"
#include "tests/bench/best_time.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/files.h"

#include <cstdio>
#include <string>
#include <vector>

namespace {

void compare(const std::filesystem::path &file) {
  const auto facts = stoneproof::read_facts(file);
  if (!facts) {
    std::printf("%s: %s\n", file.c_str(), facts.fault().what.c_str());
    return;
  }
  const auto size = facts.value().size;
  const auto width = static_cast<double>(size.width), height = static_cast<double>(size.height);
  for (const unsigned eighths : {1u, 2u, 3u, 4u, 8u}) {
    // A little under the eighth, so that averaging has its full work to do.
    const stoneproof::PreviewOrder order{{0, 0, width, height},
                                         static_cast<int>(width * eighths / 8 * 0.9),
                                         static_cast<int>(height * eighths / 8 * 0.9)};
    bool sound = true;
    const double ours = bench::best_time(
        7, [&] { sound = bool(stoneproof::read_preview(file, facts.value(), order)) && sound; });
    const double theirs = bench::best_time(7, [&] { bench::bare_jpeg(file.c_str(), eighths); });
    std::printf("%s %lldx%lld at %u/8: read_preview %7.1f ms   bare libjpeg %7.1f ms   ratio %.2f%s\n",
                file.filename().c_str(), static_cast<long long>(size.width),
                static_cast<long long>(size.height), eighths, ours, theirs, ours / theirs,
                sound ? "" : "   (a fault)");
  }
}

} // namespace

int main(int count, char **arguments) {
  const stoneproof::test::Folder folder;
  std::vector<std::filesystem::path> files(arguments + 1, arguments + count);
  if (files.empty()) {
    files.push_back(folder / "made24.jpg");
    made::write_jpeg(files.back(), made::busy(6000, 4000, 3));
  }
  std::printf("previews, processor time, best of 7; goal: at most 1.15 x bare\n");
  for (const auto &file : files) compare(file);
}
