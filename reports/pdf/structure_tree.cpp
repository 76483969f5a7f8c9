// Writes structure elements. The only way in is StructureTree; tested in
// tests/reports/pdf/structure.test.cpp.
#include "reports/pdf/structure_tree.h"

#include <algorithm>

namespace stoneproof::pdf {
namespace {

void append(std::string &list, const std::string &value) { list += (list.empty() ? "" : " ") + value; }

/// Leaves out elements in which nothing was drawn, but for cells, whose neighbours count on them.
std::vector<bool> nodes_kept(const std::vector<StructureNode> &nodes) {
  std::vector<bool> kept(nodes.size());
  for (std::size_t i = nodes.size(); i-- > 0;) {
    kept[i] = kept[i] || nodes[i].type == "TD" || nodes[i].type == "TH";
    for (const StructureKid &kid : nodes[i].kids) kept[i] = kept[i] || kid.content || kept[kid.index];
  }
  return kept;
}

/// The elements of one page while they are written.
struct PageElements {
  const PageStructure &structure;
  ObjectNumber page;
  Length page_height;
  std::vector<bool> kept;
  std::vector<ObjectNumber> objects; ///< by node; 0 if it is left out

  std::string kids_of(const StructureNode &node) const {
    std::string kids;
    for (const StructureKid &kid : node.kids)
      if (kid.content)
        append(kids, std::to_string(kid.index));
      else if (kept[kid.index])
        append(kids, reference(objects[kid.index]));
    return kids;
  }

  Entries entries_of(const StructureNode &node, ObjectNumber parent) const {
    Entries entries{{"S", "/" + std::string(node.type)}, {"P", reference(parent)}};
    const auto is_content = [](const StructureKid &kid) { return kid.content; };
    if (std::any_of(node.kids.begin(), node.kids.end(), is_content))
      entries.emplace_back("Pg", reference(page));
    if (const std::string kids = kids_of(node); !kids.empty()) entries.emplace_back("K", "[" + kids + "]");
    if (!node.scope.empty()) entries.emplace_back("A", "<</O/Table/Scope/" + std::string(node.scope) + ">>");
    if (node.bounds)
      entries.emplace_back("A", "<</O/Layout/BBox" + rectangle(*node.bounds, page_height) + ">>");
    if (!node.alternative.empty()) entries.emplace_back("Alt", text_string(node.alternative));
    return entries;
  }
};

} // namespace

Entries StructureTree::add_page(PageStructure structure, ObjectNumber page, Length page_height) {
  if (structure.content.empty()) return {};
  pages_.push_back({std::move(structure), page, page_height});
  return {{"StructParents", std::to_string(pages_.size() - 1)}};
}

void StructureTree::write_page(const Page &page) {
  const PageStructure &structure = page.structure;
  PageElements elements{structure, page.object, page.height, nodes_kept(structure.nodes), {}};
  const ObjectNumber section = file_.reserve();
  for (const bool kept : elements.kept) elements.objects.push_back(kept ? file_.reserve() : 0);
  for (std::size_t i = 0; i < structure.nodes.size(); ++i) {
    if (!elements.kept[i]) continue;
    const StructureNode &node = structure.nodes[i];
    file_.set(elements.objects[i],
              elements.entries_of(node, node.parent ? elements.objects[*node.parent] : section));
  }
  std::string roots, parents;
  for (const std::size_t root : structure.roots)
    if (elements.kept[root]) append(roots, reference(elements.objects[root]));
  for (const std::size_t node : structure.content) append(parents, reference(elements.objects[node]));
  file_.set(section, {{"S", "/Sect"}, {"P", reference(document_)}, {"K", "[" + roots + "]"}});
  append(sections_, reference(section));
  parents_ += "[" + parents + "]";
}

std::string StructureTree::finish() {
  if (pages_.empty()) return "";
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    parents_ += std::to_string(i);
    write_page(pages_[i]);
    pages_[i].structure = {};
  }
  file_.set(document_, {{"S", "/Document"}, {"P", reference(root_)}, {"K", "[" + sections_ + "]"}});
  file_.set(root_, {{"Type", "/StructTreeRoot"},
                    {"K", reference(document_)},
                    {"ParentTree", "<</Nums[" + parents_ + "]>>"},
                    {"ParentTreeNextKey", std::to_string(pages_.size())}});
  return reference(root_);
}

} // namespace stoneproof::pdf
