// The picture is scaled differently along its two axes. The only way in is uneven_stretch_rule; tested by
// tests/rules/uneven-stretch.
#include "engine/rules/about.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_laid_frame(evidence, [&](const PlacedFrame &placed) {
    const auto [low, high] = std::minmax(placed.laid->density_x, placed.laid->density_y);
    const double stretch = high / low - 1;
    constexpr double doubles = 1e-9; // their rounding, far below a pixel
    if (stretch <= evidence.press.stretch_tolerance + doubles) return;
    findings.push_back(about_frame(Grade::query, evidence, placed));
    findings.back().measured = Share{stretch};
    findings.back().wanted = Share{evidence.press.stretch_tolerance};
  });
}

} // namespace

extern const Rule uneven_stretch_rule = {
    "uneven-stretch",
    Grade::query,
    "Picture is stretched unevenly",
    "People look too wide or too thin, and circles become ovals.",
    "Larger of the two axes’ densities / the smaller - 1, against the press sheet’s tolerance.",
    "Give the crop the shape of the frame, or let the picture fill the frame.",
    check,
};

} // namespace stoneproof
