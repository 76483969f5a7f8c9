// Frames of exported copies -> frames of the files behind them. The only way in is with_masters; tested in
// tests/engine/run/with_masters.test.cpp.
#include "engine/run/with_masters.h"

#include "engine/import/layout_of.h"
#include "engine/picture/orientation.h"

#include <fmt/format.h>

#include <cmath>
#include <map>
#include <utility>

namespace stoneproof {

namespace {

using finished::Matrix;
using finished::Spot;

/// Both stored and seen in shares of the sides.
Spot stored(Spot seen, int orientation) {
  const PixelRect at = Orientation(orientation).stored_part({seen.x, seen.y, 0, 0}, {1, 1});
  return {at.x, at.y};
}
Spot seen(Spot stored, int orientation) {
  const PixelRect at = Orientation(orientation).seen_part({stored.x, stored.y, 0, 0}, {1, 1});
  return {at.x, at.y};
}

Spot spot(Point point) { return {point.x.pt(), point.y.pt()}; }

/// Where a place of the master as it is seen lies on the page, in points.
class Way {
public:
  Way(const Master &master, int orientation, const PlacedFrame &placed)
      : master_(master), orientation_(orientation), placed_(placed) {}

  Spot to_page(Spot at) const {
    const Spot whole = stored(at, master_.orientation);
    const auto width = static_cast<double>(master_.size.width),
               height = static_cast<double>(master_.size.height);
    const Spot part = {(whole.x * width - master_.part.x) / master_.part.width,
                       (whole.y * height - master_.part.y) / master_.part.height};
    const Spot copy = seen(stored(part, master_.turned), orientation_);
    const Spot corner = spot(placed_.picture_corners[0]), right = spot(placed_.picture_corners[1]),
               below = spot(placed_.picture_corners[3]);
    return {corner.x + copy.x * (right.x - corner.x) + copy.y * (below.x - corner.x),
            corner.y + copy.x * (right.y - corner.y) + copy.y * (below.y - corner.y)};
  }

  /// Of the unit square with y upwards, as laying_of takes it.
  Matrix matrix() const {
    const Spot origin = to_page({0, 1}), right = to_page({1, 1}), top = to_page({0, 0});
    return {right.x - origin.x, right.y - origin.y, top.x - origin.x, top.y - origin.y, origin.x, origin.y};
  }

private:
  const Master &master_;
  int orientation_; ///< of the copy
  const PlacedFrame &placed_;
};

/// The way to a file from a folder; whatever links lead to them, the system finds it.
std::filesystem::path from(const std::filesystem::path &folder, const std::filesystem::path &file) {
  std::error_code ignored;
  const auto real = [&](const std::filesystem::path &path) {
    return std::filesystem::weakly_canonical(path.empty() ? "." : path, ignored);
  };
  const auto whole = real(file.parent_path()) / file.filename();
  const auto way = whole.lexically_relative(real(folder));
  return way.empty() ? whole : way;
}

/// What a crop was found to leave at an edge is nothing, where that is less than it is found to within.
CropShare settled(CropShare crop) {
  constexpr double found_within = 0.002;
  const auto settle = [](double &from, double &size) {
    if (std::abs(from) < found_within) size += from, from = 0;
    if (std::abs(from + size - 1) < found_within) size = 1 - from;
  };
  settle(crop.x, crop.width);
  settle(crop.y, crop.height);
  return crop;
}

/// The frame with the file in place of the copy; none where the file does not hold all that it shows.
std::optional<Frame> exchanged(const Frame &frame, const PlacedFrame &placed, const Master &master,
                               int orientation) {
  constexpr double nearly_all = 0.985; // of its area: a crop is found to within less
  if (!placed.laid) return std::nullopt;
  const Way way(master, orientation, placed);
  finished::Outline visible;
  for (const Point &corner : placed.corners) visible.push_back(spot(corner));
  const auto laying = finished::laying_of(way.matrix(), visible, 1);
  if (!laying) return std::nullopt;
  const auto area = [](const Rect &rect) { return rect.width.mm() * rect.height.mm(); };
  if (area(laying->rect) < nearly_all * area(frame.rect)) return std::nullopt;
  Frame made = frame;
  made.rect = laying->rect;
  made.turn = laying->turn;
  made.mirror = laying->mirror;
  made.fit = settled(laying->crop);
  return made;
}

class Exchange {
public:
  Exchange(const Evidence &evidence, const std::filesystem::path &searched,
           const std::filesystem::path &description)
      : evidence_(evidence), searched_(searched), description_(description), made_{evidence.book, 0, 0} {}

  BookOfMasters made() {
    made_.book.pictures.clear();
    made_.pictures = evidence_.book.pictures.size();
    std::vector<std::vector<const PlacedFrame *>> frames(made_.pictures);
    for (const PlacedFrame &placed : evidence_.frames)
      if (placed.picture) frames[*placed.picture].push_back(&placed);
    for (std::size_t copy = 0; copy < made_.pictures; ++copy) exchange(copy, frames[copy]);
    return std::move(made_);
  }

private:
  /// In all frames of the copy, or in none.
  void exchange(std::size_t copy, const std::vector<const PlacedFrame *> &frames) {
    const Master *master = evidence_.master_of(copy);
    const auto &facts = evidence_.pictures[copy].facts;
    std::vector<Frame> others;
    if (master && master->sure && facts)
      for (const PlacedFrame *placed : frames)
        if (auto frame = exchanged(frame_of(*placed), *placed, *master, facts->orientation))
          others.push_back(std::move(*frame));
    const bool whole = !frames.empty() && others.size() == frames.size();
    made_.found += whole;
    const std::size_t picture = whole ? picture_of(copy, *master) : kept(copy);
    for (std::size_t i = 0; i < frames.size(); ++i) {
      if (whole) frame_of(*frames[i]) = std::move(others[i]);
      frame_of(*frames[i]).picture = picture;
    }
  }

  Frame &frame_of(const PlacedFrame &placed) { return made_.book.pages[placed.page].frames[placed.frame]; }

  /// Once for all pictures that were made from one file.
  std::size_t picture_of(std::size_t copy, const Master &master) {
    const auto [found, added] = of_file_.emplace(master.file, made_.book.pictures.size());
    if (!added) return found->second;
    Picture picture = evidence_.book.pictures[copy];
    picture.file = from(description_, master.file).generic_string();
    picture.profile.clear();
    picture.contributor = contributor_of(master.file);
    made_.book.pictures.push_back(std::move(picture));
    return found->second;
  }

  std::size_t kept(std::size_t copy) {
    made_.book.pictures.push_back(evidence_.book.pictures[copy]);
    return made_.book.pictures.size() - 1;
  }

  std::optional<std::size_t> contributor_of(const std::filesystem::path &file) {
    const auto within = from(searched_, file);
    // In no folder of somebody's.
    if (std::distance(within.begin(), within.end()) < 2 || *within.begin() == "..") return std::nullopt;
    const std::string name = within.begin()->string();
    auto &contributors = made_.book.contributors;
    const auto [found, added] = contributor_.emplace(name, contributors.size());
    if (added) contributors.push_back({fmt::format("c{}", contributors.size() + 1), name, {}, {}});
    return found->second;
  }

  const Evidence &evidence_;
  const std::filesystem::path &searched_, &description_;
  BookOfMasters made_;
  std::map<std::string, std::size_t> of_file_, contributor_;
};

} // namespace

BookOfMasters with_masters(const Evidence &evidence, const std::filesystem::path &searched,
                           const std::filesystem::path &description) {
  return Exchange(evidence, searched, description).made();
}

} // namespace stoneproof
