// Mangles PDFs by the thousand, reads each within 5 s and 500 MB, and counts how that ended: values, faults
// by what they say, the slowest. Usage: bench_mangled COUNT SEED PDF...     (the crafted ones come first, by
// name)
#include "engine/import/draft.h"
#include "tests/support/files.h"
#include "tests/support/mangled_pdf.h"

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

using namespace stoneproof;

namespace {

constexpr finished::Bounds bounds{std::chrono::seconds(5), 500'000'000};

struct Ended {
  std::string how; ///< "value", or what the fault says
  double seconds = 0;
};

Ended read(const std::string &bytes) {
  const test::Folder folder;
  const auto path = test::write_file(folder / "made.pdf", bytes);
  const auto begin = std::chrono::steady_clock::now();
  const auto outcome = finished::draft_book({.pdf = path, .pictures = folder.path}, bounds);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
  return {outcome ? "value" : outcome.fault().what, took.count()};
}

} // namespace

int main(int count, char **words) {
  if (count < 4) return std::fprintf(stderr, "usage: bench_mangled COUNT SEED PDF...\n"), 2;
  for (const test::CraftedPdf &crafted : test::crafted_pdfs()) {
    const Ended ended = read(crafted.bytes);
    std::printf("%6.2f s  %s: %s\n", ended.seconds, crafted.name, ended.how.c_str());
  }
  std::vector<std::string> files;
  for (int i = 3; i < count; ++i) files.push_back(test::content_of(words[i]));
  std::map<std::string, int> endings;
  Ended slowest;
  std::string slowest_name;
  const long wanted = std::atol(words[1]), seed = std::atol(words[2]);
  for (long i = 0; i < wanted; ++i) {
    const std::size_t which = static_cast<std::size_t>(i) % files.size();
    const Ended ended = read(test::mangled(files[which], static_cast<std::uint64_t>(seed + i)));
    ++endings[ended.how];
    if (ended.seconds < slowest.seconds) continue;
    slowest = ended;
    slowest_name = std::string(words[3 + which]) + " with seed " + std::to_string(seed + i);
  }
  for (const auto &[how, times] : endings) std::printf("%6d  %s\n", times, how.c_str());
  std::printf("slowest: %.2f s, %s: %s\n", slowest.seconds, slowest_name.c_str(), slowest.how.c_str());
}
