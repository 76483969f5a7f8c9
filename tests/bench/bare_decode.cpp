// The yardstick of the proof's speed: libjpeg-turbo alone decoding the same files to the same proof size.
// Usage: bench_bare_decode THREADS WIDTH FILE... : each file decoded at the smallest eighth that is at least
// WIDTH wide. Prints the seconds taken.
#include <fmt/format.h>

#include <atomic>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <jpeglib.h>
#include <thread>
#include <vector>

namespace {

void decode(const char *name, unsigned width) {
  std::FILE *file = std::fopen(name, "rb");
  if (!file) std::exit(3);
  jpeg_decompress_struct jpeg;
  jpeg_error_mgr errors;
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&jpeg);
  jpeg_stdio_src(&jpeg, file);
  jpeg_read_header(&jpeg, TRUE);
  jpeg.scale_denom = 8;
  jpeg.scale_num = 1;
  while (jpeg.scale_num < 8 && jpeg.image_width * jpeg.scale_num / 8 < width) ++jpeg.scale_num;
  jpeg.out_color_space = JCS_RGB;
  jpeg_start_decompress(&jpeg);
  std::vector<JSAMPLE> row(std::size_t{jpeg.output_width} * 3);
  JSAMPROW rows[] = {row.data()};
  while (jpeg.output_scanline < jpeg.output_height) jpeg_read_scanlines(&jpeg, rows, 1);
  jpeg_finish_decompress(&jpeg);
  jpeg_destroy_decompress(&jpeg);
  std::fclose(file);
}

} // namespace

int main(int count, char **words) {
  if (count < 4) return 2;
  const int threads = std::atoi(words[1]);
  const auto width = static_cast<unsigned>(std::atoi(words[2]));
  std::atomic<int> next = 3;
  const auto start = std::chrono::steady_clock::now();
  std::vector<std::thread> workers;
  for (int i = 0; i < threads; ++i)
    workers.emplace_back([&] {
      for (int at = next++; at < count; at = next++) decode(words[at], width);
    });
  for (std::thread &worker : workers) worker.join();
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
  fmt::print("{:.2f}\n", taken.count());
}
