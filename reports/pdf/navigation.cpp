// Writes what a viewer offers for moving about. The only ways in are the functions of navigation.h; tested in
// tests/reports/pdf/write_pdf.test.cpp.
#include "reports/pdf/navigation.h"

#include <algorithm>
#include <optional>

namespace stoneproof::pdf {
namespace {

// Table 165. ISO 19005-3, 6.3.2 wants all annotations to print, though what prints of a note is nothing, and
// notes neither to grow nor to turn with the page.
constexpr int print_flag = 4, note_flags = print_flag | 8 | 16;

/// The top of a page, at the zoom that the reader has.
std::string destination(std::size_t page, const layout::Document &document, const PageNumbers &pages) {
  return "[" + reference(pages.at(page)) + "/XYZ 0 " + points(document.pages.at(page).size.height) + " null]";
}

/// Bookmarks as a tree; index 0 is the outline itself, index i + 1 is bookmark i.
struct OutlineNode {
  ObjectNumber object = 0;
  std::size_t parent = 0;
  std::optional<std::size_t> previous;
  std::vector<std::size_t> children;
};

std::vector<OutlineNode> outline_of(const std::vector<layout::Bookmark> &bookmarks, ObjectFile &file) {
  std::vector<OutlineNode> nodes(1);
  nodes[0].object = file.reserve();
  std::vector<std::size_t> path{0}; // from the outline to the bookmark before
  for (const layout::Bookmark &bookmark : bookmarks) {
    const auto level = static_cast<std::size_t>(std::max(bookmark.level, 0));
    path.resize(std::min(level + 1, path.size()));
    auto &siblings = nodes[path.back()].children;
    const auto previous = siblings.empty() ? std::nullopt : std::optional(siblings.back());
    siblings.push_back(nodes.size());
    nodes.push_back({file.reserve(), path.back(), previous, {}});
    path.push_back(nodes.size() - 1);
  }
  return nodes;
}

void set_bookmark(ObjectFile &file, const std::vector<OutlineNode> &nodes, std::size_t index,
                  const layout::Document &document, const PageNumbers &pages) {
  const OutlineNode &node = nodes[index], &parent = nodes[node.parent];
  const layout::Bookmark &bookmark = document.bookmarks[index - 1];
  Entries entries{{"Title", text_string(bookmark.title)},
                  {"Parent", reference(parent.object)},
                  {"Dest", destination(bookmark.page, document, pages)}};
  if (node.previous) entries.emplace_back("Prev", reference(nodes[*node.previous].object));
  const auto next = std::find(parent.children.begin(), parent.children.end(), index) + 1;
  if (next != parent.children.end()) entries.emplace_back("Next", reference(nodes[*next].object));
  if (!node.children.empty()) {
    entries.emplace_back("First", reference(nodes[node.children.front()].object));
    entries.emplace_back("Last", reference(nodes[node.children.back()].object));
    entries.emplace_back("Count", "-" + std::to_string(node.children.size()));
  }
  file.set(node.object, entries);
}

} // namespace

std::string write_annotations(ObjectFile &file, const layout::Document &document,
                              const layout::DocumentPage &page, const PageNumbers &pages,
                              ObjectNumber no_appearance) {
  std::string references;
  const auto add = [&](const Rect &area, int flags, Entries entries) {
    const ObjectNumber object = file.reserve();
    entries.insert(
        entries.end(),
        {{"Type", "/Annot"}, {"Rect", rectangle(area, page.size.height)}, {"F", std::to_string(flags)}});
    file.set(object, entries);
    references += (references.empty() ? "" : " ") + reference(object);
  };
  for (const layout::Link &link : page.links)
    add(link.area, print_flag,
        {{"Subtype", "/Link"}, {"Border", "[0 0 0]"}, {"Dest", destination(link.page, document, pages)}});
  for (const layout::Note &note : page.notes) {
    Entries entries{{"Subtype", "/Text"},
                    {"T", text_string(note.title)},
                    {"Contents", text_string(note.text)},
                    {"AP", "<</N " + reference(no_appearance) + ">>"}};
    if (document.made_at) entries.emplace_back("M", date_string(*document.made_at));
    add(note.area, note_flags, std::move(entries));
  }
  return references.empty() ? "" : "[" + references + "]";
}

ObjectNumber write_no_appearance(ObjectFile &file) {
  const ObjectNumber form = file.reserve();
  file.write_stream(
      form, {{"Type", "/XObject"}, {"Subtype", "/Form"}, {"BBox", "[0 0 1 1]"}, {"Resources", "<<>>"}}, "",
      Compress::no);
  return form;
}

std::string write_bookmarks(ObjectFile &file, const layout::Document &document, const PageNumbers &pages) {
  if (document.bookmarks.empty()) return "";
  const std::vector<OutlineNode> nodes = outline_of(document.bookmarks, file);
  for (std::size_t i = 1; i < nodes.size(); ++i) set_bookmark(file, nodes, i, document, pages);
  const auto &top = nodes[0].children;
  file.set(nodes[0].object, {{"Type", "/Outlines"},
                             {"First", reference(nodes[top.front()].object)},
                             {"Last", reference(nodes[top.back()].object)},
                             {"Count", std::to_string(top.size())}});
  return reference(nodes[0].object);
}

std::string page_labels(const layout::Document &document) {
  const auto labelled = [](const layout::DocumentPage &page) { return !page.label.empty(); };
  if (std::none_of(document.pages.begin(), document.pages.end(), labelled)) return "";
  std::string out = "<</Nums[";
  for (std::size_t i = 0; i < document.pages.size(); ++i)
    out += (i > 0 ? " " : "") + std::to_string(i) + "<</P" + text_string(document.pages[i].label) + ">>";
  return out + "]>>";
}

} // namespace stoneproof::pdf
