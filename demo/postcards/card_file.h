// The finished PDF of the postcards while it is being made, through qpdf.
#pragma once

#include "demo/paint/canvas.h"
#include "demo/postcards/drawing.h"

#include <filesystem>
#include <optional>
#include <string>

#include <qpdf/QPDF.hh>

namespace stoneproof::demo {

/// A page and the boxes that it names; all in mm, `beside` beyond the trim on every side.
struct CardPage {
  double width = 0, height = 0; ///< of the trim
  double beside = 0;            ///< how far the MediaBox goes on beyond the trim
  std::optional<double> bleed;  ///< how far the BleedBox does; none: the page names neither it nor a TrimBox
  std::string operators;
  std::string damaged = {};      ///< Flate data of a second content stream, if any
  std::optional<Area> note = {}; ///< where a comment lies
  std::string note_words = {};
};

class CardFile {
public:
  /// Throws std::runtime_error when a font is not installed.
  CardFile();

  /// A picture that pages may draw by this name: its pixels as a JPEG, in sRGB.
  void add_picture(const std::string &name, const Canvas &canvas);
  void add_page(const CardPage &page);
  /// Encrypts it with an empty password and writes it; the same calls give the same bytes.
  void write(const std::filesystem::path &file);

  Face serif() const { return {"Serif", &serif_}; }
  Face italic() const { return {"Italic", &italic_}; }
  Face sans() const { return {"Sans", &sans_}; }
  /// Helvetica, which is not embedded; measured as sans.
  Face missing() const { return {"Missing", &sans_}; }

private:
  QPDFObjectHandle shared(const std::string &dictionary);
  QPDFObjectHandle stream(const std::string &data, const std::string &filter = "");
  void add_font(const std::string &name, const std::string &full_name, const TrueType &font);

  TrueType serif_, italic_, sans_;
  QPDF pdf_;
  QPDFObjectHandle profile_, resources_;
};

} // namespace stoneproof::demo
