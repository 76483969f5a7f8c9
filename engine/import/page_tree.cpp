// Walks the page tree by its children, whatever its counts say. The only way in is read_page_tree; tested in
// tests/engine/import/page_tree.test.cpp.
#include "engine/import/page_tree.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace stoneproof::finished {

namespace {

constexpr int deepest_tree = 64;

/// What a page takes from its parents where it has none of its own.
struct Inherited {
  Object resources, media, crop, rotate;
};

std::optional<Box> page_box(const Object &four) {
  const auto read = box_in(four);
  if (!read) return std::nullopt;
  const Box &box = *read;
  // Beyond 10 km nothing is a page.
  const bool sound = box.width() > 0 && box.height() > 0 && std::abs(box.left) < 3e7 &&
                     std::abs(box.right) < 3e7 && std::abs(box.bottom) < 3e7 && std::abs(box.top) < 3e7;
  return sound ? std::optional(box) : std::nullopt;
}

SheetBoxes boxes_of(const Object &page, const Inherited &inherited) {
  SheetBoxes boxes;
  if (const auto media = page_box(inherited.media)) boxes.media = *media;
  boxes.crop = page_box(inherited.crop);
  boxes.bleed = page_box(page["BleedBox"]);
  boxes.trim = page_box(page["TrimBox"]);
  boxes.art = page_box(page["ArtBox"]);
  const int turns = static_cast<int>(std::clamp(inherited.rotate.number_or(0), -36000.0, 36000.0)) / 90;
  boxes.rotate = (turns % 4 + 4) % 4 * 90;
  const double unit = page["UserUnit"].number_or(1);
  if (unit > 0.001 && unit < 100'000) boxes.unit = unit;
  return boxes;
}

class Walk {
public:
  void follow(const Object &node, Inherited inherited, int depth) {
    if (tree.cut_short || depth > deepest_tree || !node.is_dictionary()) return;
    if (node.id() != 0 && !seen_.insert(node.id()).second) return;
    const auto take = [&](Object &value, const char *key) {
      if (const Object own = node[key]) value = own;
    };
    take(inherited.resources, "Resources");
    take(inherited.media, "MediaBox");
    take(inherited.crop, "CropBox");
    take(inherited.rotate, "Rotate");
    const Object kids = node["Kids"];
    if (!kids.is_array() || node["Type"].name() == "Page") {
      if (tree.pages.size() < most_pages)
        tree.pages.push_back({node, inherited.resources, boxes_of(node, inherited)});
      else
        tree.cut_short = true;
      return;
    }
    for (std::size_t i = 0; i < kids.size(); ++i) follow(kids.at(i), inherited, depth + 1);
  }
  PageTree tree;

private:
  std::set<std::uint32_t> seen_;
};

} // namespace

Box SheetBoxes::seen() const {
  if (!crop) return media;
  const Box both{std::max(crop->left, media.left), std::max(crop->bottom, media.bottom),
                 std::min(crop->right, media.right), std::min(crop->top, media.top)};
  return both.left < both.right && both.bottom < both.top ? both : media;
}

Box trim_of(const SheetBoxes &boxes) { return boxes.trim.value_or(boxes.seen()); }

PageTree read_page_tree(const PdfFile &file) {
  Walk walk;
  walk.follow(file.catalog()["Pages"], {}, 0);
  return std::move(walk.tree);
}

} // namespace stoneproof::finished
