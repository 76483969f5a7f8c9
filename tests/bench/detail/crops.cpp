// How surely crops of pictures are found among all of them. Usage: bench_crops SCRATCH FOLDER...: pictures
// that are all different, of which crops are made in memory; prints a table. With FOLDERS that begin with
// "-": pictures of which nothing is among those searched.
#include "engine/measure/crop_search.h"
#include "tests/bench/detail/pixels.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <optional>

namespace {

using bench::between, bench::Pixels, bench::small;
using stoneproof::CropGround, stoneproof::CropSought, stoneproof::FoundCrop, stoneproof::GrayPart,
    stoneproof::SmallPicture;

/// A crop as a layout program makes one, and the part that it shows.
struct Crop {
  CropSought sought;
  bool blank;
  GrayPart part;
};

Pixels half_turned(const Pixels &p) {
  Pixels out(p.width, p.height);
  for (int y = 0; y < p.height; ++y)
    for (int x = 0; x < p.width; ++x) std::copy_n(p.at(p.width - 1 - x, p.height - 1 - y), 3, out.at(x, y));
  return out;
}

/// Longer side: such a share of the picture's; any shape from 2:3 to 3:2, packed and toned.
Crop crop_of(const Pixels &p, double least, double most, std::mt19937 &random, const std::string &scratch) {
  const double longer = between(random, least, most) * std::max(p.width, p.height);
  const double shape = std::exp(between(random, -0.4, 0.4));
  double width = shape > 1 ? longer : longer * shape, height = shape > 1 ? longer / shape : longer;
  const double fit = std::min({1.0, p.width / width, p.height / height});
  const int w = static_cast<int>(width * fit), h = static_cast<int>(height * fit);
  const int x = static_cast<int>(between(random, 0, p.width - w)),
            y = static_cast<int>(between(random, 0, p.height - h));
  Pixels made = bench::cut(p, x, y, w, h);
  const double size = std::min(1.0, std::max(between(random, 0.3, 1.0), 120.0 / std::min(w, h)));
  made = bench::resized(made, static_cast<int>(w * size), static_cast<int>(h * size));
  const double gain = between(random, 0.85, 1.15), lift = between(random, -12, 12);
  for (std::uint8_t &value : made.rgb) value = bench::byte(value * gain + lift);
  if (random() % 8 == 0) made = half_turned(made);
  made = bench::through_jpeg(made, 60 + static_cast<int>(random() % 31), scratch);
  const stoneproof::CopyFingerprint print = copy_fingerprint(small(made));
  const double wide = p.width, high = p.height;
  return {CropSought(print), print.blank, {x / wide, y / high, (x + w) / wide, (y + h) / high}};
}

struct Row {
  int made = 0, blank = 0, right = 0, sure = 0, wrong = 0, wrong_sure = 0;
  std::vector<double> off; ///< of the edges, in shares of the crop's side
};

double off_by(const GrayPart &found, const GrayPart &true_part) {
  const double w = true_part.right - true_part.left, h = true_part.bottom - true_part.top;
  return std::max({std::abs(found.left - true_part.left) / w, std::abs(found.right - true_part.right) / w,
                   std::abs(found.top - true_part.top) / h, std::abs(found.bottom - true_part.bottom) / h});
}

std::clock_t searching = 0; ///< time spent so far
std::size_t pairs = 0;

/// The likeliest of all grounds.
std::optional<FoundCrop> search(const std::vector<CropGround> &grounds, const CropSought &sought) {
  const std::clock_t start = std::clock();
  const auto all = find_crops(grounds, sought);
  searching += std::clock() - start, pairs += grounds.size();
  const auto best = std::ranges::max_element(all, {}, &FoundCrop::likeness);
  return best == all.end() ? std::nullopt : std::optional(*best);
}

void print(const char *name, Row row) {
  std::ranges::sort(row.off);
  const auto at = [&](double share) {
    return row.off.empty()
               ? 0.0
               : row.off[static_cast<std::size_t>(share * static_cast<double>(row.off.size() - 1))];
  };
  const int all = std::max(1, row.made - row.blank);
  std::printf("%-14s %6d %6d %7.1f%% %7.1f%% %7d %7d   %.3f %.3f\n", name, row.made, row.blank,
              100.0 * row.right / all, 100.0 * row.sure / all, row.wrong, row.wrong_sure, at(0.5), at(0.95));
}

} // namespace

int main(int count, char **words) {
  if (count < 3) return 2;
  std::vector<Pixels> all, strangers;
  for (int i = 2; i < count; ++i) {
    const bool strange = words[i][0] == '-';
    for (const auto &file : bench::pictures_of(words[i] + strange)) {
      const Pixels p = bench::load(file);
      const int longer = std::max(p.width, p.height);
      (strange ? strangers : all)
          .push_back(longer > 1400 ? bench::resized(p, p.width * 1400 / longer, p.height * 1400 / longer)
                                   : p);
      std::printf("# %zu %s\n", (strange ? strangers : all).size() - 1, file.stem().c_str());
    }
  }
  std::vector<CropGround> grounds;
  for (const Pixels &p : all) grounds.push_back(crop_ground(small(p)));
  std::mt19937 random(11);
  std::printf("%-14s %6s %6s %8s %8s %7s %7s   %s\n", "share of side", "made", "blank", "found", "sure",
              "wrong", "sure", "edges off by, median and 95 %");
  for (const auto &[least, most] :
       {std::pair{0.8, 1.0}, {0.6, 0.8}, {0.45, 0.6}, {0.35, 0.45}, {0.27, 0.35}}) {
    Row row;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Crop crop = crop_of(all[i], least, most, random, words[1]);
      ++row.made, row.blank += crop.blank;
      const auto found = search(grounds, crop.sought);
      if (!found) {
        if (!crop.blank) std::printf("# not found: %zu\n", i);
        continue;
      }
      const bool sure = found->sure(), right = found->ground == i && off_by(found->part, crop.part) < 0.15;
      row.right += right, row.sure += right && sure, row.wrong += !right, row.wrong_sure += !right && sure;
      if (right)
        row.off.push_back(off_by(found->part, crop.part));
      else
        std::printf("# wrong: of %zu in %zu, likeness %.3f, detail %.3f\n", i, found->ground, found->likeness,
                    found->detail);
    }
    char name[32];
    std::snprintf(name, sizeof name, "%.2f to %.2f", least, most);
    print(name, row);
  }
  Row row;
  for (std::size_t i = 0; i < strangers.size(); ++i)
    for (int k = 0; k < 3; ++k) {
      const Crop crop = crop_of(strangers[i], 0.3, 1, random, words[1]);
      ++row.made, row.blank += crop.blank;
      const auto found = search(grounds, crop.sought);
      if (!found) continue;
      ++row.wrong, row.wrong_sure += found->sure();
      std::printf("# wrong: stranger %zu in %zu, likeness %.3f, detail %.3f\n", i, found->ground,
                  found->likeness, found->detail);
    }
  print("strangers", row);
  std::printf("%zu pairs, %.2f ms of a processor each\n", pairs,
              1000.0 * static_cast<double>(searching) / CLOCKS_PER_SEC / static_cast<double>(pairs));
}
