// Writes a description, element by element. The only way in is book_text; tested in
// tests/engine/book/write_book.test.cpp.
#include "engine/book/write.h"
#include "engine/book/write_parts.h"

#include <cmath>
#include <utility>

namespace stoneproof {

namespace {

void write_edges(XmlText &xml, std::string_view name, const Edges &edges) {
  xml.open(name)
      .length("top", edges.top)
      .length("bottom", edges.bottom)
      .length("outside", edges.outside)
      .length("inside", edges.inside);
  xml.close();
}

void write_binding(XmlText &xml, const Binding &binding) {
  xml.open("binding").word("kind", word_of(binding_words, binding.kind));
  xml.word("first-page", word_of(side_words, binding.first_page));
  xml.length("gutter-loss", binding.gutter_loss);
  if (binding.signature) xml.word("signature", std::to_string(*binding.signature));
  xml.length("grind-off", binding.grind_off).length("glue", binding.glue).length("board", binding.board);
  if (binding.board_width) xml.length("board-width", *binding.board_width);
  xml.length("square", binding.square).length("turn-in", binding.turn_in).length("hinge", binding.hinge);
  xml.length("spine-lining", binding.spine_lining);
  xml.close();
}

void write_stock(XmlText &xml, std::string_view part, const std::optional<Stock> &stock) {
  if (!stock) return;
  xml.open("stock").word("part", part);
  if (stock->caliper) xml.length("caliper", *stock->caliper);
  if (stock->grammage) xml.number("grammage", *stock->grammage, "g/m2");
  if (stock->bulk) xml.number("bulk", *stock->bulk, "");
  if (stock->pages_per_inch) xml.number("pages-per-inch", *stock->pages_per_inch, "");
  xml.close();
}

void write_contributors(XmlText &xml, const Book &book) {
  if (book.contributors.empty()) return;
  xml.open("contributors");
  for (const Contributor &contributor : book.contributors) {
    xml.open("contributor").word("id", contributor.id).word("name", contributor.name);
    if (!contributor.contact.empty()) xml.word("contact", contributor.contact);
    if (contributor.language) xml.word("language", *contributor.language);
    xml.close();
  }
  xml.close();
}

void write_picture(XmlText &xml, const Book &book, const Picture &picture) {
  xml.open("picture").word("id", picture.id).word("file", picture.file);
  if (!picture.profile.empty()) xml.word("profile", picture.profile);
  if (picture.contributor) xml.word("contributor", book.contributors[*picture.contributor].id);
  xml.word("use", word_of(use_words, picture.use));
  if (picture.original) {
    xml.open("original").word("kind", word_of(original_words, picture.original->kind));
    if (picture.original->size)
      xml.length("width", picture.original->size->width).length("height", picture.original->size->height);
    if (picture.original->lost) xml.word("lost", "yes");
    xml.close();
  }
  xml.close();
}

void write_pages(XmlText &xml, const Book &book) {
  xml.open("pages");
  for (const Page &page : book.pages) {
    if (page.kind == PageKind::cover) continue;
    xml.open(page.kind == PageKind::spread ? "spread" : "page").word("number", std::to_string(page.number));
    if (page.blank) xml.word("blank", "yes");
    if (page.trim) xml.length("width", page.trim->width).length("height", page.trim->height);
    write_content(xml, book, page);
    if (page.print) write_print_page(xml, *page.print);
    xml.close();
  }
  xml.close();
}

void write_cover(XmlText &xml, const Book &book) {
  if (!book.cover) return;
  xml.open("cover").length("width", book.cover->size.width).length("height", book.cover->size.height);
  xml.length("spine", book.cover->spine).length("flap", book.cover->flap);
  write_content(xml, book, book.pages.front());
  xml.close();
}

} // namespace

std::string book_text(const Book &book) {
  XmlText xml;
  xml.open("book").word("xmlns", "urn:stoneproof:book:1").word("title", book.title);
  xml.word("language", book.language);
  xml.open("trim").length("width", book.trim.width).length("height", book.trim.height);
  xml.close();
  write_edges(xml, "bleed", book.bleed);
  write_edges(xml, "safe-margin", book.safe_margin);
  write_binding(xml, book.binding);
  if (book.stocks.block || book.stocks.cover || book.stocks.endpaper) {
    xml.open("stocks");
    write_stock(xml, "block", book.stocks.block);
    write_stock(xml, "cover", book.stocks.cover);
    write_stock(xml, "endpaper", book.stocks.endpaper);
    xml.close();
  }
  if (book.print_file) write_print_file(xml, *book.print_file);
  write_contributors(xml, book);
  if (!book.pictures.empty()) {
    xml.open("pictures");
    for (const Picture &picture : book.pictures) write_picture(xml, book, picture);
    xml.close();
  }
  write_cover(xml, book);
  write_pages(xml, book);
  xml.close();
  return std::move(xml).text();
}

} // namespace stoneproof
