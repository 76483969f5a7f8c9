// Groups pictures by their origin. Only way in: scan_batches. Tested in
// tests/engine/measure/scan_batches.test.cpp.
#include "engine/measure/scan_batches.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Both empty: they are known to share nothing.
bool same_glass(const ScanOrigin &a, const ScanOrigin &b) {
  if (a.stored != b.stored || a.across != b.across || a.down != b.down || a.device != b.device) return false;
  return !a.device.empty() || (a.contributor && a.contributor == b.contributor);
}

} // namespace

std::vector<std::vector<std::size_t>> scan_batches(const std::vector<ScanOrigin> &origins) {
  std::vector<std::vector<std::size_t>> batches;
  for (std::size_t i = 0; i < origins.size(); ++i) {
    if (origins[i].camera) continue;
    const auto batch = std::find_if(batches.begin(), batches.end(), [&](const auto &known) {
      return same_glass(origins[known.front()], origins[i]);
    });
    if (batch != batches.end())
      batch->push_back(i);
    else
      batches.push_back({i});
  }
  batches.erase(std::remove_if(batches.begin(), batches.end(), [](const auto &b) { return b.size() < 2; }),
                batches.end());
  return batches;
}

} // namespace stoneproof
