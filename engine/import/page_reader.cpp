// Operators -> what they do. The only way in is PageReader; its other parts are page_paths.cpp,
// page_pictures.cpp and page_text.cpp; tested in tests/engine/import/read_pages.test.cpp.
#include "engine/import/page_reader.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

namespace stoneproof::finished {

namespace {

/// Bounds on one page. The busiest real pages, maps, have about a million operations.
constexpr std::size_t most_operations = 4'000'000;
constexpr std::size_t most_saved = 2'000; ///< ISO 32000-1, annex C knows of 28
constexpr std::size_t most_content = 256'000'000;

} // namespace

PageReader::PageReader(const PdfFile &file, DrawnParts &parts, const Layers &layers, std::size_t number,
                       const SheetBoxes &boxes)
    : file_(file), parts_(parts), layers_(layers), number_(number), trim_(trim_of(boxes)) {
  state_.clip = outline_of(boxes.media, {}); // what the page shows at most
}

PageReader::Handler PageReader::handler_of(const std::string &name) {
  using P = PageReader;
  static const std::unordered_map<std::string, Handler> handlers = {{"q", &P::save},
                                                                    {"Q", &P::restore},
                                                                    {"cm", &P::concatenate},
                                                                    {"w", &P::set_line_width},
                                                                    {"gs", &P::set_state},
                                                                    {"BDC", &P::begin_content},
                                                                    {"BMC", &P::begin_content},
                                                                    {"EMC", &P::end_content},
                                                                    {"cs", &P::set_fill_space},
                                                                    {"CS", &P::set_stroke_space},
                                                                    {"g", &P::set_fill_gray},
                                                                    {"G", &P::set_stroke_gray},
                                                                    {"rg", &P::set_fill_rgb},
                                                                    {"RG", &P::set_stroke_rgb},
                                                                    {"k", &P::set_fill_cmyk},
                                                                    {"K", &P::set_stroke_cmyk},
                                                                    {"sc", &P::set_fill},
                                                                    {"scn", &P::set_fill},
                                                                    {"SC", &P::set_stroke},
                                                                    {"SCN", &P::set_stroke},
                                                                    {"m", &P::move},
                                                                    {"l", &P::line},
                                                                    {"c", &P::curve},
                                                                    {"v", &P::curve_from_here},
                                                                    {"y", &P::curve_to_end},
                                                                    {"re", &P::rectangle},
                                                                    {"W", &P::clip_next},
                                                                    {"W*", &P::clip_next},
                                                                    {"n", &P::end_path},
                                                                    {"f", &P::fill_path},
                                                                    {"F", &P::fill_path},
                                                                    {"f*", &P::fill_path},
                                                                    {"S", &P::stroke_path},
                                                                    {"s", &P::stroke_path},
                                                                    {"B", &P::fill_and_stroke},
                                                                    {"B*", &P::fill_and_stroke},
                                                                    {"b", &P::fill_and_stroke},
                                                                    {"b*", &P::fill_and_stroke},
                                                                    {"sh", &P::shade},
                                                                    {"Do", &P::draw_object},
                                                                    {"BI", &P::draw_inline_image},
                                                                    {"BT", &P::begin_text},
                                                                    {"Tf", &P::set_font},
                                                                    {"Tc", &P::set_text_value},
                                                                    {"Tw", &P::set_text_value},
                                                                    {"Tz", &P::set_text_value},
                                                                    {"TL", &P::set_text_value},
                                                                    {"Ts", &P::set_text_value},
                                                                    {"Tr", &P::set_text_value},
                                                                    {"Td", &P::move_text},
                                                                    {"TD", &P::move_text_and_lead},
                                                                    {"Tm", &P::set_text_matrix},
                                                                    {"T*", &P::next_line},
                                                                    {"Tj", &P::show},
                                                                    {"'", &P::show_on_next_line},
                                                                    {"\"", &P::show_on_next_line},
                                                                    {"TJ", &P::show_spaced}};
  const auto found = handlers.find(name);
  return found == handlers.end() ? nullptr : found->second;
}

PageDrawing PageReader::read(const Object &page, const Object &resources,
                             const std::vector<ShownNote> &notes) {
  const Object contents = page["Contents"];
  std::string content;
  const auto add = [&](const Object &stream) {
    Decoded decoded = file_.decoded(stream, most_content);
    drawing_.broken = drawing_.broken || (!decoded.whole && !decoded.beyond_limit);
    drawing_.cut_short = drawing_.cut_short || decoded.beyond_limit || content.size() > most_content;
    if (content.empty())
      content = std::move(decoded.bytes);
    else if (content.size() <= most_content)
      content += decoded.bytes;
    content += '\n';
    file_.forget(stream);
  };
  if (contents.is_array())
    for (std::size_t i = 0; i < contents.size(); ++i) add(contents.at(i));
  else if (contents)
    add(contents);
  const GraphicsState bare = state_;
  follow(content, resources);
  for (const ShownNote &note : notes) {
    state_ = bare;
    draw_note(note);
  }
  return std::move(drawing_);
}

void PageReader::follow(const std::string &content, const Object &resources) {
  Level level;
  level.resources = resources;
  level.base = state_.to_page;
  Level *const outer = std::exchange(level_, &level);
  ContentParser parser(content);
  for (Operation operation; parser.next(operation);) {
    if (++operations_ > most_operations) {
      drawing_.cut_short = true;
      break;
    }
    if (const Handler handler = handler_of(operation.name)) (this->*handler)(operation);
  }
  level_ = outer;
}

Object PageReader::resource(const char *kind, std::string_view name) const {
  return level_->resources[kind][name];
}

void PageReader::save(const Operation &) {
  if (level_->saved.size() < most_saved)
    level_->saved.push_back(state_);
  else
    ++level_->unsaved;
}

void PageReader::restore(const Operation &) {
  if (level_->unsaved > 0) {
    --level_->unsaved;
    return;
  }
  if (level_->saved.empty()) return;
  state_ = std::move(level_->saved.back());
  level_->saved.pop_back();
}

void PageReader::concatenate(const Operation &given) {
  if (!given.has_numbers(6)) return;
  const Matrix map{given.number(0), given.number(1), given.number(2),
                   given.number(3), given.number(4), given.number(5)};
  const Matrix to_page = map * state_.to_page;
  if (to_page.finite()) state_.to_page = to_page;
}

void PageReader::set_line_width(const Operation &given) {
  state_.line_width = std::max(0.0, given.number(0));
}

void PageReader::set_state(const Operation &given) {
  const Object values = resource("ExtGState", given.last_name());
  if (const auto width = values["LW"].number()) state_.line_width = std::max(0.0, *width);
  const Object font = values["Font"];
  if (font.size() == 2) {
    state_.font = parts_.font(font.at(0));
    state_.size = font.at(1).number_or(0);
  }
  const Object blend = values["BM"];
  const std::string mode = blend.is_array() ? blend.at(0).name() : blend.name();
  const bool blended = !mode.empty() && mode != "Normal" && mode != "Compatible";
  const bool see_through = values["ca"].number_or(1) < 1 || values["CA"].number_or(1) < 1;
  if (blended || see_through || values["SMask"].is_dictionary()) drawing_.transparent = true;
}

void PageReader::begin_content(const Operation &given) {
  bool showing = true;
  if (given.name == "BDC" && given.operands.size() == 2 && given.operands[0].text == "OC")
    showing = layers_.show(resource("Properties", given.last_name()));
  level_->layers.push_back(showing);
  level_->hidden += !showing;
}

void PageReader::end_content(const Operation &) {
  if (level_->layers.empty()) return;
  level_->hidden -= !level_->layers.back();
  level_->layers.pop_back();
}

} // namespace stoneproof::finished
