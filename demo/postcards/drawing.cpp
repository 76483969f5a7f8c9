// Writes the operators of a page. Only way in: drawing.h.
#include "demo/postcards/drawing.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <stdexcept>

namespace stoneproof::demo {

namespace {

std::string number(double value) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.4f ", value);
  return text.data();
}

/// UTF-8 of up to three bytes, which is all that WinAnsiEncoding can need, as its codes.
std::string codes_of(const std::string &words) {
  std::string codes;
  for (std::size_t i = 0; i < words.size();) {
    const auto byte = [&](std::size_t at) {
      return static_cast<char32_t>(static_cast<unsigned char>(words.at(at)));
    };
    const std::size_t count = byte(i) < 0x80 ? 1 : byte(i) < 0xE0 ? 2 : 3;
    char32_t character = count == 1 ? byte(i) : byte(i) & (count == 2 ? 0x1F : 0x0F);
    for (std::size_t more = 1; more < count; ++more) character = character << 6 | (byte(i + more) & 0x3F);
    codes += static_cast<char>(win_ansi(character));
    i += count;
  }
  return codes;
}

std::string in_brackets(const std::string &codes) {
  std::string out = "(";
  for (const char code : codes) {
    if (code == '(' || code == ')' || code == '\\') out += '\\';
    out += code;
  }
  return out + ")";
}

} // namespace

Drawing::Drawing(double height, double beside, double times)
    : height_(height), beside_(beside), scale_(points_a_mm * times) {}

std::string Drawing::place(double x, double y) const {
  return number((x + beside_) * scale_) + number((height_ + beside_ - y) * scale_);
}

std::string Drawing::rectangle(const Area &area) const {
  return place(area.x, area.y + area.height) + number(area.width * scale_) + number(area.height * scale_) +
         "re ";
}

Drawing &Drawing::set(const std::string &operators) {
  out_ += operators + "\n";
  return *this;
}

Drawing &Drawing::fill(const Area &area) { return set(rectangle(area) + "f"); }

Drawing &Drawing::frame(const Area &area, double width_pt) {
  return set(number(width_pt) + "w " + rectangle(area) + "S");
}

Drawing &Drawing::line(double x, double y, double to_x, double to_y, double width_pt) {
  return set(number(width_pt) + "w " + place(x, y) + "m " + place(to_x, to_y) + "l S");
}

Drawing &Drawing::picture(const std::string &name, double aspect, const Area &area) {
  const double width = std::max(area.width, area.height * aspect), height = width / aspect;
  const double x = area.x + (area.width - width) / 2, y = area.y + (area.height - height) / 2;
  return set("q " + rectangle(area) + "W n " + number(width * scale_) + "0 0 " + number(height * scale_) +
             place(x, y + height) + "cm /" + name + " Do Q");
}

Drawing &Drawing::text(const Face &face, double size_pt, double x, double y, const std::string &words,
                       Align align, double spread) {
  const std::string codes = codes_of(words);
  double width = -spread;
  for (const char code : codes)
    width += face.font->advances[static_cast<unsigned char>(code)] * size_pt / 1000 + spread;
  const double before = align == Align::left ? 0 : align == Align::centre ? width / 2 : width;
  const double times = scale_ / points_a_mm;
  return set("BT /" + face.name + " " + number(size_pt * times) + "Tf " + number(spread * times) + "Tc " +
             place(x - before / points_a_mm, y) + "Td " + in_brackets(codes) + " Tj ET");
}

Drawing &Drawing::lines(const Face &face, double size_pt, double leading, double x, double y,
                        std::initializer_list<const char *> words) {
  for (const char *line : words) {
    text(face, size_pt, x, y, line);
    y += leading;
  }
  return *this;
}

} // namespace stoneproof::demo
