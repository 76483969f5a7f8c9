// Makes a page's elements a tree. The only way in is StructureBuilder; tested in
// tests/reports/pdf/page_structure.test.cpp.
#include "reports/pdf/page_structure.h"

#include <algorithm>

namespace stoneproof::pdf {
namespace {

using layout::Role;

std::string_view type_of(Role role) {
  switch (role) {
  case Role::heading1: return "H1";
  case Role::heading2: return "H2";
  case Role::heading3: return "H3";
  case Role::paragraph: return "P";
  case Role::row: return "TR";
  case Role::column_header:
  case Role::row_header: return "TH";
  case Role::cell: return "TD";
  case Role::list_item: return "LBody";
  case Role::figure: return "Figure";
  }
  return "P";
}

std::string_view scope_of(Role role) {
  return role == Role::column_header ? "Column" : role == Role::row_header ? "Row" : "";
}

} // namespace

std::optional<std::size_t> StructureBuilder::node_of(std::size_t item) {
  begin_until(item);
  const auto *picture = std::get_if<layout::PictureItem>(&page_.items[item]);
  const auto inner = open_.empty() ? std::nullopt : std::optional(open_.back());
  if (picture && !picture->alternative.empty() && !in_figure()) {
    const std::size_t figure = add("Figure", inner ? std::optional(node_[*inner]) : std::nullopt);
    tree_.nodes[figure].alternative = picture->alternative;
    return figure;
  }
  if (!inner || page_.elements[*inner].role == Role::row) return std::nullopt;
  return node_[*inner];
}

std::size_t StructureBuilder::mark(std::size_t node) {
  const std::size_t number = tree_.content.size();
  tree_.nodes[node].kids.push_back({true, number});
  tree_.content.push_back(node);
  return number;
}

void StructureBuilder::cover(std::size_t node, const Rect &bounds) {
  std::optional<Rect> &all = tree_.nodes[node].bounds;
  if (!all) {
    all = bounds;
    return;
  }
  const Length left = std::min(all->left(), bounds.left()), top = std::min(all->top(), bounds.top());
  all = Rect{left, top, std::max(all->right(), bounds.right()) - left,
             std::max(all->bottom(), bounds.bottom()) - top};
}

PageStructure StructureBuilder::finish() {
  begin_until(page_.items.size());
  return std::move(tree_);
}

/// Elements begin in their order, and those that end before the item are left.
void StructureBuilder::begin_until(std::size_t item) {
  const auto leave = [&](std::size_t at) {
    while (!open_.empty() && page_.elements[open_.back()].end <= at) open_.pop_back();
  };
  for (; next_ < page_.elements.size() && page_.elements[next_].first <= item; ++next_) {
    leave(page_.elements[next_].first);
    begin(next_);
    open_.push_back(next_);
  }
  leave(item);
}

void StructureBuilder::begin(std::size_t element) {
  const layout::Element &begun = page_.elements[element];
  std::optional<std::size_t> parent;
  if (begun.parent) parent = node_[*begun.parent];
  if (begun.role == Role::row) parent = group("Table", parent, is_head(element));
  if (begun.role == Role::list_item) parent = add("LI", group("L", parent, false));
  node_.push_back(add(type_of(begun.role), parent, scope_of(begun.role)));
  tree_.nodes.back().alternative = begun.alternative;
}

std::size_t StructureBuilder::add(std::string_view type, std::optional<std::size_t> parent,
                                  std::string_view scope) {
  const std::size_t node = tree_.nodes.size();
  tree_.nodes.push_back({type, scope, parent, {}, {}, {}});
  if (parent)
    tree_.nodes[*parent].kids.push_back({false, node});
  else
    tree_.roots.push_back(node);
  return node;
}

/// The table or list that came last, if nothing came after it; else a new one.
std::size_t StructureBuilder::group(std::string_view type, std::optional<std::size_t> parent, bool anew) {
  std::optional<std::size_t> last;
  if (parent) {
    const auto &kids = tree_.nodes[*parent].kids;
    if (!kids.empty() && !kids.back().content) last = kids.back().index;
  } else if (!tree_.roots.empty()) {
    last = tree_.roots.back();
  }
  return last && !anew && tree_.nodes[*last].type == type ? *last : add(type, parent);
}

bool StructureBuilder::is_head(std::size_t row) const {
  const auto begun = row + 1;
  return begun < page_.elements.size() && page_.elements[begun].parent == row &&
         page_.elements[begun].role == Role::column_header;
}

bool StructureBuilder::in_figure() const {
  return std::any_of(open_.begin(), open_.end(),
                     [&](std::size_t element) { return page_.elements[element].role == Role::figure; });
}

} // namespace stoneproof::pdf
