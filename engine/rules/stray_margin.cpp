// The text area or the page number of a page misses the place that the other pages of its side keep. The only
// way in is stray_margin_rule; tested by tests/rules/stray-margin.
#include "engine/rules/margin_run.h"

#include <array>

namespace stoneproof {

namespace {

/// Text of one page, or of one half of a spread. Margins are those of that page.
struct Area {
  std::size_t page = 0;
  Side side = Side::right;
  bool of_spread = false;
  std::array<Length, 4> margins;    ///< by PageSide
  std::array<std::size_t, 4> texts; ///< which text block ends there

  PageSide outside() const { return side == Side::left ? PageSide::left : PageSide::right; }
  PageSide inside() const { return side == Side::left ? PageSide::right : PageSide::left; }
  Length at(PageSide which) const { return margins[static_cast<std::size_t>(which)]; }
  std::size_t text_at(PageSide which) const { return texts[static_cast<std::size_t>(which)]; }
  /// The side of the page or spread that a side of this page is.
  PageSide on_surface(PageSide which) const {
    return of_spread && which == inside() ? PageSide::fold : which;
  }
};

/// Adds a text to the area that it stands in, or begins one. `trim` is that of its own page, in coordinates
/// of the surface.
void add_text(std::optional<Area> &area, const Area &empty, const Rect &trim, const Rect &box,
              std::size_t text) {
  const Reach reach = reach_past(box, trim);
  const bool first = !area;
  if (first) area = empty;
  for (const PageSide side : page_sides) {
    const auto index = static_cast<std::size_t>(side);
    if (!first && -reach.at(side) >= area->margins[index]) continue;
    area->margins[index] = -reach.at(side);
    area->texts[index] = text;
  }
}

using Halves = std::array<std::optional<Area>, 2>; ///< by Side

/// The areas of a page's texts of one kind. A text that leaves its page belongs to other rules.
Halves areas_of(const Page &page, std::size_t at, const PageSpace &space, TextKind kind) {
  Halves halves;
  for (std::size_t text = 0; text < page.texts.size(); ++text) {
    const TextBlock &block = page.texts[text];
    if (block.kind != kind || block.text.empty()) continue;
    Rect trim = space.trim;
    Side side = space.bound == PageSide::right ? Side::left : Side::right;
    if (space.fold) {
      side = block.rect.centre().x > *space.fold ? Side::right : Side::left;
      trim.width = *space.fold;
      if (side == Side::right) trim.x = *space.fold;
    }
    const Reach reach = reach_past(block.rect, trim);
    if (std::max({reach.top, reach.bottom, reach.left, reach.right}) > layout_rounding) continue;
    auto &half = halves[static_cast<std::size_t>(side)];
    if (half && kind == TextKind::page_number) continue; // the first one counts
    add_text(half, {at, side, space.fold.has_value(), {}, {}}, trim, block.rect, text);
  }
  return halves;
}

/// All areas of one kind on one side of the book. A page of its own size has margins of its own.
std::vector<Area> areas_of(const Evidence &evidence, TextKind kind, Side side) {
  std::vector<Area> areas;
  for (std::size_t at = 0; at < evidence.book.pages.size(); ++at) {
    const Page &page = evidence.book.pages[at];
    if (page.kind == PageKind::cover || (page.trim && *page.trim != evidence.book.trim)) continue;
    const Halves halves = areas_of(page, at, evidence.spaces[at], kind);
    if (const auto &area = halves[static_cast<std::size_t>(side)]) areas.push_back(*area);
  }
  return areas;
}

template <class Margin>
MarginRun run_of(const std::vector<Area> &areas, Margin margin) {
  std::vector<Length> margins;
  margins.reserve(areas.size());
  for (const Area &area : areas) margins.push_back(margin(area));
  return MarginRun(std::move(margins));
}

/// One side of one area that strays: the margin that it has, and the one that was to be.
struct Stray {
  PageSide side;
  Length measured, wanted;
  Length by() const { return std::max(measured - wanted, wanted - measured); }
};

void report(const Evidence &evidence, const Area &area, const std::vector<Stray> &strays,
            std::vector<Finding> &findings) {
  if (strays.empty()) return;
  const auto worst = std::min_element(strays.begin(), strays.end(), [](const Stray &a, const Stray &b) {
    return a.by() != b.by() ? a.by() > b.by() : a.measured < b.measured;
  });
  Finding finding = about_text(Grade::query, evidence, area.page, area.text_at(worst->side));
  for (const Stray &stray : strays) finding.sides.push_back(area.on_surface(stray.side));
  finding.measured = worst->measured;
  finding.wanted = worst->wanted;
  findings.push_back(std::move(finding));
}

void check_areas(const Evidence &evidence, Side side, std::vector<Finding> &findings) {
  const std::vector<Area> areas = areas_of(evidence, TextKind::body, side);
  std::vector<MarginRun> runs;
  for (const PageSide edge : page_sides)
    runs.push_back(run_of(areas, [edge](const Area &area) { return area.at(edge); }));
  for (const Area &area : areas) {
    std::vector<Stray> strays;
    for (const PageSide edge : page_sides) {
      const MarginRun &run = runs[static_cast<std::size_t>(edge)];
      const Length margin = area.at(edge);
      if (!run.strays(margin)) continue;
      const Length off = *run.off(margin);
      if (edge == PageSide::bottom && off > Length{}) continue; // the text is shorter, no more
      strays.push_back({edge, margin, margin - off});
    }
    report(evidence, area, strays, findings);
  }
}

/// One measure by which a page number may keep its place, and the margin that tells how far it is off.
struct Hold {
  const MarginRun *run;
  Length value;
  PageSide side;
  int direction; ///< 1 where the margin grows with the value, else -1
};

/// A block may have the width of its digits: it keeps its place if one edge or its middle does.
void note_number(const Area &area, std::initializer_list<Hold> holds, std::vector<Stray> &strays) {
  const Hold *nearest = nullptr;
  Length least;
  for (const Hold &hold : holds) {
    const auto off = hold.run->off(hold.value);
    if (!off) continue;
    const Length by = std::max(*off, -*off);
    if (nearest && by >= least) continue;
    nearest = &hold;
    least = by;
  }
  if (!nearest || !nearest->run->strays(nearest->value)) return;
  const Length margin = area.at(nearest->side);
  strays.push_back({nearest->side, margin, margin - *nearest->run->off(nearest->value) * nearest->direction});
}

void check_numbers(const Evidence &evidence, Side side, std::vector<Finding> &findings) {
  const std::vector<Area> areas = areas_of(evidence, TextKind::page_number, side);
  const auto outer = [](const Area &area) { return area.at(area.outside()); };
  const auto inner = [](const Area &area) { return area.at(area.inside()); };
  const auto middle = [&](const Area &area) { return outer(area) - inner(area); }; // twice its way off centre
  const auto top = [](const Area &area) { return area.at(PageSide::top); };
  const auto bottom = [](const Area &area) { return area.at(PageSide::bottom); };
  const auto half = [&](const Area &area) { return middle(area) / 2; };
  const MarginRun outside = run_of(areas, outer), inside = run_of(areas, inner), centre = run_of(areas, half),
                  head = run_of(areas, top), foot = run_of(areas, bottom);
  for (const Area &area : areas) {
    std::vector<Stray> strays;
    note_number(area, {{&foot, bottom(area), PageSide::bottom, 1}, {&head, top(area), PageSide::top, 1}},
                strays);
    note_number(area,
                {{&outside, outer(area), area.outside(), 1},
                 {&centre, half(area), area.outside(), 1},
                 {&inside, inner(area), area.outside(), -1}},
                strays);
    report(evidence, area, strays, findings);
  }
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  for (const Side side : {Side::left, Side::right}) {
    check_areas(evidence, side, findings);
    check_numbers(evidence, side, findings);
  }
}

} // namespace

extern const Rule stray_margin_rule = {
    "stray-margin",
    Grade::query,
    "Text stands off the place of other pages",
    "Held against the light, or leafed through, the text of one page jumps against that of the others: a "
    "sign that it was pushed by accident.",
    "Margins of the text area (round all body text of a page) and of the page number, on left and right "
    "pages apart. Where at least half of the pages of a side, and four, share a margin within a hair, 0.1 "
    "mm, a page whose margin differs by more than that and by less than 3 mm strays, unless four pages "
    "share its margin too: then it is a design of its own. A text that ends sooner at the foot is only "
    "shorter. A page number keeps its place if an edge or its middle does. Pages of another size are left "
    "out. The figures are our own choice.",
    "Move the text to where it stands on the other pages, best by the layout program’s guides or its "
    "master page.",
    check,
};

} // namespace stoneproof
