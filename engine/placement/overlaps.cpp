// A sweep over boxes, and the clipping of a turned box by an upright one. The only ways in are the functions
// of overlaps.h; tested in tests/engine/placement/overlaps.test.cpp.
#include "engine/placement/overlaps.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <vector>

namespace stoneproof {

namespace {

struct Item {
  Rect box;
  std::size_t place = 0; ///< in its list
  std::size_t list = 0;  ///< 0: ones, 1: others
};

/// Intervals from top to bottom of the boxes that the sweep stands in. A box meets those that begin between
/// its ends, found in the order of their tops, and those that are there where it begins, found in a tree over
/// all heights, whose nodes hold what spans them wholly.
class Standing {
public:
  Standing(const std::vector<Item> &items, const std::vector<Length> &heights)
      : items_(items), heights_(heights), nodes_(2 * heights.size()), gone_(items.size()) {}

  void add(std::size_t item) {
    const Rect &box = items_[item].box;
    tops_.emplace(box.top(), item);
    std::size_t from = leaf(box.top()), to = leaf(box.bottom());
    for (; from < to; from /= 2, to /= 2) {
      if (from % 2 == 1) nodes_[from++].push_back(item);
      if (to % 2 == 1) nodes_[--to].push_back(item);
    }
  }

  void remove(std::size_t item) {
    gone_[item] = true;
    tops_.erase({items_[item].box.top(), item});
  }

  template <class Found>
  void each_beside(const Rect &box, Found found) {
    std::size_t left = most_overlaps;
    for (std::size_t node = leaf(box.top()); node > 0; node /= 2) {
      auto &spanning = nodes_[node];
      for (std::size_t i = 0; i < spanning.size();) {
        if (gone_[spanning[i]]) { // only now, so that each is taken out once
          spanning[i] = spanning.back();
          spanning.pop_back();
          continue;
        }
        if (left-- == 0) return;
        found(spanning[i++]);
      }
    }
    constexpr auto last = static_cast<std::size_t>(-1);
    for (auto at = tops_.upper_bound({box.top(), last}); at != tops_.end() && at->first < box.bottom();
         ++at) {
      if (left-- == 0) return;
      found(at->second);
    }
  }

private:
  std::size_t leaf(Length height) const {
    const auto at = std::lower_bound(heights_.begin(), heights_.end(), height);
    return heights_.size() + static_cast<std::size_t>(at - heights_.begin());
  }

  const std::vector<Item> &items_;
  const std::vector<Length> &heights_;
  std::vector<std::vector<std::size_t>> nodes_;
  std::vector<bool> gone_;
  std::set<std::pair<Length, std::size_t>> tops_;
};

void add_items(std::vector<Item> &items, std::span<const Rect> boxes, std::size_t list) {
  for (std::size_t i = 0; i < boxes.size(); ++i)
    if (boxes[i].width > Length{} && boxes[i].height > Length{}) items.push_back({boxes[i], i, list});
}

/// Where the sweep meets a box: boxes end before others begin at the same place.
struct Edge {
  Length at;
  bool begins = false;
  std::size_t item = 0;
  auto operator<=>(const Edge &) const = default;
};

template <class Meet>
void sweep(const std::vector<Item> &items, Meet meet) {
  std::vector<Length> heights;
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Rect &box = items[i].box;
    heights.insert(heights.end(), {box.top(), box.bottom()});
    edges.push_back({box.left(), true, i});
    edges.push_back({box.right(), false, i});
  }
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
  std::sort(edges.begin(), edges.end());
  meet(edges, heights);
}

/// Keeps the part of a polygon where `depth`, a length in ticks along an axis, is not negative.
template <class Depth>
std::vector<Point> kept(const std::vector<Point> &shape, Depth depth) {
  std::vector<Point> part;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const Point from = shape[i], to = shape[(i + 1) % shape.size()];
    const double a = static_cast<double>(depth(from).ticks()), b = static_cast<double>(depth(to).ticks());
    if (a >= 0) part.push_back(from);
    if ((a < 0) == (b < 0)) continue;
    const double along = a / (a - b);
    part.push_back({from.x + (to.x - from.x) * along, from.y + (to.y - from.y) * along});
  }
  return part;
}

double area_of(const std::vector<Point> &shape) {
  double twice = 0;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const Point a = shape[i], b = shape[(i + 1) % shape.size()];
    twice += a.x.mm() * b.y.mm() - b.x.mm() * a.y.mm();
  }
  return std::abs(twice) / 2;
}

} // namespace

void each_overlap(std::span<const Rect> boxes, const Overlapping &call) {
  std::vector<Item> items;
  add_items(items, boxes, 0);
  if (items.size() < 2) return;
  sweep(items, [&](const std::vector<Edge> &edges, const std::vector<Length> &heights) {
    Standing standing(items, heights);
    for (const Edge &edge : edges) {
      if (!edge.begins) {
        standing.remove(edge.item);
        continue;
      }
      standing.each_beside(items[edge.item].box, [&](std::size_t other) {
        const auto [first, second] = std::minmax(items[edge.item].place, items[other].place);
        call(first, second);
      });
      standing.add(edge.item);
    }
  });
}

void each_overlap(std::span<const Rect> ones, std::span<const Rect> others, const Overlapping &call) {
  if (ones.empty() || others.empty()) return;
  std::vector<Item> items;
  add_items(items, ones, 0);
  add_items(items, others, 1);
  sweep(items, [&](const std::vector<Edge> &edges, const std::vector<Length> &heights) {
    Standing standing[] = {{items, heights}, {items, heights}};
    for (const Edge &edge : edges) {
      const Item &item = items[edge.item];
      if (!edge.begins) {
        standing[item.list].remove(edge.item);
        continue;
      }
      standing[1 - item.list].each_beside(item.box, [&](std::size_t other) {
        item.list == 0 ? call(item.place, items[other].place) : call(items[other].place, item.place);
      });
      standing[item.list].add(edge.item);
    }
  });
}

SharedPart shared_part(const Corners &shape, const Rect &rect) {
  std::vector<Point> part(shape.begin(), shape.end());
  part = kept(part, [&](Point point) { return point.x - rect.left(); });
  part = kept(part, [&](Point point) { return rect.right() - point.x; });
  part = kept(part, [&](Point point) { return point.y - rect.top(); });
  part = kept(part, [&](Point point) { return rect.bottom() - point.y; });
  if (part.empty()) return {};
  const double whole = rect.width.mm() * rect.height.mm();
  return {box_round(part), whole > 0 ? std::min(1.0, area_of(part) / whole) : 0};
}

Length distance_between(const Rect &a, const Rect &b) {
  const Length across = std::max({Length{}, a.left() - b.right(), b.left() - a.right()});
  const Length down = std::max({Length{}, a.top() - b.bottom(), b.top() - a.bottom()});
  return Length::nearest(std::hypot(static_cast<double>(across.ticks()), static_cast<double>(down.ticks())));
}

} // namespace stoneproof
