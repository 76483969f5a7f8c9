// For write_book: XML as it grows, and the parts that lie on pages.
#pragma once

#include "engine/book/book.h"

#include <string>
#include <string_view>
#include <vector>

namespace stoneproof {

/// Elements are opened, given their attributes, filled, and closed; each stands on a line of its own.
class XmlText {
public:
  XmlText &open(std::string_view name);
  XmlText &word(std::string_view attribute, std::string_view value);
  XmlText &yes_no(std::string_view attribute, bool value);
  XmlText &length(std::string_view attribute, Length value);
  /// With as many digits as tell it apart, no exponent.
  XmlText &number(std::string_view attribute, double value, std::string_view unit);
  XmlText &rect(const Rect &rect);
  void content(std::string_view text);
  void close();

  std::string text() && { return std::move(text_); }

private:
  void end_tag();

  std::string text_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  std::vector<std::string> open_;
  bool in_tag_ = false;   ///< attributes may follow
  bool has_text_ = false; ///< the element holds text: it closes on the same line
};

/// The frames and texts of a page in their order.
void write_content(XmlText &xml, const Book &book, const Page &page);
void write_print_file(XmlText &xml, const PrintFile &file);
void write_print_page(XmlText &xml, const PrintPage &page);

} // namespace stoneproof
