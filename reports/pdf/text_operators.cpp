// Draws a shaped line. The only way in is append_text(); tested in tests/reports/pdf/text.test.cpp.
#include "reports/pdf/text_operators.h"

#include "reports/pdf/syntax.h"

#include <array>
#include <optional>

namespace stoneproof::pdf {
namespace {

/// Keeps the state between two glyphs: the font, the rise, and how far the pen has to be moved before the
/// next one.
class LineWriter {
public:
  LineWriter(std::string &out, const TextPlace &place, const Typesetter &typesetter, FontTable &fonts)
      : out_(out), place_(place), typesetter_(typesetter), fonts_(fonts) {}

  void write(const ShapedLine &line) {
    out_ += std::string("BT ") + (place_.down ? "0 -1 1 0 " : "") + number(place_.x_pt) + " " +
            number(place_.y_pt) + (place_.down ? " Tm\n" : " Td\n");
    for (const ShapedRun &run : line.runs) write(run, line.text);
    raise(0); // outlasts the text object
    out_ += "ET\n";
  }

private:
  void write(const ShapedRun &run, std::u32string_view text) {
    const auto &glyphs = run.glyphs;
    for (std::size_t i = 0; i < glyphs.size();) {
      std::size_t end = i + 1;
      while (end < glyphs.size() && glyphs[end].first == glyphs[i].first) ++end;
      const auto meaning = text.substr(glyphs[i].first, glyphs[i].count);
      if (end - i > 1) begin_actual_text(meaning);
      show(run.font, glyphs[i], meaning);
      for (std::size_t k = i + 1; k < end; ++k) show(run.font, glyphs[k], U"");
      if (end - i > 1) end_actual_text();
      i = end;
    }
    end_array();
  }

  /// Several glyphs that share their characters are read as one.
  void begin_actual_text(std::u32string_view text) {
    end_array();
    out_ += "/Span<</ActualText" + unicode_string(text) + ">>BDC\n";
  }
  void end_actual_text() {
    end_array();
    out_ += "EMC\n";
  }

  void show(FontId font, const ShapedGlyph &glyph, std::u32string_view text) {
    const double em = typesetter_.facts(font).units_per_em / 1000.0;
    const GlyphCode code = fonts_.code_of(font, glyph.id, text);
    use_font(code.font);
    raise(glyph.dy * place_.size_pt / (em * 1000));
    move(glyph.dx / em);
    begin_string();
    const std::array bytes{static_cast<char>(code.code >> 8), static_cast<char>(code.code & 0xFF)};
    out_ += hex_digits(std::string_view(bytes.data(), bytes.size()));
    move((glyph.advance - typesetter_.advance(font, glyph.id) - glyph.dx) / em);
  }

  void use_font(std::size_t font) {
    if (font_ == font) return;
    end_array();
    out_ += "/" + font_name(font) + " " + number(place_.size_pt) + " Tf\n";
    font_ = font;
  }

  void raise(double rise) {
    if (rise_ == rise) return;
    end_array();
    out_ += number(rise) + " Ts\n";
    rise_ = rise;
  }

  /// Thousandths of an em to the right, beyond what the glyphs' own widths move the pen.
  void move(double thousandths) { pending_ += thousandths; }

  void begin_string() {
    const std::string back = pending_ == 0 ? "0" : number(-pending_);
    const bool moved = back != "0"; // less than half a thousandth of a thousandth waits until it has grown
    if (!in_array_) out_ += "[";
    if (in_array_ && moved) out_ += ">";
    if (moved) out_ += back;
    if (!in_array_ || moved) out_ += "<";
    if (moved) pending_ = 0;
    in_array_ = true;
  }

  void end_array() {
    if (in_array_) out_ += ">]TJ\n";
    in_array_ = false;
  }

  std::string &out_;
  const TextPlace place_;
  const Typesetter &typesetter_;
  FontTable &fonts_;
  std::optional<std::size_t> font_;
  double rise_ = 0, pending_ = 0;
  bool in_array_ = false;
};

} // namespace

void append_text(std::string &out, const ShapedLine &line, const TextPlace &place,
                 const Typesetter &typesetter, FontTable &fonts) {
  LineWriter(out, place, typesetter, fonts).write(line);
}

} // namespace stoneproof::pdf
