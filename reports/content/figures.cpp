// Rounding and units for display. The only ways in are the functions of figures.h; tested in
// tests/reports/content.
#include "reports/content/figures.h"

#include <fmt/format.h>

#include <cmath>

namespace stoneproof::content {

namespace {

/// Absorbs the error of a double that should be whole; far below any figure that is shown.
constexpr double slack = 1e-9;

/// By so much a density may miss the whole figure that it is told as, in ppi: an export at 300 ppi drops
/// fractions of pixels and comes to 299.9. Our own choice, far within the tolerance of press sheets.
constexpr double density_rounding = 0.1;

std::string trimmed(double value, int digits) {
  std::string text = fmt::format("{:.{}f}", value, digits);
  while (text.find('.') != std::string::npos && (text.back() == '0' || text.back() == '.')) {
    const bool point = text.back() == '.';
    text.pop_back();
    if (point) break;
  }
  return text == "-0" ? "0" : text;
}

struct FigureOf {
  std::string operator()(std::monostate) const { return {}; }
  std::string operator()(Density density) const { return ppi(density); }
  std::string operator()(Length length) const { return millimetres(length); }
  std::string operator()(Share share) const { return per_cent(share.value); }
  std::string operator()(Count number) const { return fmt::format("{}", number.value); }
  std::string operator()(Quality quality) const { return fmt::format("{}", quality.value); }
  std::string operator()(Ruling ruling) const { return fmt::format("{:.0f} lines an inch", ruling.lines); }
  std::string operator()(Angle angle) const { return degrees(angle.degrees); }
};

} // namespace

std::string ppi(Density density) {
  return fmt::format("{:.0f} ppi", std::floor(density.ppi() + density_rounding));
}

std::string millimetres(Length length) {
  return trimmed(std::floor(length.mm() * 100 + slack) / 100, 2) + " mm";
}

std::string millimetres_up(Length length) {
  return trimmed(std::ceil(length.mm() * 100 - slack) / 100, 2) + " mm";
}

std::string size(const Size &size) {
  const auto side = [](Length length) {
    const double steps = length.mm() < 9.95 ? 10 : 1;
    return trimmed(std::round(length.mm() * steps) / steps, 1);
  };
  return fmt::format("{} × {} mm", side(size.width), side(size.height));
}

std::string size_down(const Size &size) {
  const auto side = [](Length length) {
    const double steps = length.mm() < 10 - size_rounding ? 10 : 1;
    return trimmed(std::floor((length.mm() + size_rounding) * steps) / steps, 1);
  };
  return fmt::format("{} × {} mm", side(size.width), side(size.height));
}

std::string degrees(double angle) { return trimmed(std::abs(angle), 1) + "°"; }

std::string per_cent(double share) {
  const double value = share * 100;
  if (value > 0 && value < 0.1) return "less than 0.1 %";
  if (value < 100 && value > 99.9) return "more than 99.9 %";
  return trimmed(value, 1) + " %";
}

std::string figure_beside(const Measure &measured, const Measure &wanted) {
  const auto *density = std::get_if<Density>(&measured), *asked = std::get_if<Density>(&wanted);
  if (density && asked && *density < *asked && ppi(*density) == ppi(*asked))
    return fmt::format("{:.2f} ppi", std::floor(density->ppi() * 100) / 100);
  const auto *share = std::get_if<Share>(&measured), *bar = std::get_if<Share>(&wanted);
  if (!share || !bar || bar->value <= 0) return figure(measured);
  const double tenths = share->value * 1000;
  const double away = share->value > bar->value ? std::ceil(tenths - slack) : std::floor(tenths + slack);
  return per_cent(away / 1000);
}

std::string figure(const Measure &measure) { return std::visit(FigureOf{}, measure); }

std::string file_size(std::uint64_t bytes) {
  const double megabytes = std::ceil(static_cast<double>(bytes) / 1e5) / 10;
  if (megabytes < 10) return trimmed(megabytes, 1) + " MB";
  const double whole = std::ceil(static_cast<double>(bytes) / 1e6);
  if (whole < 1000) return trimmed(whole, 0) + " MB";
  return trimmed(std::ceil(static_cast<double>(bytes) / 1e8) / 10, 1) + " GB";
}

std::string count(std::size_t n, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string listed(const std::vector<std::string> &names) {
  std::string list;
  for (std::size_t i = 0; i < names.size(); ++i)
    list += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return list;
}

std::string with_units_kept_whole(std::string text, std::initializer_list<std::string_view> units) {
  constexpr std::string_view no_break = "\u00a0", times = "×";
  const auto join = [&](const std::string &after) {
    for (std::size_t at = text.find(after); at != std::string::npos; at = text.find(after, at + 1))
      if (at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9') text.replace(at, 1, no_break);
  };
  for (const std::string_view unit : units) join(" " + std::string(unit));
  join(" %");
  join(" " + std::string(times));
  for (std::size_t at = text.find("× "); at != std::string::npos; at = text.find("× ", at + 1))
    text.replace(at + times.size(), 1, no_break);
  return text;
}

std::string with_figures_kept_whole(std::string text) {
  return with_units_kept_whole(std::move(text), {"ppi", "mm", "px", "MB", "GB"});
}

} // namespace stoneproof::content
