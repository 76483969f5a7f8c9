// What the parts of a page are, as a tree of structure elements over its marked content.
#pragma once

#include "reports/layout/document.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::pdf {

/// A child of a structure element: another one, or a piece of content by its number on the page (MCID).
struct StructureKid {
  bool content = false;
  std::size_t index = 0;
};

/// One structure element. Types are the standard ones of ISO 32000-1, 14.8.4.
struct StructureNode {
  std::string_view type;
  std::string_view scope;            ///< of a header cell: Column or Row
  std::optional<std::size_t> parent; ///< none: the page itself
  std::vector<StructureKid> kids;    ///< in reading order
  std::string alternative;           ///< of a figure
  std::optional<Rect> bounds;        ///< of a figure, as far as its items are known
};

struct PageStructure {
  std::vector<StructureNode> nodes; ///< a parent stands before its children
  std::vector<std::size_t> roots;   ///< those without a parent, in reading order
  std::vector<std::size_t> content; ///< the node of each piece of content, by its number
};

/// Grows the tree while a page's items are gone through in their order: rows are gathered into tables and
/// list items into lists, and a picture with an alternative is made a figure.
class StructureBuilder {
public:
  explicit StructureBuilder(const layout::DocumentPage &page) : page_(page) {}

  /// To be called for one item after the other. The node that its drawing belongs to; none: decoration.
  std::optional<std::size_t> node_of(std::size_t item);
  /// Begins a piece of content of a node and gives its number.
  std::size_t mark(std::size_t node);
  const StructureNode &operator[](std::size_t node) const { return tree_.nodes[node]; }
  /// Tells where an item of a figure lies.
  void cover(std::size_t node, const Rect &bounds);
  PageStructure finish();

private:
  void begin_until(std::size_t item);
  void begin(std::size_t element);
  std::size_t add(std::string_view type, std::optional<std::size_t> parent, std::string_view scope = "");
  std::size_t group(std::string_view type, std::optional<std::size_t> parent, bool anew);
  bool is_head(std::size_t row) const;
  bool in_figure() const;

  const layout::DocumentPage &page_;
  PageStructure tree_;
  std::size_t next_ = 0;          ///< element to begin
  std::vector<std::size_t> open_; ///< elements, from the outermost on
  std::vector<std::size_t> node_; ///< by element
};

} // namespace stoneproof::pdf
