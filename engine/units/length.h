// Exact lengths. One tick is 1/360 micrometre, so that millimetres, inches and points convert without
// rounding.
#pragma once

#include <compare>
#include <cstdint>

namespace stoneproof {

/// A distance on paper. 1 mm = 360,000 ticks; 1 in = 25.4 mm = 9,144,000; 1 pt = 1 in / 72 = 127,000.
/// A bare number is never a length: make one with a literal, with `of`, or by parsing text that carries a
/// unit.
class Length {
public:
  static constexpr std::int64_t ticks_per_mm = 360'000;
  static constexpr std::int64_t ticks_per_cm = 3'600'000;
  static constexpr std::int64_t ticks_per_in = 9'144'000;
  static constexpr std::int64_t ticks_per_pt = 127'000;

  constexpr Length() = default;
  static constexpr Length of_ticks(std::int64_t ticks) { return Length(ticks); }
  /// The nearest tick to `ticks` (half away from zero). Beyond 2,700 km: that end, so that sums cannot
  /// overflow. Not a number: zero.
  static constexpr Length nearest(double ticks) {
    constexpr std::int64_t end = 1'000'000'000'000'000;
    if (ticks != ticks) return Length(0);
    if (ticks >= static_cast<double>(end)) return Length(end);
    if (ticks <= static_cast<double>(-end)) return Length(-end);
    return Length(static_cast<std::int64_t>(ticks < 0 ? ticks - 0.5 : ticks + 0.5));
  }
  static constexpr Length of_mm(double mm) { return nearest(mm * ticks_per_mm); }
  static constexpr Length of_in(double in) { return nearest(in * ticks_per_in); }
  static constexpr Length of_pt(double pt) { return nearest(pt * ticks_per_pt); }

  constexpr std::int64_t ticks() const { return ticks_; }
  constexpr double mm() const { return static_cast<double>(ticks_) / ticks_per_mm; }
  constexpr double in() const { return static_cast<double>(ticks_) / ticks_per_in; }
  constexpr double pt() const { return static_cast<double>(ticks_) / ticks_per_pt; }

  constexpr auto operator<=>(const Length &) const = default;
  constexpr Length operator-() const { return Length(-ticks_); }
  constexpr Length &operator+=(Length other) { return ticks_ += other.ticks_, *this; }
  constexpr Length &operator-=(Length other) { return ticks_ -= other.ticks_, *this; }
  friend constexpr Length operator+(Length a, Length b) { return a += b; }
  friend constexpr Length operator-(Length a, Length b) { return a -= b; }
  friend constexpr Length operator*(Length a, std::int64_t n) { return Length(a.ticks_ * n); }
  friend constexpr Length operator*(Length a, int n) { return Length(a.ticks_ * n); }
  friend constexpr Length operator*(Length a, double factor) {
    return nearest(static_cast<double>(a.ticks_) * factor);
  }
  friend constexpr Length operator/(Length a, int n) { return nearest(static_cast<double>(a.ticks_) / n); }
  friend constexpr Length operator/(Length a, double n) { return nearest(static_cast<double>(a.ticks_) / n); }
  /// How many times b goes into a. b must not be zero.
  friend constexpr double operator/(Length a, Length b) {
    return static_cast<double>(a.ticks_) / static_cast<double>(b.ticks_);
  }

private:
  explicit constexpr Length(std::int64_t ticks) : ticks_(ticks) {}
  std::int64_t ticks_ = 0;
};

namespace literals {
constexpr Length operator""_mm(unsigned long long n) {
  return Length::of_ticks(static_cast<std::int64_t>(n) * Length::ticks_per_mm);
}
constexpr Length operator""_cm(unsigned long long n) {
  return Length::of_ticks(static_cast<std::int64_t>(n) * Length::ticks_per_cm);
}
constexpr Length operator""_in(unsigned long long n) {
  return Length::of_ticks(static_cast<std::int64_t>(n) * Length::ticks_per_in);
}
constexpr Length operator""_pt(unsigned long long n) {
  return Length::of_ticks(static_cast<std::int64_t>(n) * Length::ticks_per_pt);
}
constexpr Length operator""_mm(long double n) { return Length::of_mm(static_cast<double>(n)); }
constexpr Length operator""_in(long double n) { return Length::of_in(static_cast<double>(n)); }
constexpr Length operator""_pt(long double n) { return Length::of_pt(static_cast<double>(n)); }
} // namespace literals

static_assert(Length::of_ticks(Length::ticks_per_pt) * 72 == Length::of_ticks(Length::ticks_per_in));
static_assert(Length::of_ticks(Length::ticks_per_mm) * 254 == Length::of_ticks(Length::ticks_per_in) * 10);

} // namespace stoneproof
