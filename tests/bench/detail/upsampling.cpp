// Scores the measure of enlargement and of detail on the set that upsampling.sh makes. Prints tables,
// asserts nothing. Usage: bench_upsampling DIR     (DIR/tune and DIR/score)
#include "engine/measure/upsampling.h"
#include "engine/picture/facts.h"
#include "engine/picture/rows.h"

#include <fmt/format.h>

#include <cmath>
#include <filesystem>
#include <map>
#include <numbers>
#include <string>
#include <vector>

using namespace stoneproof;

namespace {

/// What a file's name says of it.
struct Label {
  std::string photograph, kind, saved;
  double value = 0;
  bool is(std::string_view begin) const { return kind.starts_with(begin); }
};

Label label_of(const std::string &stem) {
  std::vector<std::string> parts;
  for (std::size_t begin = 0;;) {
    const std::size_t end = stem.find("__", begin);
    parts.push_back(stem.substr(begin, end - begin));
    if (end == std::string::npos) break;
    begin = end + 2;
  }
  return {parts.at(0), parts.at(1), parts.at(3), std::stod(parts.at(2))};
}

std::optional<Upsampling> judged(const std::filesystem::path &file) {
  const auto facts = read_facts(file);
  if (!facts) return std::nullopt;
  const PixelSize size = facts.value().size;
  auto opened = open_rows(file, {0, 0, size.width, size.height, size.width, size.height});
  if (!opened) return std::nullopt;
  RowSource &rows = *opened.value();
  TileSampler sampler({0, 0, size.width, size.height}, rows.layout());
  for (std::int64_t y = 0; y < size.height; ++y) {
    const auto row = rows.next();
    if (!row) return std::nullopt;
    sampler.add(y, row.value().data());
  }
  return upsampling(sampler.take());
}

/// Counts of one cell of a table.
struct Cell {
  int files = 0, hint = 0, firm = 0, factor_told = 0, factor_right = 0, cannot_tell = 0;
  int density = 0, density_unknown = 0, density_near = 0, density_in_range = 0;
};

/// As DetailLimit defines it; a Gaussian's transfer function is exp(-2 pi^2 sigma^2 v^2), the pixel's own
/// sinc(v).
double true_detail(const Label &label) {
  if (label.is("enlarged")) return 1 / label.value;
  double low = 0.001, high = 0.5;
  for (int i = 0; i < 50; ++i) {
    const double v = (low + high) / 2, x = std::numbers::pi * v;
    const double transfer = std::sin(x) / x * std::exp(-2 * x * x * label.value * label.value);
    (transfer > 0.32 ? low : high) = v;
  }
  return low / 0.5;
}

void count(Cell &cell, const Label &label, const Upsampling &result) {
  ++cell.files;
  cell.cannot_tell += result.certainty == Certainty::cannot_tell;
  cell.hint += result.certainty == Certainty::hint;
  cell.firm += result.certainty == Certainty::firm;
  if (result.certainty == Certainty::firm && label.is("enlarged")) {
    ++cell.factor_told;
    cell.factor_right += std::abs(*result.factor / label.value - 1) <= 0.02;
  }
  const bool nearest = label.kind == "enlarged-Point";
  if (!label.is("enlarged") && !label.is("blurred")) return;
  if (nearest) return; // repeated pixels are no soft detail: the factor tells what there is
  const double truth = true_detail(label), told = std::sqrt(result.detail.across * result.detail.down);
  ++cell.density;
  if (!result.detail.known) {
    ++cell.density_unknown;
    return;
  }
  cell.density_near += std::abs(told / truth - 1) <= 0.25;
  cell.density_in_range += truth >= told * result.detail.least && truth <= told * result.detail.most;
}

using Table = std::map<std::string, std::map<std::string, Cell>>; ///< by row, then by how it was saved

std::string band_of(double factor) {
  for (const auto &[end, name] :
       {std::pair{1.8, "1.5 to 1.8"}, {2.3, "1.8 to 2.3"}, {3.0, "2.3 to 3"}, {4.0, "3 to 4"}})
    if (factor < end) return name;
  return "4 to 5";
}

double per_cent(int part, int whole) { return whole > 0 ? 100.0 * part / whole : 0; }

void print_found(const std::string &title, const Table &table) {
  fmt::print("\n{:<22}{:>26}{:>26}{:>26}{:>26}\n", title, "PNG", "q95", "q85", "q75");
  for (const auto &[row, cells] : table) {
    fmt::print("{:<22}", row);
    for (const char *saved : {"png", "q95", "q85", "q75"}) {
      const auto found = cells.find(saved);
      const Cell cell = found == cells.end() ? Cell{} : found->second;
      fmt::print("  {:>4} firm {:3.0f} hint {:3.0f} f {:3.0f}", cell.files, per_cent(cell.firm, cell.files),
                 per_cent(cell.hint, cell.files), per_cent(cell.factor_right, cell.factor_told));
    }
    fmt::print("\n");
  }
}

void print_false(const Table &table) {
  fmt::print("\n{:<22}{:>8}{:>8}{:>8}{:>12}\n", "natives", "files", "firm", "hint", "cannot tell");
  Cell all;
  for (const auto &[row, cells] : table) {
    Cell sum;
    for (const auto &[saved, cell] : cells)
      sum.files += cell.files, sum.firm += cell.firm, sum.hint += cell.hint,
          sum.cannot_tell += cell.cannot_tell;
    fmt::print("{:<22}{:>8}{:>8}{:>8}{:>12}\n", row, sum.files, sum.firm, sum.hint, sum.cannot_tell);
    all.files += sum.files, all.firm += sum.firm, all.hint += sum.hint, all.cannot_tell += sum.cannot_tell;
  }
  fmt::print("{:<22}{:>8}{:>8}{:>8}{:>12}\n", "all", all.files, all.firm, all.hint, all.cannot_tell);
}

void print_density_row(const std::string &row, const Cell &sum) {
  const int known = sum.density - sum.density_unknown;
  fmt::print("{:<22}{:>8}{:>14}{:>12.0f} %{:>12.0f} %\n", row, sum.density, sum.density_unknown,
             per_cent(sum.density_near, known), per_cent(sum.density_in_range, known));
}

void print_density(const Table &table) {
  fmt::print("\n{:<22}{:>8}{:>14}{:>14}{:>14}\n", "density of detail", "files", "cannot tell", "within 25 %",
             "in its range");
  Cell all;
  for (const auto &[row, cells] : table) {
    Cell sum;
    for (Cell *to : {&sum, &all})
      for (const auto &[saved, cell] : cells)
        to->density += cell.density, to->density_unknown += cell.density_unknown,
            to->density_near += cell.density_near, to->density_in_range += cell.density_in_range;
    if (sum.density > 0) print_density_row(row, sum);
  }
  print_density_row("all", all);
}

void score(const std::filesystem::path &folder) {
  Table by_factor, by_kernel, natives, densities;
  for (const auto &entry : std::filesystem::directory_iterator(folder)) {
    const Label label = label_of(entry.path().stem().string());
    const auto result = judged(entry.path());
    if (!result) continue;
    if (label.is("enlarged")) {
      count(by_factor[band_of(label.value)][label.saved], label, *result);
      count(by_kernel[label.kind][label.saved], label, *result);
      count(by_kernel["all"][label.saved], label, *result);
      count(densities["enlarged " + band_of(label.value)][label.saved], label, *result);
    } else {
      count(natives[label.kind + (label.is("blurred") ? fmt::format(" {}", label.value) : "")][label.saved],
            label, *result);
      if (label.is("blurred"))
        count(densities[fmt::format("blurred {}", label.value)][label.saved], label, *result);
    }
  }
  fmt::print("\n== {}: per cent found, and per cent of the firm factors within 2 %\n",
             folder.filename().string());
  print_found("by factor", by_factor);
  print_found("by kernel", by_kernel);
  print_false(natives);
  print_density(densities);
}

} // namespace

int main(int argc, char **argv) {
  if (argc != 2) return fmt::print(stderr, "usage: bench_upsampling DIR\n"), 2;
  for (const char *half : {"tune", "score"}) score(std::filesystem::path(argv[1]) / half);
}
