// Pictures and forms of a content stream (ISO 32000-1, 8.9 and 8.10).
#include "engine/import/page_reader.h"

#include <algorithm>
#include <utility>

namespace stoneproof::finished {

namespace {

constexpr std::size_t deepest_form = 24, most_streams = 20'000, most_images = 20'000;
constexpr std::size_t most_form_content = 64'000'000; ///< of one
constexpr std::size_t most_followed = 256'000'000;    ///< of all on a page, each as often as it is drawn

} // namespace

void PageReader::draw_object(const Operation &given) {
  const Object object = resource("XObject", given.last_name());
  const Object layer = object["OC"];
  if (!shows() || (layer && !layers_.show(layer))) return;
  const std::string kind = object["Subtype"].name();
  if (kind == "Image")
    draw_image(parts_.image(object, number_));
  else if (kind == "Form")
    draw_form(object);
}

void PageReader::draw_inline_image(const Operation &given) {
  if (!shows() || given.operands.empty() || drawing_.images.size() >= most_images) return;
  draw_image(parts_.inline_image(given.operands[0], std::string(given.data), level_->resources["ColorSpace"],
                                 number_));
}

void PageReader::draw_image(std::size_t image) {
  if (drawing_.images.size() >= most_images) {
    drawing_.cut_short = true;
    return;
  }
  if (in_glyph_ && parts_.images()[image].stencil()) return;
  const Outline whole = outline_of({0, 0, 1, 1}, state_.to_page);
  drawing_.images.push_back({image, state_.to_page, shared_part(whole, state_.clip), tiling_});
  drawing_.order.push_back(true);
  const ImageSource &source = parts_.images()[image];
  if (source.dictionary["SMask"].is_stream()) drawing_.transparent = true;
}

void PageReader::draw_form(const Object &form) {
  const Matrix map = matrix_of(form["Matrix"]) * state_.to_page;
  const auto box = box_in(form["BBox"]);
  if (!map.finite()) return;
  const Outline clip = box ? shared_part(outline_of(*box, map), state_.clip) : state_.clip;
  const Object own = form["Resources"];
  follow_within(form, own ? own : level_->resources, map, clip);
}

void PageReader::draw_note(const ShownNote &note) {
  const auto place = place_of_appearance(note);
  if (!note.prints || !place || (note.appearance["OC"] && !layers_.show(note.appearance["OC"]))) return;
  Level bare;
  Level *const outer = std::exchange(level_, &bare);
  state_.to_page = *place * state_.to_page;
  draw_form(note.appearance);
  level_ = outer;
}

void PageReader::follow_within(const Object &stream, const Object &resources, const Matrix &map,
                               const Outline &clip) {
  if (std::find(within_.begin(), within_.end(), stream.id()) != within_.end()) return; // it draws itself
  if (within_.size() >= deepest_form || ++streams_ > most_streams || followed_ > most_followed) {
    drawing_.cut_short = true;
    return;
  }
  const Decoded content = file_.decoded(stream, most_form_content);
  drawing_.broken = drawing_.broken || (!content.whole && !content.beyond_limit);
  drawing_.cut_short = drawing_.cut_short || content.beyond_limit;
  followed_ += content.bytes.size();
  within_.push_back(stream.id());
  const GraphicsState outer = state_;
  const Path outer_path = std::exchange(path_, {});
  const Matrix outer_text = text_, outer_line = line_start_;
  state_.to_page = map;
  state_.clip = clip;
  follow(content.bytes, resources);
  state_ = outer;
  path_ = outer_path;
  text_ = outer_text;
  line_start_ = outer_line;
  within_.pop_back();
}

} // namespace stoneproof::finished
