// The pictures and fonts that pages draw with, each once however often it is used.
#pragma once

#include "engine/import/fonts.h"
#include "engine/import/pdf_file.h"

#include <cstddef>
#include <deque>
#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

namespace stoneproof::finished {

/// A picture of the file: an image XObject, or one that stands in a content stream.
struct ImageSource {
  Object dictionary;
  Object colours;         ///< the ColorSpace resources where an inline image stands
  std::string bytes;      ///< of an inline image, encoded
  std::size_t page = 0;   ///< the first that shows it, counted from 0
  bool stands_in = false; ///< an inline image
  bool stencil() const { return dictionary["ImageMask"].flag(false); }
};

class DrawnParts {
public:
  explicit DrawnParts(const PdfFile &file) : file_(file) {}

  std::size_t image(const Object &dictionary, std::size_t page);
  std::size_t inline_image(Operand dictionary, std::string bytes, const Object &colours, std::size_t page);
  std::size_t font(const Object &dictionary);

  const std::vector<ImageSource> &images() const { return images_; }
  /// A font stays where it is while others come.
  const std::deque<Font> &fonts() const { return fonts_; }

private:
  const PdfFile &file_;
  std::vector<ImageSource> images_;
  std::deque<Font> fonts_;
  std::vector<std::unique_ptr<Operand>> inline_dictionaries_;
  std::unordered_map<std::uint32_t, std::size_t> image_of_id_, font_of_id_;
};

} // namespace stoneproof::finished
