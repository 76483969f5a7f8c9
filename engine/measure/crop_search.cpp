// Finding crops. The only ways in are those of crop_search.h; tested in
// tests/engine/measure/crop_search.test.cpp, scored by tests/bench/detail/crops.sh.
#include "engine/measure/crop_search.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace stoneproof {

namespace {

constexpr int ground_side = 256, coarse_side = 32, smallest_stencil = 8, orientations = 8;
constexpr double size_step = 1.08;
/// Set on the half of the photographs that scores nothing (tests/bench/detail).
constexpr double alike_at_first = 0.65, alike_cells = 0.80, alike_detail = 0.10;
constexpr std::size_t most_places = 4; ///< that are looked at closely

/// The ground at `coarse_side`, with sums for the spread of any part.
struct CoarseGround {
  int width, height;
  std::vector<float> values;
  std::vector<double> sums, squares; ///< of all above and to the left

  explicit CoarseGround(const CropGround &ground);
  double sum(const std::vector<double> &of, int x, int y, int w, int h) const {
    const auto at = [&](int column, int row) {
      return of[static_cast<std::size_t>(row) * static_cast<std::size_t>(width + 1) +
                static_cast<std::size_t>(column)];
    };
    return at(x + w, y + h) - at(x, y + h) - at(x + w, y) + at(x, y);
  }
};

int coarse(int side, const CropGround &ground) {
  return std::max(1, static_cast<int>(std::lround(static_cast<double>(side) * coarse_side /
                                                  std::max(ground.width, ground.height))));
}

CoarseGround::CoarseGround(const CropGround &ground)
    : width(coarse(ground.width, ground)), height(coarse(ground.height, ground)),
      values(GrayCells(ground.small).means({}, width, height)) {
  const auto stride = static_cast<std::size_t>(width + 1);
  sums.resize(stride * static_cast<std::size_t>(height + 1));
  squares.resize(sums.size());
  for (std::size_t y = 1; y <= static_cast<std::size_t>(height); ++y)
    for (std::size_t x = 1; x < stride; ++x) {
      const double value = values[(y - 1) * (stride - 1) + x - 1];
      const std::size_t here = y * stride + x;
      const auto add = [&](std::vector<double> &to, double what) {
        to[here] = what + to[here - 1] + to[here - stride] - to[here - stride - 1];
      };
      add(sums, value), add(squares, value * value);
    }
}

CropSought::Stencil stencil_of(const GrayCells &cells, double aspect, double longer, int orientation) {
  CropSought::Stencil stencil;
  stencil.orientation = orientation;
  stencil.span_x = aspect >= 1 ? longer : longer * aspect;
  stencil.span_y = aspect >= 1 ? longer / aspect : longer;
  stencil.width = std::max(1, static_cast<int>(stencil.span_x + 1e-6));
  stencil.height = std::max(1, static_cast<int>(stencil.span_y + 1e-6));
  // Whole pixels of the ground, from the middle.
  const double x = (1 - std::min(1.0, stencil.width / stencil.span_x)) / 2,
               y = (1 - std::min(1.0, stencil.height / stencil.span_y)) / 2;
  stencil.values = cells.means({x, y, 1 - x, 1 - y}, stencil.width, stencil.height);
  double mean = 0, squares = 0;
  for (const float value : stencil.values) mean += value;
  mean /= static_cast<double>(stencil.values.size());
  for (float &value : stencil.values) value -= static_cast<float>(mean), squares += value * value;
  stencil.norm = std::sqrt(squares);
  return stencil;
}

struct Place {
  double match = 0;
  int orientation = 1;
  GrayPart part;
};

GrayPart part_at(double middle_x, double middle_y, double width, double height) {
  return {middle_x - width / 2, middle_y - height / 2, middle_x + width / 2, middle_y + height / 2};
}

/// The likeliest place of one stencil.
Place likeliest_place(const CoarseGround &ground, const CropSought::Stencil &stencil) {
  constexpr double least_spread = 4; // of 255: less is a plain part, which is like anything
  const int w = stencil.width, h = stencil.height;
  const std::size_t across = static_cast<std::size_t>(ground.width - w) + 1;
  const double pixels = w * h;
  std::vector<float> products(across);
  Place best;
  int best_x = 0, best_y = 0;
  for (int top = 0; top + h <= ground.height; ++top) {
    std::fill(products.begin(), products.end(), 0.0F);
    for (int y = 0; y < h; ++y)
      for (int x = 0; x < w; ++x) {
        const float value = stencil.values[static_cast<std::size_t>(y * w + x)];
        const float *from = ground.values.data() + (top + y) * ground.width + x;
        for (std::size_t u = 0; u < across; ++u) products[u] += value * from[u];
      }
    for (std::size_t u = 0; u < across; ++u) {
      const int left = static_cast<int>(u);
      const double sum = ground.sum(ground.sums, left, top, w, h);
      const double spread = ground.sum(ground.squares, left, top, w, h) - sum * sum / pixels;
      if (spread < least_spread * least_spread * pixels) continue;
      const double match = products[u] / (stencil.norm * std::sqrt(spread));
      if (match > best.match) best.match = match, best_x = left, best_y = top;
    }
  }
  best.orientation = stencil.orientation;
  best.part = part_at((best_x + w / 2.0) / ground.width, (best_y + h / 2.0) / ground.height,
                      stencil.span_x / ground.width, stencil.span_y / ground.height);
  return best;
}

bool same_place(const Place &one, const Place &other) {
  const auto near = [](double a, double b, double size) { return std::abs(a - b) < 0.1 * size; };
  const double width = one.part.right - one.part.left, height = one.part.bottom - one.part.top;
  return one.orientation == other.orientation && near(one.part.left, other.part.left, width) &&
         near(one.part.right, other.part.right, width) && near(one.part.top, other.part.top, height) &&
         near(one.part.bottom, other.part.bottom, height);
}

/// Which of Exif's orientations are tried.
enum class Turns { none, others };

std::vector<Place> likeliest_places(const CropGround &ground, const CropSought &crop, Turns turns) {
  const CoarseGround small(ground);
  std::vector<Place> all, places;
  for (const auto &stencil : crop.stencils()) {
    if ((stencil.orientation == 1) != (turns == Turns::none)) continue;
    if (stencil.width > small.width || stencil.height > small.height) continue;
    if (const Place place = likeliest_place(small, stencil); place.match >= alike_at_first)
      all.push_back(place);
  }
  std::ranges::sort(all, std::ranges::greater(), &Place::match);
  for (const Place &place : all) {
    if (places.size() == most_places) break;
    if (std::ranges::none_of(places, [&](const Place &known) { return same_place(known, place); }))
      places.push_back(place);
  }
  return places;
}

/// The part of the ground round a place, as a small gray picture.
struct Surroundings {
  GrayPart part;
  SmallGray gray;
};

Surroundings surroundings_of(const GrayCells &ground, const GrayPart &place) {
  constexpr double margin = 0.15;
  const double x = margin * (place.right - place.left), y = margin * (place.bottom - place.top);
  Surroundings round;
  round.part = {std::max(0.0, place.left - x), std::max(0.0, place.top - y), std::min(1.0, place.right + x),
                std::min(1.0, place.bottom + y)};
  const auto means = ground.means(round.part, SmallGray::side, SmallGray::side);
  for (std::size_t i = 0; i < means.size(); ++i)
    round.gray.pixels[i] = static_cast<std::uint8_t>(std::clamp(means[i] + 0.5F, 0.0F, 255.0F));
  return round;
}

GrayPart within(const GrayPart &part, const GrayPart &outer) {
  const double width = outer.right - outer.left, height = outer.bottom - outer.top;
  return {(part.left - outer.left) / width, (part.top - outer.top) / height,
          (part.right - outer.left) / width, (part.bottom - outer.top) / height};
}

GrayPart out_of(const GrayPart &part, const GrayPart &outer) {
  const double width = outer.right - outer.left, height = outer.bottom - outer.top;
  return {outer.left + part.left * width, outer.top + part.top * height, outer.left + part.right * width,
          outer.top + part.bottom * height};
}

/// What is left of each cell without the mean of the 5 x 5 round it.
GrayCells::Cells detail_of(const GrayCells::Cells &cells) {
  constexpr int side = GrayCells::side, reach = 2;
  GrayCells::Cells out;
  for (int y = 0; y < side; ++y)
    for (int x = 0; x < side; ++x) {
      float sum = 0, count = 0;
      for (int v = std::max(0, y - reach); v <= std::min(side - 1, y + reach); ++v)
        for (int u = std::max(0, x - reach); u <= std::min(side - 1, x + reach); ++u)
          sum += cells[static_cast<std::size_t>(v * side + u)], ++count;
      const auto here = static_cast<std::size_t>(y * side + x);
      out[here] = cells[here] - sum / count;
    }
  return out;
}

/// Moves and scales a part by ever smaller steps as long as it comes to look more like what is wanted.
GrayPart climbed(const GrayCells &ground, const GrayCells::Cells &wanted, GrayPart part, double &alike) {
  constexpr double hopeless = 0.5, first_step = 0.08;
  const auto inside = [](const GrayPart &p) {
    return p.left >= 0 && p.top >= 0 && p.right <= 1 && p.bottom <= 1;
  };
  alike = -1;
  part = {std::max(0.0, part.left), std::max(0.0, part.top), std::min(1.0, part.right),
          std::min(1.0, part.bottom)};
  for (double step = first_step; step > first_step / 10 && (step == first_step || alike > hopeless);
       step /= 2)
    for (bool moved = true; moved;) {
      moved = false;
      const double x = step * (part.right - part.left), y = step * (part.bottom - part.top);
      const GrayPart around[] = {
          part,
          {part.left - x, part.top, part.right - x, part.bottom},
          {part.left + x, part.top, part.right + x, part.bottom},
          {part.left, part.top - y, part.right, part.bottom - y},
          {part.left, part.top + y, part.right, part.bottom + y},
          {part.left - x / 2, part.top - y / 2, part.right + x / 2, part.bottom + y / 2},
          {part.left + x / 2, part.top + y / 2, part.right - x / 2, part.bottom - y / 2}};
      for (const GrayPart &next : around) {
        if (!inside(next)) continue;
        const double match = correlation(ground.of(next), wanted);
        if (match > alike + 1e-6) alike = match, moved = &next != &around[0], part = next;
      }
    }
  return part;
}

/// The likeliest part of one ground.
std::optional<FoundCrop> find_crop(const CropGround &ground, const CropSought &crop, Turns turns) {
  std::optional<FoundCrop> found;
  const auto places = likeliest_places(ground, crop, turns);
  if (places.empty()) return found;
  const GrayCells fine(ground.gray.data(), ground.width, ground.height);
  for (const Place &place : places) {
    const Surroundings round = surroundings_of(fine, place.part);
    if (is_blank(round.gray)) continue;
    const SmallGray &wanted = crop.turned(place.orientation);
    const GrayCells cells(round.gray);
    const GrayCells::Cells wanted_cells = GrayCells(wanted).of({});
    double alike = 0;
    const GrayPart part = climbed(cells, wanted_cells, within(place.part, round.part), alike);
    if (alike < alike_cells || correlation(detail_of(cells.of(part)), detail_of(wanted_cells)) < alike_detail)
      continue;
    const auto aligned = align_copies(round.gray, wanted, part);
    if (!aligned || aligned->likeness < found_likeness || aligned->detail < found_detail) continue;
    const FoundCrop here{0, out_of(aligned->part, round.part), place.orientation, aligned->likeness,
                         aligned->detail};
    const bool likelier =
        !found || (here.sure() != found->sure() ? here.sure() : here.likeness > found->likeness);
    if (likelier) found = here;
  }
  return found;
}

} // namespace

CropGround crop_ground(const SmallPicture &picture) {
  CropGround ground;
  if (picture.width < 1 || picture.height < 1) return ground;
  const double scale =
      std::min(1.0, ground_side / static_cast<double>(std::max(picture.width, picture.height)));
  const auto side = [&](int pixels) { return std::max(1, static_cast<int>(std::lround(pixels * scale))); };
  ground.width = side(picture.width), ground.height = side(picture.height);
  ground.gray = gray_means(picture, ground.width, ground.height);
  ground.small = copy_fingerprint(picture).gray;
  return ground;
}

CropSought::CropSought(const CopyFingerprint &print) {
  if (print.blank) return;
  for (int o = 1; o <= orientations; ++o) {
    SmallGray &gray = turned_[static_cast<std::size_t>(o - 1)];
    gray = print.gray.turned(o);
    const GrayCells cells(gray);
    for (double longer = smallest_stencil; longer <= coarse_side; longer *= size_step)
      stencils_.push_back(stencil_of(cells, o > 4 ? 1 / print.aspect : print.aspect, longer, o));
  }
}

std::vector<FoundCrop> find_crops(const std::vector<CropGround> &grounds, const CropSought &crop) {
  std::vector<FoundCrop> all;
  for (const Turns turns : {Turns::none, Turns::others}) {
    for (std::size_t i = 0; i < grounds.size(); ++i) {
      if (grounds[i].gray.empty()) continue; // it could not be read
      auto found = find_crop(grounds[i], crop, turns);
      if (!found) continue;
      found->ground = i;
      all.push_back(*found);
    }
    if (std::ranges::any_of(all, &FoundCrop::sure)) break;
  }
  return all;
}

} // namespace stoneproof
