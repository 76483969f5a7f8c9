// A laid-out document as text, one line an item: what golden documents are compared as.
#pragma once

#include "reports/layout/document.h"
#include "reports/type/typesetter.h"

#include <fmt/format.h>

#include <string>

namespace stoneproof::test {

/// The faces that documents are set in, loaded once.
inline const Typesetter &type() {
  static const Typesetter loaded = Typesetter::load().value();
  return loaded;
}

/// The words of a page, one item a line.
inline std::string text_of(const layout::DocumentPage &page) {
  std::string all;
  for (const layout::Item &item : page.items)
    if (const auto *text = std::get_if<layout::TextItem>(&item)) all += text->text + "\n";
  return all;
}

class DocumentText {
public:
  static std::string of(const layout::Document &document) {
    DocumentText text;
    text.add("document \"{}\" \"{}\" {}", document.title, document.subject, document.language);
    for (const layout::Image &image : document.images) text.add("image {} x {}", image.width, image.height);
    for (const layout::Bookmark &mark : document.bookmarks)
      text.add("bookmark {} \"{}\" -> {}", mark.level, mark.title, mark.page);
    for (const layout::DocumentPage &page : document.pages) text.add_page(page);
    return text.text_;
  }

private:
  template <class... Parts>
  void add(fmt::string_view form, const Parts &...parts) {
    text_ += fmt::vformat(form, fmt::make_format_args(parts...)) + "\n";
  }
  static std::string at(const Point &p) { return fmt::format("{:.2f},{:.2f}", p.x.mm(), p.y.mm()); }
  static std::string at(const Rect &r) {
    return fmt::format("{:.2f},{:.2f} {:.2f}x{:.2f}", r.x.mm(), r.y.mm(), r.width.mm(), r.height.mm());
  }
  static std::string at(const std::optional<Rect> &r) { return r ? at(*r) : "none"; }
  template <class Points>
  static std::string all(const Points &points) {
    std::string list;
    for (const Point &point : points) list += (list.empty() ? "" : " ") + at(point);
    return list;
  }
  static std::string ink(const layout::Ink &i) {
    return fmt::format("{:02x}{:02x}{:02x}", i.red, i.green, i.blue);
  }
  static std::string stroke(const std::optional<layout::Stroke> &s) {
    return s ? fmt::format("{} {:.2f}pt{}", ink(s->ink), s->width.pt(), s->dash.empty() ? "" : " dashed")
             : "none";
  }

  void add_page(const layout::DocumentPage &page) {
    add("\npage {} {:.0f}x{:.0f} trim {} bleed {}", page.label, page.size.width.mm(), page.size.height.mm(),
        at(page.trim), at(page.bleed));
    for (std::size_t i = 0; i < page.items.size(); ++i) {
      add_begins(page.elements, i);
      std::visit([&](const auto &known) { add_item(known); }, page.items[i]);
      add_ends(page.elements, i + 1);
    }
    add_begins(page.elements, page.items.size());
    for (const layout::Link &link : page.links) add("link {} -> {}", at(link.area), link.page);
    for (const layout::Note &note : page.notes)
      add("note {} \"{}\" \"{}\"", at(note.area), note.title, note.text);
  }
  void add_begins(const std::vector<layout::Element> &elements, std::size_t item) {
    for (const layout::Element &element : elements)
      if (element.first == item)
        add("{} {}{}", role(element.role), element.first == element.end ? "()" : "(",
            element.alternative.empty() ? "" : " \"" + element.alternative + "\"");
  }
  void add_ends(const std::vector<layout::Element> &elements, std::size_t item) {
    for (auto element = elements.rbegin(); element != elements.rend(); ++element)
      if (element->end == item && element->first < item) add(")");
  }
  static std::string_view role(layout::Role role) {
    constexpr std::string_view names[] = {"heading 1",     "heading 2",  "heading 3", "paragraph", "row",
                                          "column header", "row header", "cell",      "list item", "figure"};
    return names[static_cast<std::size_t>(role)];
  }
  void add_item(const layout::TextItem &item) {
    add("text {} face {} {:.2f}pt {}{} \"{}\"", at(item.at), static_cast<int>(item.face), item.size.pt(),
        ink(item.ink), item.down ? " down" : "", item.text);
  }
  void add_item(const layout::LineItem &item) {
    add("line {} {} {}", at(item.from), at(item.to), stroke(item.stroke));
  }
  void add_item(const layout::ShapeItem &item) {
    add("shape {} fill {} {:.1f} line {}", all(item.corners), item.fill ? ink(*item.fill) : "none",
        item.opacity, stroke(item.stroke));
  }
  void add_item(const layout::PictureItem &item) {
    add("picture {} {} clip {} \"{}\"", item.image, all(item.corners), all(item.clip), item.alternative);
  }
  void add_item(const layout::OwnPageItem &item) {
    add("own page {} {} x {:.4f} clip {}", item.page, at(item.origin), item.factor,
        all(std::vector<Point>{{item.clip.x, item.clip.y}, {item.clip.right(), item.clip.bottom()}}));
  }

  std::string text_;
};

} // namespace stoneproof::test
