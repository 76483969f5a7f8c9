// Books made by chance: every element and attribute of the schema occurs, with and without its optional
// parts.
#pragma once

#include "tests/engine/xml/generated.h"

#include <fmt/format.h>

namespace stoneproof::test {

class RandomBook {
public:
  explicit RandomBook(Chance &chance) : chance_(chance) {}

  Node make() {
    Node book{"book",
              {{"xmlns", "urn:stoneproof:book:1"},
               {"title", std::string(chance_.pick(titles))},
               {"language", std::string(chance_.pick(languages))}}};
    book.children = {{"trim", {{"width", "210mm"}, {"height", chance_.one_in(2) ? "280 mm" : "11in"}}},
                     edges("bleed", 4),
                     edges("safe-margin", 8),
                     binding()};
    if (chance_.one_in(2)) book.children.push_back(stocks());
    if (chance_.one_in(3)) book.children.push_back(print_file());
    if (chance_.below(4) > 0) book.children.push_back(contributors());
    if (chance_.below(8) > 0) book.children.push_back(pictures());
    if (chance_.one_in(2)) book.children.push_back(cover());
    book.children.push_back(pages());
    for (std::size_t i = book.children.size() - 1; i > 0; --i)
      if (chance_.one_in(3)) std::swap(book.children[i], book.children[chance_.below(i)]);
    return book;
  }

private:
  static constexpr std::string_view titles[] = {
      "Summers at the mill", "\xC5\xBB\xC3\xB3\xC5\x82ta ksi\xC4\x85\xC5\xBCka",
      "\xCE\xA4\xCE\xBF \xCF\x83\xCF\x80\xCE\xAF\xCF\x84\xCE\xB9", "A & B < C", " spaced   out "};
  static constexpr std::string_view languages[] = {"en", "pl", "pt-BR", "el", "zh-Hant-TW", "de-1996"};
  static constexpr std::string_view id_stems[] = {"p", "pic-",
                                                  "Zdj\xC4\x99"
                                                  "cie",
                                                  "\xCE\xBA\xCE\xB1\xCE\xB4\xCF\x81\xCE\xBF.", "1/"};

  std::string length(int first, int last) {
    const int n = chance_.between(first, last);
    switch (chance_.below(5)) {
    case 0: return fmt::format("{}.{}mm", n, chance_.below(1000));
    case 1: return fmt::format("{:.7f}in", n / 25.4);
    case 2: return fmt::format("{}pt", n * 2);
    case 3: return fmt::format("{:.1f} cm", n / 10.0);
    default: return fmt::format("{}mm", n);
    }
  }
  void maybe(Node &node, std::string name, std::string value) {
    if (chance_.one_in(2)) node.attributes.emplace_back(std::move(name), std::move(value));
  }
  Node edges(std::string name, int most) {
    return {std::move(name),
            {{"top", length(0, most)},
             {"bottom", length(0, most)},
             {"outside", length(0, most)},
             {"inside", length(0, most)}}};
  }
  Node binding() {
    static constexpr std::string_view kinds[] = {"saddle", "perfect", "case", "spiral", "layflat"};
    Node node{"binding", {{"kind", std::string(chance_.pick(kinds))}}};
    left_first_ = chance_.one_in(4);
    if (left_first_)
      node.attributes.emplace_back("first-page", "left");
    else
      maybe(node, "first-page", "right");
    maybe(node, "gutter-loss", length(0, 9));
    maybe(node, "signature", std::to_string(2 * chance_.between(1, 32)));
    for (const auto name : {"grind-off", "glue", "board", "square", "turn-in", "hinge", "spine-lining"})
      if (chance_.one_in(4)) node.attributes.emplace_back(name, length(0, 9));
    if (chance_.one_in(4)) node.attributes.emplace_back("board-width", length(180, 230));
    return node;
  }
  Node stocks() {
    Node list{"stocks"};
    for (const auto part : {"endpaper", "block", "cover"}) {
      if (chance_.one_in(3)) continue;
      Node stock{"stock", {{"part", part}}};
      const std::size_t ways = 1 + chance_.below(7); // a set of the three ways to a thickness
      if (ways & 1) stock.attributes.emplace_back("caliper", chance_.one_in(2) ? "0.12mm" : "0.0047 in");
      if (ways & 2)
        stock.attributes.insert(stock.attributes.end(),
                                {{"grammage", chance_.one_in(2) ? "90g/m2" : "099.5 g/m2"},
                                 {"bulk", chance_.one_in(2) ? "1.3" : "00.85"}});
      if (ways & 4) stock.attributes.emplace_back("pages-per-inch", chance_.one_in(2) ? "400" : "512.5");
      list.children.push_back(std::move(stock));
    }
    return list;
  }
  Node cover() {
    Node node{"cover", {{"width", length(380, 500)}, {"height", length(250, 300)}}};
    maybe(node, "spine", length(0, 30));
    maybe(node, "flap", length(0, 90));
    content(node);
    return node;
  }
  void content(Node &node) {
    for (std::size_t i = chance_.below(4); i > 0; --i)
      node.children.push_back(chance_.one_in(3) ? text() : frame());
  }
  Node print_file() {
    Node file{"print-file", {{"file", "a b.pdf"}, {"version", "1.7"}, {"encrypted", "no"}}};
    maybe(file, "output-intent", "FOGRA39");
    maybe(file, "mended", chance_.one_in(2) ? "yes" : "no");
    for (std::size_t n = chance_.below(3); n > 0; --n)
      file.children.push_back({"font",
                               {{"name", "Gentium Plus"},
                                {"embedded", chance_.one_in(2) ? "yes" : "no"},
                                {"first-page", std::to_string(1 + chance_.below(9))}}});
    return file;
  }
  Node sheet() {
    Node sheet{"sheet"};
    maybe(sheet, "label", "iv");
    for (const auto flag : {"transparent", "broken", "cut-short", "gray", "rgb", "cmyk", "spot"})
      if (chance_.one_in(4)) sheet.attributes.emplace_back(flag, chance_.one_in(2) ? "yes" : "no");
    const auto part = [&](std::string name, std::vector<std::pair<std::string, std::string>> attributes) {
      sheet.children.push_back({std::move(name), std::move(attributes)});
      rectangle(sheet.children.back());
    };
    part("box", {{"kind", "media"}});
    for (const auto kind : {"crop", "bleed", "trim", "art"})
      if (chance_.one_in(3)) part("box", {{"kind", kind}});
    if (chance_.one_in(2)) part("painted", {});
    if (chance_.one_in(3)) part("thin-line", {{"thickness", chance_.one_in(2) ? "0mm" : "0.1pt"}});
    if (chance_.one_in(3)) part("note", {{"kind", "Text"}, {"prints", "yes"}});
    if (chance_.one_in(3)) part("hidden-picture", {});
    return sheet;
  }
  Node contributors() {
    Node list{"contributors"};
    for (std::size_t n = chance_.below(4); n > 0; --n) {
      Node one{"contributor",
               {{"id", new_id(contributor_ids_)}, {"name", std::string(chance_.pick(titles))}}};
      maybe(one, "contact", "+48 555 0100");
      list.children.push_back(std::move(one));
    }
    return list;
  }
  Node pictures() {
    static constexpr std::string_view uses[] = {"photo", "line-art", "document", "clipping"};
    static constexpr std::string_view originals[] = {"print",    "slide",    "negative",
                                                     "document", "clipping", "object"};
    Node list{"pictures"};
    for (std::size_t n = chance_.below(5); n > 0; --n) {
      Node one{"picture", {{"id", new_id(picture_ids_)}, {"file", "scans/a b.tif"}}};
      maybe(one, "profile", "scans/scanner.icc");
      maybe(one, "use", std::string(chance_.pick(uses)));
      if (!contributor_ids_.empty()) maybe(one, "contributor", chance_.pick(contributor_ids_));
      if (chance_.one_in(2)) {
        Node original{"original", {{"kind", std::string(chance_.pick(originals))}}};
        if (chance_.one_in(2))
          original.attributes.insert(original.attributes.end(), {{"width", "9cm"}, {"height", "13cm"}});
        maybe(original, "lost", chance_.one_in(2) ? "yes" : "no");
        one.children.push_back(std::move(original));
      }
      list.children.push_back(std::move(one));
    }
    return list;
  }
  std::string new_id(std::vector<std::string> &ids) {
    ids.push_back(fmt::format("{}{}", chance_.pick(id_stems), ids.size()));
    return ids.back();
  }
  void rectangle(Node &node) {
    node.attributes.insert(node.attributes.end(), {{"x", length(-5, 100)},
                                                   {"y", length(-5, 100)},
                                                   {"width", length(1, 200)},
                                                   {"height", length(1, 200)}});
  }
  Node frame() {
    Node node{"frame", {{"id", new_id(frame_ids_)}}};
    if (!picture_ids_.empty()) maybe(node, "picture", chance_.pick(picture_ids_));
    rectangle(node);
    maybe(node, "turn", chance_.one_in(2) ? "-2.5" : "360");
    maybe(node, "mirror", chance_.one_in(2) ? "horizontal" : "vertical");
    maybe(node, "across-gutter", "yes");
    switch (chance_.below(6)) {
    case 0: node.children.push_back({"inside"}); break;
    case 1:
      node.children.push_back({"fill"});
      maybe(node.children[0], "focus-x", "33.3%");
      maybe(node.children[0], "focus-y", "100%");
      break;
    case 2:
      node.children.push_back(
          {"crop", {{"x", "33.3%"}, {"y", "0%"}, {"width", "66.7%"}, {"height", "100.0%"}}});
      break;
    case 3:
      node.children.push_back(
          {"crop", {{"x", "0px"}, {"y", "12.5px"}, {"width", "3000px"}, {"height", "2000px"}}});
      break;
    case 4:
      node.children.push_back({"picture-at"});
      rectangle(node.children[0]);
      break;
    default: break;
    }
    return node;
  }
  Node text() {
    static constexpr std::string_view kinds[] = {"caption", "body", "heading", "page-number", "spine"};
    Node node{"text"};
    maybe(node, "kind", std::string(chance_.pick(kinds)));
    rectangle(node);
    node.attributes.emplace_back("size", "9pt");
    if (chance_.below(4) > 0)
      node.text = "First line &amp; more\n  <![CDATA[<second>]]> line &#x2014; <!-- note -->end";
    return node;
  }
  Node pages() {
    Node list{"pages"};
    int number = chance_.between(1, 3);
    for (int n = chance_.between(1, 4); n > 0; --n) {
      if (chance_.one_in(6)) {
        const int count = chance_.between(1, 9);
        list.children.push_back({"blank", {{"number", std::to_string(number)}}});
        if (count > 1 || chance_.one_in(2))
          list.children.back().attributes.emplace_back("count", std::to_string(count));
        number += count;
        continue;
      }
      const bool left_page = (number % 2 != 0) == left_first_;
      const bool spread = left_page && chance_.one_in(2);
      Node page{spread ? "spread" : "page", {{"number", std::to_string(number)}}};
      if (chance_.one_in(6))
        page.attributes.insert(page.attributes.end(), {{"width", length(100, 250)}, {"height", "25 cm"}});
      const bool blank = chance_.one_in(6);
      if (blank || chance_.one_in(6)) page.attributes.emplace_back("blank", blank ? "yes" : "no");
      if (!blank) content(page);
      if (chance_.one_in(3)) page.children.push_back(sheet());
      list.children.push_back(std::move(page));
      number += (spread ? 2 : 1) + (chance_.one_in(5) ? 2 : 0);
    }
    return list;
  }

  Chance &chance_;
  bool left_first_ = false;
  std::vector<std::string> contributor_ids_, picture_ids_, frame_ids_;
};

} // namespace stoneproof::test
