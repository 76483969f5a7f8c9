// Small copies of many pictures, as the proof with --quick makes them. Usage: bench_small_copies THREADS SIDE
// FILE... Prints the seconds taken.
#include "engine/picture/small_copy.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <thread>
#include <vector>

namespace {

bool make(const char *file, int side) {
  const auto facts = stoneproof::read_facts(file);
  if (!facts) return false;
  const auto width = static_cast<double>(facts.value().size.width),
             height = static_cast<double>(facts.value().size.height);
  const double scale = side / std::max(width, height);
  const stoneproof::PreviewOrder order{
      {0, 0, width, height}, static_cast<int>(width * scale), static_cast<int>(height * scale)};
  return bool(stoneproof::read_small_copy(file, facts.value(), order));
}

} // namespace

int main(int count, char **words) {
  if (count < 4) return 2;
  const int side = std::atoi(words[2]);
  std::atomic<int> next = 3, faults = 0;
  const auto start = std::chrono::steady_clock::now();
  std::vector<std::thread> workers;
  for (int i = 0; i < std::atoi(words[1]); ++i)
    workers.emplace_back([&] {
      for (int at = next++; at < count; at = next++)
        if (!make(words[at], side)) ++faults;
    });
  for (auto &worker : workers) worker.join();
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
  std::printf("small copies %.2f s, %d faults\n", taken.count(), faults.load());
}
