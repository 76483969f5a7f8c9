// Each picture and font once, by the number of its object. The only way in is DrawnParts; tested in
// tests/engine/import/read_pages.test.cpp.
#include "engine/import/drawn_parts.h"

#include <utility>

namespace stoneproof::finished {

std::size_t DrawnParts::image(const Object &dictionary, std::size_t page) {
  const auto found = image_of_id_.find(dictionary.id());
  if (dictionary.id() != 0 && found != image_of_id_.end()) return found->second;
  image_of_id_[dictionary.id()] = images_.size();
  images_.push_back({dictionary, {}, {}, page, false});
  return images_.size() - 1;
}

std::size_t DrawnParts::inline_image(Operand dictionary, std::string bytes, const Object &colours,
                                     std::size_t page) {
  inline_dictionaries_.push_back(std::make_unique<Operand>(std::move(dictionary)));
  images_.push_back({Object(inline_dictionaries_.back().get()), colours, std::move(bytes), page, true});
  return images_.size() - 1;
}

std::size_t DrawnParts::font(const Object &dictionary) {
  const auto found = font_of_id_.find(dictionary.id());
  if (dictionary.id() != 0 && found != font_of_id_.end()) return found->second;
  font_of_id_[dictionary.id()] = fonts_.size();
  fonts_.push_back(read_font(file_, dictionary));
  return fonts_.size() - 1;
}

} // namespace stoneproof::finished
