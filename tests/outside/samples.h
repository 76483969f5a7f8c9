// The sample files of other people, fetched by tests/get-samples.sh.
#pragma once

#include "tests/support/catch.h"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fmt/format.h>
#include <fstream>
#include <string>
#include <vector>

namespace stoneproof::test {

inline std::filesystem::path samples_folder() {
  const char *named = std::getenv("STONEPROOF_SAMPLES");
  return named ? named : STONEPROOF_SOURCE_DIR "/build/samples";
}

/// The files whose first eight bytes `wanted` takes, sorted; names are not looked at. The test fails where
/// there are no samples: silence would prove nothing.
template <class Wanted>
std::vector<std::filesystem::path> samples_that(Wanted wanted) {
  std::vector<std::filesystem::path> found;
  const std::filesystem::path folder = samples_folder();
  if (!std::filesystem::is_directory(folder))
    FAIL(fmt::format("no samples in {}: run  bash tests/get-samples.sh DIR  and set STONEPROOF_SAMPLES=DIR",
                     folder.string()));
  for (const auto &entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream in(entry.path(), std::ios::binary);
    std::string head(8, '\0');
    in.read(head.data(), 8);
    if (wanted(head)) found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

/// Every TIFF, JPEG and PNG.
inline std::vector<std::filesystem::path> samples() {
  return samples_that([](const std::string &head) {
    return head.starts_with("\xFF\xD8\xFF") || head.starts_with("\x89PNG\r\n\x1A\n") ||
           head.starts_with("II*") || head.starts_with("II+") || head.starts_with(std::string("MM\0*", 4)) ||
           head.starts_with(std::string("MM\0+", 4));
  });
}

/// Every PDF.
inline std::vector<std::filesystem::path> sample_pdfs() {
  return samples_that([](const std::string &head) { return head.starts_with("%PDF-"); });
}

} // namespace stoneproof::test
