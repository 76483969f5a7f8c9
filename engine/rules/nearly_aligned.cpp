// An edge of a frame misses the line of others by a little. The only way in is nearly_aligned_rule; tested by
// tests/rules/nearly-aligned.
#include "engine/rules/layout.h"

#include <map>

namespace stoneproof {

namespace {

constexpr Length near_miss = Length::of_ticks(Length::ticks_per_mm); ///< farther off is meant: our own choice

/// Frames of a row or column stand no farther from each other. Our own choice: room for a caption and more.
constexpr Length beside = Length::of_ticks(Length::ticks_per_mm * 25);

Length edge_of(const Rect &box, PageSide side) {
  switch (side) {
  case PageSide::top: return box.top();
  case PageSide::bottom: return box.bottom();
  case PageSide::left: return box.left();
  case PageSide::right: return box.right();
  case PageSide::fold: break;
  }
  return {};
}

bool is_across(PageSide side) { return side == PageSide::left || side == PageSide::right; }

/// Extent of a box across the direction of an edge (the width, for a left edge), and along it.
struct Extent {
  Length begin, end;
  Length length() const { return end - begin; }
};
Extent across(const Rect &box, PageSide side) {
  return is_across(side) ? Extent{box.left(), box.right()} : Extent{box.top(), box.bottom()};
}
Extent along(const Rect &box, PageSide side) {
  return is_across(side) ? Extent{box.top(), box.bottom()} : Extent{box.left(), box.right()};
}

bool same(Length a, Length b) { return std::max(a - b, b - a) <= hair; }
Length difference(Length a, Length b) { return std::max(a - b, b - a); }

/// One frame's edge of one kind.
struct EdgeAt {
  Length at;
  std::size_t frame = 0; ///< index into the page's frames
};

/// Frames that follow each other along a line, and whose edges are one within a hair.
struct Line {
  Length at;
  std::vector<std::size_t> frames; ///< in the order in which they stand along it
};

class PageCheck {
public:
  PageCheck(const Evidence &evidence, const Page &page, std::span<const PlacedFrame> frames)
      : space_(evidence.space_of(frames.front())), cut_(evidence.press.cut_tolerance) {
    for (std::size_t i = 0; i < frames.size(); ++i) {
      boxes_.push_back(frames[i].box);
      printed_.push_back(printed_box(evidence, frames[i]));
      if (is_upright(page.frames[i]) && !off_page(printed_.back(), space_)) upright_.push_back(i);
    }
  }

  /// For each two frames the sides of the first that miss those of the other, and by how much at most.
  struct Miss {
    std::vector<PageSide> sides;
    Length by;
  };
  using Misses = std::map<std::pair<std::size_t, std::size_t>, Miss>;

  Misses misses() const {
    Misses all;
    for (const PageSide side : page_sides) {
      std::vector<EdgeAt> edges = edges_of(side);
      // Edges less than a near miss apart, one by one, are looked at together.
      for (auto first = edges.begin(); first != edges.end();) {
        auto last = first + 1;
        while (last != edges.end() && last->at - (last - 1)->at < near_miss) ++last;
        note_misses({first, last}, side, all);
        first = last;
      }
    }
    return all;
  }

private:
  /// Sorted. An edge that is cut, or nearly so, aligns with nothing; one that the picture inside the frame
  /// does not reach is not seen.
  std::vector<EdgeAt> edges_of(PageSide side) const {
    std::vector<EdgeAt> edges;
    for (const std::size_t frame : upright_) {
      const Rect &box = boxes_[frame];
      const bool seen = difference(edge_of(box, side), edge_of(printed_[frame], side)) <= layout_rounding;
      if (seen && -reach_past(box, space_.trim).at(side) > std::max(cut_, layout_rounding))
        edges.push_back({edge_of(box, side), frame});
    }
    std::sort(edges.begin(), edges.end(), [](const EdgeAt &a, const EdgeAt &b) {
      return std::pair(a.at, a.frame) < std::pair(b.at, b.frame);
    });
    return edges;
  }

  /// The line with most edges within a hair; of two alike that of the frame that was drawn first.
  Line line_of(std::span<const EdgeAt> edges, PageSide side) const {
    EdgeAt best = edges.front();
    std::size_t most = 0, from = 0, to = 0;
    for (const EdgeAt &edge : edges) {
      while (edge.at - edges[from].at > hair) ++from;
      while (to < edges.size() && edges[to].at - edge.at <= hair) ++to;
      if (to - from < most || (to - from == most && edge.frame > best.frame)) continue;
      most = to - from;
      best = edge;
    }
    Line line{best.at, {}};
    for (const EdgeAt &edge : edges)
      if (same(edge.at, line.at)) line.frames.push_back(edge.frame);
    std::sort(line.frames.begin(), line.frames.end(), [&](std::size_t a, std::size_t b) {
      return std::pair(along(boxes_[a], side).begin, a) < std::pair(along(boxes_[b], side).begin, b);
    });
    return line;
  }

  void note_misses(std::span<const EdgeAt> edges, PageSide side, Misses &all) const {
    if (edges.size() < 2 || same(edges.front().at, edges.back().at)) return;
    const Line line = line_of(edges, side);
    for (const EdgeAt &edge : edges) {
      const Length by = difference(edge.at, line.at);
      if (by <= hair || by >= near_miss) continue;
      const auto other = partner(edge.frame, line, side);
      if (!other) continue;
      Miss &miss = all[{edge.frame, *other}];
      miss.sides.push_back(side);
      miss.by = std::max(miss.by, by);
    }
  }

  /// The nearest frame of a line that another one was meant to align with: of those that stand next before
  /// and behind it.
  std::optional<std::size_t> partner(std::size_t frame, const Line &line, PageSide side) const {
    const auto place =
        std::lower_bound(line.frames.begin(), line.frames.end(), frame, [&](std::size_t a, std::size_t b) {
          return std::pair(along(boxes_[a], side).begin, a) < std::pair(along(boxes_[b], side).begin, b);
        });
    std::optional<std::pair<Length, std::size_t>> best;
    for (const auto at : {place - (place != line.frames.begin()), place}) {
      if (at == line.frames.end()) continue;
      const Length gap = gap_between(boxes_[frame], boxes_[*at], side);
      if (gap < -layout_rounding || !meant(boxes_[frame], boxes_[*at], gap, side)) continue;
      if (!best || std::pair(gap, *at) < *best) best = {gap, *at};
    }
    return best ? std::optional(best->second) : std::nullopt;
  }

  static Length gap_between(const Rect &a, const Rect &b, PageSide side) {
    const Extent one = along(a, side), other = along(b, side);
    return std::max(one.begin - other.end, other.begin - one.end);
  }

  /// Neighbours, or frames that are of one size across the line or meet another line together.
  static bool meant(const Rect &a, const Rect &b, Length gap, PageSide side) {
    const Extent one = across(a, side), other = across(b, side);
    return gap <= beside || same(one.length(), other.length()) || same(one.begin, other.begin) ||
           same(one.end, other.end);
  }

  const PageSpace &space_;
  Length cut_;
  std::vector<Rect> boxes_, printed_;
  std::vector<std::size_t> upright_;
};

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  each_page(evidence, [&](std::size_t, const Page &page, std::span<const PlacedFrame> frames) {
    if (frames.size() < 2) return;
    const auto misses = PageCheck(evidence, page, frames).misses();
    for (const auto &[pair, miss] : misses) {
      Finding finding = about_frame(Grade::query, evidence, frames[pair.first]);
      finding.with_frame = pair.second;
      finding.sides = miss.sides;
      finding.measured = miss.by;
      finding.wanted = Length{};
      findings.push_back(std::move(finding));
    }
  });
}

} // namespace

extern const Rule nearly_aligned_rule = {
    "nearly-aligned",
    Grade::query,
    "Frame misses a line by a little",
    "Two pictures that were meant to stand in one line and miss it by half a millimetre look careless: "
    "the eye finds such a step at once.",
    "Edges of one kind (two left ones, two top ones) of upright frames of a page that stand one after "
    "another: they differ by more than a hair, 0.1 mm, and by less than 1 mm. The line that most edges "
    "keep counts, of two the one drawn first. The frames are neighbours, no more than 25 mm apart, or one "
    "in size or in the opposite edge. Left alone: frames over each other, edges that are cut or nearly "
    "so, edges that the picture inside its frame does not reach. All figures are our own choice.",
    "Move or size the frame until both edges are at the same place. If the step is meant, make it plain.",
    check,
};

} // namespace stoneproof
