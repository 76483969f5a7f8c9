// A path by its box, and by its corners while it may be a rectangle. The only way in is Path; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/graphics_state.h"

#include <algorithm>
#include <cmath>

namespace stoneproof::finished {

namespace {

double distance(Spot one, Spot other) { return std::hypot(one.x - other.x, one.y - other.y); }

/// Within the rounding of the decimals that programs write.
bool same(Spot one, Spot other) { return distance(one, other) < 1e-3; }

bool convex(const Outline &corners) {
  int left = 0, right = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Spot a = corners[i], b = corners[(i + 1) % corners.size()], c = corners[(i + 2) % corners.size()];
    const double turn = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
    left += turn > 0;
    right += turn < 0;
  }
  return left == 0 || right == 0;
}

} // namespace

void Path::reach(Spot at) {
  last_ = at;
  if (!box_) box_ = Box{at.x, at.y, at.x, at.y};
  box_->left = std::min(box_->left, at.x);
  box_->right = std::max(box_->right, at.x);
  box_->bottom = std::min(box_->bottom, at.y);
  box_->top = std::max(box_->top, at.y);
}

void Path::move_to(Spot at) {
  // The point of a figure that has none but this is moved along.
  if (corners_.size() == 1 && figures_ == 1 && plain_) {
    corners_.clear();
    figures_ = 0;
    box_.reset();
  }
  reach(at);
  ++figures_;
  if (figures_ == 1) corners_ = {at};
}

void Path::line_to(Spot at) {
  if (empty()) return move_to(at);
  reach(at);
  if (corners_.size() == 4 && same(at, corners_[0])) return;
  if (corners_.size() >= 4)
    plain_ = false;
  else
    corners_.push_back(at);
}

void Path::curve_to(Spot one, Spot two, Spot at) {
  plain_ = false;
  reach(one);
  reach(two);
  reach(at);
}

bool Path::four_sided() const { return plain_ && figures_ == 1 && corners_.size() == 4 && convex(corners_); }

Outline Path::outline() const {
  if (!box_) return {};
  return four_sided() ? corners_ : outline_of(*box_, {});
}

std::optional<double> Path::thickness() const {
  if (!four_sided()) return std::nullopt;
  return std::min(distance(corners_[0], corners_[1]), distance(corners_[1], corners_[2]));
}

} // namespace stoneproof::finished
