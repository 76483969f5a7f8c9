// Profiles made from numbers, so that tests know what they hold.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace stoneproof::made {

using Bytes = std::vector<std::uint8_t>;

/// CIE 1931 chromaticities.
struct Chromaticity {
  double x = 0, y = 0;
};
struct RgbSpace {
  Chromaticity white, red, green, blue;
  double gamma = 2.2;
};

/// Their published primaries; the curves are plain powers, which is near enough for tests.
constexpr Chromaticity d65 = {0.3127, 0.3290}, d50 = {0.3457, 0.3585};
constexpr RgbSpace srgb = {d65, {0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}};      ///< IEC 61966-2-1
constexpr RgbSpace adobe_rgb = {d65, {0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}}; ///< Adobe RGB (1998)
constexpr RgbSpace display_p3 = {
    d65, {0.680, 0.320}, {0.265, 0.690}, {0.15, 0.06}};                   ///< SMPTE EG 432-1, white D65
constexpr RgbSpace pal = {d65, {0.64, 0.33}, {0.29, 0.60}, {0.15, 0.06}}; ///< ITU-R BT.470, system B/G
constexpr RgbSpace ntsc = {
    {0.3101, 0.3162}, {0.67, 0.33}, {0.21, 0.71}, {0.14, 0.08}}; ///< NTSC (1953), white C
constexpr RgbSpace prophoto = {
    d50, {0.7347, 0.2653}, {0.1596, 0.8404}, {0.0366, 0.0001}, 1.8}; ///< ISO 22028-2

/// By colorants and curves.
Bytes rgb_profile(const RgbSpace &space);
/// The same colours by a table to Lab, as scanners' profiles have it.
Bytes rgb_table_profile(const RgbSpace &space);
Bytes gray_profile(double gamma);
/// Class and spaces of an output profile with no table at all.
Bytes press_without_tables();

/// A press of simple habits: its three colours print what a display of few colours shows of their complements
/// (see the .cpp), it converts without black, and its darkest black has L* of about 10.
Bytes press_profile();

/// A profile of sRGB whose description is written by version 4 in the languages named: "en", "de" and so on.
struct Named {
  std::string language;
  std::wstring text;
};
Bytes named_profile(const std::vector<Named> &names, double version = 4.3);

} // namespace stoneproof::made
