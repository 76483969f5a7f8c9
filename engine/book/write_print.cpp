// What a finished PDF tells, as XML. Tested in tests/engine/book/write_book.test.cpp.
#include "engine/book/write_parts.h"

namespace stoneproof {

namespace {

void write_rect(XmlText &xml, std::string_view name, const Rect &rect) {
  xml.open(name).rect(rect);
  xml.close();
}

void write_box(XmlText &xml, std::string_view kind, const std::optional<Rect> &rect) {
  if (!rect) return;
  xml.open("box").word("kind", kind).rect(*rect);
  xml.close();
}

} // namespace

void write_print_file(XmlText &xml, const PrintFile &file) {
  xml.open("print-file").word("file", file.file).word("version", file.version);
  xml.yes_no("encrypted", file.encrypted);
  if (file.mended) xml.word("mended", "yes");
  if (file.cut_short) xml.word("cut-short", "yes");
  if (!file.output_intent.empty()) xml.word("output-intent", file.output_intent);
  for (const PrintFont &font : file.fonts) {
    xml.open("font").word("name", font.name).yes_no("embedded", font.embedded);
    xml.word("first-page", std::to_string(font.first_page));
    xml.close();
  }
  xml.close();
}

void write_print_page(XmlText &xml, const PrintPage &page) {
  xml.open("sheet");
  if (!page.label.empty()) xml.word("label", page.label);
  const auto flag = [&](std::string_view name, bool value) {
    if (value) xml.word(name, "yes");
  };
  flag("transparent", page.transparent);
  flag("broken", page.broken);
  flag("cut-short", page.cut_short);
  flag("gray", page.painted_in.gray);
  flag("rgb", page.painted_in.rgb);
  flag("cmyk", page.painted_in.cmyk);
  flag("spot", page.painted_in.spot);
  write_box(xml, "media", page.boxes.media);
  write_box(xml, "crop", page.boxes.crop);
  write_box(xml, "bleed", page.boxes.bleed);
  write_box(xml, "trim", page.boxes.trim);
  write_box(xml, "art", page.boxes.art);
  if (page.painted) write_rect(xml, "painted", *page.painted);
  for (const ThinLine &line : page.lines) {
    xml.open("thin-line").length("thickness", line.width).rect(line.rect);
    xml.close();
  }
  for (const PageNote &note : page.notes) {
    xml.open("note").word("kind", note.kind).yes_no("prints", note.prints).rect(note.rect);
    xml.close();
  }
  for (const Rect &rect : page.hidden_pictures) write_rect(xml, "hidden-picture", rect);
  xml.close();
}

} // namespace stoneproof
