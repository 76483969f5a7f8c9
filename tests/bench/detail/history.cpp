// Scores the measures of a picture's JPEG past on the set that history.sh makes. Prints tables and every
// wrong call, asserts nothing. Usage: bench_history DIR [tune or score]     (DIR/tables, DIR/tune and
// DIR/score) Pictures saved once are judged three times: as the JPEGs they are; as a PNG of their pixels,
// which is the same without the present table; and as that PNG cropped.
#include "engine/measure/jpeg_past.h"
#include "engine/measure/jpeg_quality.h"
#include "engine/measure/screen_likeness.h"
#include "engine/picture/facts.h"
#include "engine/picture/rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <vector>

using namespace stoneproof;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> parts_of(const std::string &stem) {
  std::vector<std::string> parts;
  for (std::size_t begin = 0;;) {
    const std::size_t end = stem.find("__", begin);
    parts.push_back(stem.substr(begin, end - begin));
    if (end == std::string::npos) return parts;
    begin = end + 2;
  }
}

struct Held {
  RowLayout layout;
  std::vector<std::uint8_t> bytes;
  std::optional<QuantTable> present;
};

std::optional<Held> held(const fs::path &file) {
  const auto facts = read_facts(file);
  if (!facts) return std::nullopt;
  const PixelSize size = facts.value().size;
  auto opened = open_rows(file, {0, 0, size.width, size.height, size.width, size.height});
  if (!opened) return std::nullopt;
  Held picture{opened.value()->layout(), {}, {}};
  if (facts.value().jpeg) picture.present = facts.value().jpeg->luma;
  for (std::int64_t y = 0; y < size.height; ++y) {
    const auto row = opened.value()->next();
    if (!row) return std::nullopt;
    picture.bytes.insert(picture.bytes.end(), row.value().begin(), row.value().end());
  }
  return picture;
}

/// The tiles of what is left when so many columns and rows are cut off at the left and the top.
std::vector<Tile> tiles_of(const Held &picture, std::int64_t left, std::int64_t top) {
  RowLayout layout = picture.layout;
  const std::int64_t stride = layout.width * layout.channels;
  layout.width -= left, layout.height -= top;
  layout.stored = {layout.width, layout.height};
  TileSampler sampler({0, 0, layout.width, layout.height}, layout);
  for (std::int64_t y = 0; y < layout.height; ++y)
    sampler.add(y, picture.bytes.data() + (y + top) * stride + left * layout.channels);
  return sampler.take();
}

bool has_known_past(const std::string &photograph) {
  for (const char *name :
       {"astronaut", "brick", "camera", "chelsea", "coffee", "grass", "gravel", "motorcycle-left"})
    if (photograph.starts_with(name)) return false;
  return true;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// Counts of one row of a table.
struct Row {
  int files = 0, cannot_tell = 0, hint = 0, firm = 0, near = 0, in_range = 0;
};

class Score {
public:
  explicit Score(fs::path dir) : dir_(std::move(dir)) {}

  void add(const fs::path &file) {
    const auto picture = held(file);
    if (!picture) return;
    const std::vector<std::string> parts = parts_of(file.stem().string());
    const std::string &role = parts.at(1), &first = parts.at(2);
    const std::vector<Tile> tiles = tiles_of(*picture, 0, 0);
    judge_screen(role == "screen" ? "screen, " + first : "not a screen", file, tiles);
    if (role == "screen") return;
    const std::string doubt = has_known_past(parts.at(0)) ? "" : " (or more)";
    if (role == "once") {
      judge("saved once" + doubt, first, file, tiles, picture->present, JpegPastKind::none);
      judge("was a JPEG", first, file, tiles, {}, JpegPastKind::was_jpeg);
      judge("was a JPEG, cropped", first, file, tiles_of(*picture, 3, 6), {}, JpegPastKind::was_jpeg);
    } else if (role == "never") {
      judge("never" + doubt, first, file, tiles, {}, JpegPastKind::none);
    } else {
      const auto kind = role == "aligned" ? JpegPastKind::aligned : JpegPastKind::moved;
      judge("saved twice, " + role, first + " then " + parts.at(3), file, tiles, picture->present, kind);
    }
  }

  void print() const {
    fmt::print("{:22}{:28}{:>7}{:>8}{:>7}{:>7}{:>9}{:>10}\n", "", "", "files", "cannot", "hint", "firm",
               "within 3", "in range");
    std::map<std::string, Row> sums;
    for (const auto &[label, row] : rows_) {
      const std::string &setting = label.second;
      print(label.first, setting, row);
      const std::string group = label.first + (setting.starts_with('q') ? "|tables of T.81" : "|others");
      Row &sum = sums[group];
      sum.files += row.files, sum.cannot_tell += row.cannot_tell, sum.hint += row.hint, sum.firm += row.firm;
      sum.near += row.near, sum.in_range += row.in_range;
    }
    fmt::print("\n");
    for (const auto &[group, row] : sums)
      print(group.substr(0, group.find('|')), group.substr(group.find('|') + 1), row);
    fmt::print("jpeg_past of eight tiles, median processor time: {:.1f} ms of a JPEG, {:.1f} ms of others\n",
               median(of_jpegs_), median(of_others_));
  }

private:
  static void print(const std::string &label, const std::string &setting, const Row &row) {
    fmt::print("{:22}{:28}{:7}{:8}{:7}{:7}", label, setting, row.files, row.cannot_tell, row.hint, row.firm);
    const double told = std::max(1, row.hint + row.firm);
    fmt::print("{:8.0f}%{:9.0f}%\n", 100 * row.near / told, 100 * row.in_range / told);
  }

  int quality_of(const std::string &setting) const {
    if (setting.starts_with('q')) return std::atoi(setting.c_str() + 1);
    std::ifstream file(dir_ / "tables" / setting.substr(0, setting.find(' ')));
    JpegFacts facts;
    facts.luma.emplace();
    for (std::uint16_t &step : *facts.luma) file >> step;
    const auto quality = jpeg_quality(facts);
    return quality ? quality->quality : 0;
  }

  void judge(const std::string &label, const std::string &setting, const fs::path &file,
             const std::vector<Tile> &tiles, const std::optional<QuantTable> &present, JpegPastKind truth) {
    const std::clock_t begin = std::clock();
    const JpegPast past = jpeg_past(tiles, present);
    const double milliseconds = 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
    if (tiles.size() == 8) (present ? of_jpegs_ : of_others_).push_back(milliseconds);
    Row &row = rows_[{label, setting}];
    ++row.files;
    row.cannot_tell += past.certainty == Certainty::cannot_tell;
    const bool told = past.kind != JpegPastKind::none;
    if (told && past.kind != truth)
      fmt::print("WRONG {} as {}: kind {}, {}, quality {} ({} to {}) at {},{}\n", file.stem().string(), label,
                 static_cast<int>(past.kind), past.certainty == Certainty::firm ? "firm" : "hint",
                 past.earlier.quality, past.earlier.low, past.earlier.high, past.shift_x, past.shift_y);
    if (!told || (past.kind != truth && truth != JpegPastKind::none)) return;
    ++(past.certainty == Certainty::firm ? row.firm : row.hint);
    const int quality = quality_of(setting);
    row.near += std::abs(past.earlier.quality - quality) <= 3;
    row.in_range += past.earlier.low <= quality && quality <= past.earlier.high;
  }

  void judge_screen(const std::string &label, const fs::path &file, const std::vector<Tile> &tiles) {
    const ScreenLikeness screen = screen_likeness(tiles);
    Row &row = rows_[{label, "likeness"}];
    ++row.files;
    row.cannot_tell += screen.certainty == Certainty::cannot_tell;
    row.hint += screen.certainty == Certainty::hint;
    row.firm += screen.certainty == Certainty::firm;
    if (!label.starts_with("screen") && screen.certainty >= Certainty::hint)
      fmt::print("WRONG {} is like a screen: equal {:.2f}, few levels {:.2f}, step {}\n",
                 file.stem().string(), screen.equal, screen.few_levels, screen.step);
  }

  fs::path dir_;
  std::map<std::pair<std::string, std::string>, Row> rows_;
  std::vector<double> of_jpegs_, of_others_; ///< milliseconds
};

} // namespace

int main(int count, char **arguments) {
  if (count < 2) return 2;
  const fs::path dir = arguments[1];
  for (const char *half : {"tune", "score"}) {
    if (count > 2 && std::string(arguments[2]) != half) continue;
    Score score(dir);
    std::vector<fs::path> files;
    for (const auto &entry : fs::directory_iterator(dir / half)) files.push_back(entry.path());
    std::ranges::sort(files);
    fmt::print("{}\n", half);
    for (const fs::path &file : files) score.add(file);
    score.print();
  }
}
