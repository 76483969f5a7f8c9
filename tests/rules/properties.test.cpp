// What must hold for every fixture: units, mirrors and the order of findings. The fixtures of all rules serve
// as books.
#include "tests/rules/fixture.h"
#include "tests/rules/mirror.h"

#include "tests/support/catch.h"

#include <algorithm>
#include <iomanip>
#include <regex>
#include <sstream>
#include <tuple>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// The description with every length in millimetres or points written in another unit.
std::string in_unit(const std::string &text, const char *unit, double units_per_mm) {
  const std::regex lengths("\"(-?[0-9.]+)(mm|pt)\"");
  std::ostringstream out;
  out << std::fixed << std::setprecision(12);
  auto rest = text.cbegin();
  for (std::sregex_iterator it(text.begin(), text.end(), lengths), end; it != end; ++it) {
    out << std::string(rest, (*it)[0].first) << '"'
        << std::stod((*it)[1]) * ((*it)[2] == "pt" ? 25.4 / 72 : 1) * units_per_mm << unit << '"';
    rest = (*it)[0].second;
  }
  out << std::string(rest, text.cend());
  return out.str();
}

/// Every picture and every frame's fit on its side: a quarter turn counted into the file, and back in the
/// frame.
Scene on_its_side(Scene scene) {
  const auto on_side = [](const PixelRect &part, const PixelSize &now) {
    return PixelRect{part.y, static_cast<double>(now.height) - part.x - part.width, part.height, part.width};
  };
  for (auto &[state, shown, master] : scene.pictures) {
    if (state.facts) std::swap(state.facts->size.width, state.facts->size.height);
    if (state.bed) state.bed->original = on_side(state.bed->original, state.facts->size);
  }

  for (Page &page : scene.book.pages)
    for (Frame &frame : page.frames) {
      const auto lay = [centre = frame.rect.centre()](Rect &rect) {
        const Point middle = rect.centre();
        const Length dx = middle.x - centre.x, dy = middle.y - centre.y;
        // Turning back by a quarter takes (dx, dy) to (dy, -dx).
        rect = {centre.x + dy - rect.height / 2, centre.y - dx - rect.width / 2, rect.height, rect.width};
      };
      if (auto *at = std::get_if<PictureAt>(&frame.fit)) lay(at->rect);
      if (auto *fill = std::get_if<Fill>(&frame.fit))
        *fill = {fill->focus_y, 1 - fill->focus_x, fill->focus_said};
      if (auto *crop = std::get_if<CropShare>(&frame.fit))
        *crop = {crop->y, 1 - crop->x - crop->width, crop->height, crop->width};
      if (auto *crop = std::get_if<CropPixels>(&frame.fit))
        crop->part = on_side(crop->part, scene.pictures[*frame.picture].state.facts->size);

      lay(frame.rect);
      frame.turn.degrees += 90;
    }
  return scene;
}

/// Every page as one lying on its side: its trim, and all frames with their pictures, a quarter turn
/// clockwise.
Scene pages_turned(Scene scene) {
  const Book upright = scene.book;
  for (Page &page : scene.book.pages) {
    const Rect trim = page_space(upright, scene.press, page).trim;
    page.kind = PageKind::page;
    page.number = std::max(page.number, 1);
    page.trim = Size{trim.height, trim.width};
    for (Frame &frame : page.frames) {
      const Point centre = frame.rect.centre(), to{trim.height - centre.y, centre.x};
      const auto move = [&](Rect &rect) { rect.x += to.x - centre.x, rect.y += to.y - centre.y; };
      if (auto *at = std::get_if<PictureAt>(&frame.fit)) move(at->rect);
      move(frame.rect);
      frame.turn.degrees += 90;
    }
  }
  return scene;
}

} // namespace

TEST_CASE("the unit that lengths are written in never changes a finding") {
  each_fixture([](const std::filesystem::path &path) {
    const std::string text = text_of(path.string() + ".xml"), pictures = text_of(path.string() + ".pictures");
    const Scene scene = scene_of(text, pictures);
    const std::string expected = listed(scene, check_rules(scene.evidence()));
    for (const auto &[unit, units_per_mm] :
         {std::pair("cm", 0.1), std::pair("in", 1 / 25.4), std::pair("pt", 72 / 25.4)}) {
      CAPTURE(unit);
      const std::string rewritten = in_unit(text, unit, units_per_mm);
      REQUIRE(rewritten != text);
      const Scene other = scene_of(rewritten, pictures);
      CHECK(other.book.pages[0].texts.size() == scene.book.pages[0].texts.size());
      CHECK(other.book.trim == scene.book.trim);
      CHECK(listed(other, check_rules(other.evidence())) == expected);
    }
  });
}

TEST_CASE("a picture saved on its side and turned back by its frame gives the same findings") {
  each_fixture([](const std::filesystem::path &path) {
    const Scene scene = read_scene(path), turned_scene = on_its_side(scene);
    std::vector<Finding> expected = check_rules(scene.evidence()),
                         found = check_rules(turned_scene.evidence());
    for (auto *findings : {&expected, &found})
      for (Finding &finding : *findings) {
        if (auto &size = finding.rescue.print_no_larger; size && findings == &found)
          std::swap(size->width, size->height);
        if (auto &crop = finding.rescue.looser_crop; crop && findings == &found)
          std::swap(crop->width_share, crop->height_share);
      }
    CHECK(listed(turned_scene, found) == listed(scene, expected));
  });
}

TEST_CASE("a whole page turned by a quarter with all that lies on it keeps every density") {
  each_fixture([](const std::filesystem::path &path) {
    const Scene scene = read_scene(path), turned_scene = pages_turned(scene);
    const Evidence upright = scene.evidence(), lying = turned_scene.evidence();
    REQUIRE(lying.frames.size() == upright.frames.size());
    for (std::size_t i = 0; i < upright.frames.size(); ++i) {
      const PlacedFrame &one = upright.frames[i], &other = lying.frames[i];
      CHECK(std::abs(one.box.width.mm() - other.box.height.mm()) < 1e-5);
      CHECK(std::abs(one.box.height.mm() - other.box.width.mm()) < 1e-5);
      REQUIRE(one.laid.has_value() == other.laid.has_value());
      if (!one.laid) continue;
      CHECK(one.laid->density_x == other.laid->density_x);
      CHECK(one.laid->density_y == other.laid->density_y);
      CHECK(one.laid->shown == other.laid->shown);
      CHECK(one.cut_share == other.cut_share);
    }
    for (std::size_t i = 0; i < upright.spaces.size(); ++i) {
      CHECK(lying.spaces[i].trim.width == upright.spaces[i].trim.height);
      CHECK(lying.spaces[i].trim.height == upright.spaces[i].trim.width);
    }
  });
}

TEST_CASE("findings come gravest first, then by page, frame and text, then by rule") {
  const auto rules = all_rules();
  const auto place_of = [&](const Finding &finding) {
    constexpr std::size_t last = 1'000'000;
    const auto rule =
        std::find_if(rules.begin(), rules.end(), [&](const Rule *each) { return each->id == finding.rule; });
    return std::tuple(finding.grade, finding.page.value_or(last), finding.frame.value_or(last),
                      finding.text.value_or(last), rule - rules.begin());
  };
  std::size_t longest = 0;
  each_fixture([&](const std::filesystem::path &path) {
    const Scene scene = read_scene(path);
    const auto findings = check_rules(scene.evidence());
    longest = std::max(longest, findings.size());
    CHECK(std::is_sorted(findings.begin(), findings.end(),
                         [&](const Finding &a, const Finding &b) { return place_of(a) < place_of(b); }));
    CHECK(listed(scene, check_rules(scene.evidence())) == listed(scene, findings));
  });
  CHECK(longest > 4); // a fixture with several findings was among them
}
