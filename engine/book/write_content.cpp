// Frames, texts and the XML that carries them. Tested in tests/engine/book/write_book.test.cpp.
#include "engine/book/write_parts.h"
#include "engine/xml/characters.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace stoneproof {

namespace {

/// Lines are parted by an empty line, which the reader wants.
std::string paragraphs(const std::string &text) {
  std::string parted;
  for (const char c : text) parted += c == '\n' ? "\n\n" : std::string(1, c);
  return parted;
}

void write_fit(XmlText &xml, const Fit &fit) {
  if (const auto *fill = std::get_if<Fill>(&fit)) {
    if (!fill->focus_said) return;
    xml.open("fill").number("focus-x", fill->focus_x * 100, "%").number("focus-y", fill->focus_y * 100, "%");
  } else if (const auto *share = std::get_if<CropShare>(&fit)) {
    xml.open("crop").number("x", share->x * 100, "%").number("y", share->y * 100, "%");
    xml.number("width", share->width * 100, "%").number("height", share->height * 100, "%");
  } else if (const auto *pixels = std::get_if<CropPixels>(&fit)) {
    xml.open("crop").number("x", pixels->part.x, "px").number("y", pixels->part.y, "px");
    xml.number("width", pixels->part.width, "px").number("height", pixels->part.height, "px");
  } else if (const auto *at = std::get_if<PictureAt>(&fit))
    xml.open("picture-at").rect(at->rect);
  else
    xml.open("inside");
  xml.close();
}

void write_frame(XmlText &xml, const Book &book, const Frame &frame) {
  xml.open("frame").word("id", frame.id);
  if (frame.picture) xml.word("picture", book.pictures[*frame.picture].id);
  xml.rect(frame.rect);
  if (frame.turn.degrees != 0) xml.number("turn", frame.turn.degrees, "");
  if (frame.mirror != Mirror::none) xml.word("mirror", word_of(mirror_words, frame.mirror));
  if (frame.across_gutter) xml.word("across-gutter", "yes");
  write_fit(xml, frame.fit);
  xml.close();
}

void write_text(XmlText &xml, const TextBlock &text) {
  xml.open("text")
      .word("kind", word_of(text_words, text.kind))
      .rect(text.rect)
      .length("size", text.type_size);
  xml.content(paragraphs(text.text));
  xml.close();
}

} // namespace

void XmlText::end_tag() {
  if (in_tag_) text_ += '>';
  in_tag_ = false;
}

XmlText &XmlText::open(std::string_view name) {
  if (in_tag_) text_ += ">\n";
  text_.append(2 * open_.size(), ' ');
  text_ += '<';
  text_ += name;
  open_.emplace_back(name);
  in_tag_ = true;
  return *this;
}

XmlText &XmlText::word(std::string_view attribute, std::string_view value) {
  text_ += fmt::format(" {}=\"{}\"", attribute, xml_escaped(value));
  return *this;
}

XmlText &XmlText::yes_no(std::string_view attribute, bool value) {
  return word(attribute, value ? "yes" : "no");
}

XmlText &XmlText::length(std::string_view attribute, Length value) {
  // Six decimals of a millimetre are finer than a tick.
  std::string digits = fmt::format("{:.6f}", value.mm());
  digits.erase(digits.find_last_not_of('0') + 1);
  if (digits.back() == '.') digits.pop_back();
  return word(attribute, digits + "mm");
}

XmlText &XmlText::number(std::string_view attribute, double value, std::string_view unit) {
  char digits[400];
  const auto written = std::to_chars(std::begin(digits), std::end(digits), value, std::chars_format::fixed);
  return word(attribute, std::string(std::begin(digits), written.ptr).append(unit));
}

XmlText &XmlText::rect(const Rect &rect) {
  return length("x", rect.x).length("y", rect.y).length("width", rect.width).length("height", rect.height);
}

void XmlText::content(std::string_view text) {
  end_tag();
  // A newline stands as itself in a text, where a reference would be read as a character of it.
  for (std::size_t from = 0; from <= text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    if (from > 0) text_ += '\n';
    text_ += xml_escaped(text.substr(from, end - from));
    from = end + 1;
  }
  has_text_ = true;
}

void XmlText::close() {
  if (in_tag_)
    text_ += "/>\n";
  else {
    if (!has_text_) text_.append(2 * (open_.size() - 1), ' ');
    text_ += fmt::format("</{}>\n", open_.back());
  }
  in_tag_ = has_text_ = false;
  open_.pop_back();
}

void write_content(XmlText &xml, const Book &book, const Page &page) {
  auto frame = page.frames.begin();
  auto text = page.texts.begin();
  while (frame != page.frames.end() || text != page.texts.end()) {
    const bool frame_next =
        text == page.texts.end() || (frame != page.frames.end() && frame->order < text->order);
    if (frame_next)
      write_frame(xml, book, *frame++);
    else
      write_text(xml, *text++);
  }
}

} // namespace stoneproof
