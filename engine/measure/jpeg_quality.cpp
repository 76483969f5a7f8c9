// Quality from quantization tables. The only ways in are the functions of jpeg_quality.h; tested in
// tests/engine/measure and, against other programs, in tests/outside/jpeg_quality.test.cpp.
#include "engine/measure/jpeg_quality.h"

#include <algorithm>
#include <cmath>

namespace stoneproof {

namespace {

/// ITU-T T.81 (09/92), table K.1.
constexpr QuantTable annex_k_luma = {
    16, 11, 10, 16, 24,  40,  51,  61,  //
    12, 12, 14, 19, 26,  58,  60,  55,  //
    14, 13, 16, 24, 40,  57,  69,  56,  //
    14, 17, 22, 29, 51,  87,  80,  62,  //
    18, 22, 37, 56, 68,  109, 103, 77,  //
    24, 35, 55, 64, 81,  104, 113, 92,  //
    49, 64, 78, 87, 103, 121, 120, 101, //
    72, 92, 95, 98, 112, 100, 103, 99,
};

/// ITU-T T.81 (09/92), table K.2.
constexpr QuantTable annex_k_chroma = {
    17, 18, 24, 47, 99, 99, 99, 99, //
    18, 21, 26, 66, 99, 99, 99, 99, //
    24, 26, 56, 99, 99, 99, 99, 99, //
    47, 66, 99, 99, 99, 99, 99, 99, //
    99, 99, 99, 99, 99, 99, 99, 99, //
    99, 99, 99, 99, 99, 99, 99, 99, //
    99, 99, 99, 99, 99, 99, 99, 99, //
    99, 99, 99, 99, 99, 99, 99, 99,
};

QuantTable scaled(const QuantTable &table, int quality, LargestStep largest) {
  const int scale = quality < 50 ? 5000 / quality : 200 - 2 * quality;
  QuantTable steps{};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const int step = (table[i] * scale + 50) / 100;
    steps[i] = static_cast<std::uint16_t>(std::clamp(step, 1, static_cast<int>(largest)));
  }
  return steps;
}

bool has_zero(const QuantTable &table) { return std::find(table.begin(), table.end(), 0) != table.end(); }

int nearest_quality(const QuantTable &luma) {
  double sum = 0;
  for (std::size_t i = 0; i < luma.size(); ++i) sum += static_cast<double>(luma[i]) / annex_k_luma[i];
  const double scale = 100 * sum / static_cast<double>(luma.size());
  const double quality = scale <= 100 ? (200 - scale) / 2 : 5000 / scale;
  return std::clamp(static_cast<int>(std::lround(quality)), 1, 100);
}

/// Sum of the squared relative differences of the steps from the standard ones.
double misfit(const QuantTable &table, const QuantTable &standard) {
  double sum = 0;
  for (std::size_t i = 0; i < table.size(); ++i) {
    const double difference = static_cast<double>(table[i]) / standard[i] - 1;
    sum += difference * difference;
  }
  return sum;
}

JpegQuality judged(const JpegFacts &facts, int quality, LargestStep largest) {
  const QuantTable luma = standard_luma(quality, largest);
  double sum = misfit(*facts.luma, luma), steps = static_cast<double>(luma.size());
  if (facts.chroma && facts.chroma != luma) {
    sum += misfit(*facts.chroma, standard_chroma(quality, largest));
    steps += static_cast<double>(luma.size());
  }
  return {quality, sum == 0, std::sqrt(sum / steps)};
}

} // namespace

QuantTable standard_luma(int quality, LargestStep largest) { return scaled(annex_k_luma, quality, largest); }

QuantTable standard_chroma(int quality, LargestStep largest) {
  return scaled(annex_k_chroma, quality, largest);
}

std::optional<JpegQuality> jpeg_quality(const JpegFacts &facts) {
  if (!facts.luma || has_zero(*facts.luma) || (facts.chroma && has_zero(*facts.chroma))) return std::nullopt;
  for (const LargestStep largest : {LargestStep::baseline, LargestStep::extended})
    for (int quality = 1; quality <= 100; ++quality)
      if (*facts.luma == standard_luma(quality, largest)) return judged(facts, quality, largest);
  return judged(facts, nearest_quality(*facts.luma), LargestStep::baseline);
}

} // namespace stoneproof
