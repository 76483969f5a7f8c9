#include "reports/pdf/page_structure.h"
#include "reports/pdf/item_bounds.h"
#include "tests/reports/pdf/sample.h"

using namespace stoneproof;
using namespace stoneproof::literals;
using namespace stoneproof::test;
using layout::Element;
using layout::Role;

namespace {

/// A page of so many lines, in these elements.
layout::DocumentPage page_with(std::size_t lines, std::vector<Element> elements) {
  layout::DocumentPage page = page_of({100_pt, 100_pt}, {});
  page.items.resize(lines, layout::LineItem{});
  page.elements = std::move(elements);
  return page;
}

std::string words(const pdf::PageStructure &tree, std::size_t index) {
  const pdf::StructureNode &node = tree.nodes[index];
  std::string all(node.type);
  if (!node.scope.empty()) all += ":" + std::string(node.scope);
  if (node.kids.empty()) return all;
  all += "(";
  for (const pdf::StructureKid &kid : node.kids)
    all +=
        (all.back() == '(' ? "" : " ") + (kid.content ? std::to_string(kid.index) : words(tree, kid.index));
  return all + ")";
}

/// The tree of a page of which every item is drawn: types, and pieces of content by their numbers.
std::string tree_of(const layout::DocumentPage &page) {
  pdf::StructureBuilder builder(page);
  for (std::size_t i = 0; i < page.items.size(); ++i)
    if (const auto node = builder.node_of(i)) builder.mark(*node);
  const pdf::PageStructure tree = builder.finish();
  std::string all;
  for (const std::size_t root : tree.roots) all += (all.empty() ? "" : " ") + words(tree, root);
  return all;
}

} // namespace

TEST_CASE("elements hold their items and each other, in reading order") {
  const auto page = page_with(6, {{Role::heading1, {}, 0, 1, ""},
                                  {Role::paragraph, {}, 1, 5, ""},
                                  {Role::figure, 1, 2, 3, ""},
                                  {Role::paragraph, {}, 5, 6, ""}});
  CHECK(tree_of(page) == "H1(0) P(1 Figure(2) 3 4) P(5)");
}

TEST_CASE("rows that follow each other are a table, a row of column headers begins the next") {
  const auto row = [](std::size_t begin) { return Element{Role::row, {}, begin, begin + 3, ""}; };
  const auto of = [](Role role, std::size_t parent, std::size_t item) {
    return Element{role, parent, item, item + 1, ""};
  };
  // The third item of each row is a rule under it.
  const auto page =
      page_with(13, {row(0), of(Role::column_header, 0, 0), of(Role::column_header, 0, 1), row(3),
                     of(Role::row_header, 3, 3), of(Role::cell, 3, 4), row(6), of(Role::column_header, 6, 6),
                     row(9), of(Role::cell, 8, 9), Element{Role::paragraph, {}, 12, 13, ""}});
  CHECK(tree_of(page) == "Table(TR(TH:Column(0) TH:Column(1)) TR(TH:Row(2) TD(3))) "
                         "Table(TR(TH:Column(4)) TR(TD(5))) P(6)");
}

TEST_CASE("list items that follow each other are a list, and cells may be empty") {
  CHECK(tree_of(page_with(3, {{Role::list_item, {}, 0, 1, ""},
                              {Role::list_item, {}, 1, 2, ""},
                              {Role::paragraph, {}, 2, 2, ""},
                              {Role::list_item, {}, 2, 3, ""}})) ==
        "L(LI(LBody(0)) LI(LBody(1))) P L(LI(LBody(2)))");
  CHECK(tree_of(page_with(
            1, {{Role::row, {}, 0, 1, ""}, {Role::cell, 0, 0, 1, ""}, {Role::cell, 0, 1, 1, ""}})) ==
        "Table(TR(TD(0) TD))");
}

TEST_CASE("the bounds of an item hold all of it") {
  const auto bounds = [](const layout::Item &item) { return pdf::bounds_of(item, typesetter()); };
  CHECK(bounds(layout::LineItem{{9_pt, 2_pt}, {3_pt, 5_pt}, {}}) == Rect{3_pt, 2_pt, 6_pt, 3_pt});
  CHECK(bounds(layout::ShapeItem{{{1_pt, 1_pt}, {4_pt, 2_pt}, {2_pt, 9_pt}}, {}, {}, 1}) ==
        Rect{1_pt, 1_pt, 3_pt, 8_pt});
  const layout::TextItem text{{50_pt, 50_pt}, Face::text, 10_pt, {}, "words", false};
  const Rect across = bounds(text);
  CHECK(across.x == 50_pt);
  CHECK(across.width == typesetter().width(Face::text, 10_pt, "words"));
  CHECK(across.top() == 50_pt - typesetter().ascent(Face::text, 10_pt));
  CHECK(across.bottom() == 50_pt + typesetter().descent(Face::text, 10_pt));
  layout::TextItem turned = text;
  turned.down = true;
  CHECK(bounds(turned) ==
        Rect{50_pt - typesetter().descent(Face::text, 10_pt), 50_pt, across.height, across.width});
}
