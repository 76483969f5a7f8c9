// The pictures that the pages of a PDF show, one a line: page, pixels, density in x and y; and how long
// reading took. Usage: bench_placements PDF. The lines are made to be set beside those of `pdfimages -list`.
#include "engine/import/read_pages.h"

#include <chrono>
#include <cmath>
#include <cstdio>

using namespace stoneproof;

int main(int count, char **arguments) {
  if (count != 2) return std::fprintf(stderr, "usage: bench_placements PDF\n"), 2;
  const auto begin = std::chrono::steady_clock::now();
  const auto file = finished::PdfFile::open(arguments[1]);
  if (!file) return std::fprintf(stderr, "%s\n", file.fault().what.c_str()), 3;
  const finished::Drawn drawn = finished::read_pages(file.value());
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
  std::size_t placements = 0;
  for (std::size_t page = 0; page < drawn.sheets.size(); ++page)
    for (const finished::ShownImage &shown : drawn.sheets[page].drawing.images) {
      const finished::Object &image = drawn.parts.images()[shown.image].dictionary;
      const double width = image["Width"].number_or(0), height = image["Height"].number_or(0);
      const double unit = drawn.sheets[page].boxes.unit;
      const double across = std::hypot(shown.place.a, shown.place.b) * unit;
      const double down = std::hypot(shown.place.c, shown.place.d) * unit;
      std::printf("%zu %.0f %.0f %.2f %.2f\n", page + 1, width, height, width * 72 / across,
                  height * 72 / down);
      ++placements;
    }
  std::fprintf(stderr, "%zu pages, %zu placements, %zu pictures, %zu fonts in %.3f s\n", drawn.sheets.size(),
               placements, drawn.parts.images().size(), drawn.parts.fonts().size(), took.count());
}
