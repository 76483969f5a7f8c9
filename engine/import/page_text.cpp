// Text of a content stream: where each line lies and what it says (ISO 32000-1, 9.4).
#include "engine/import/page_reader.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace stoneproof::finished {

namespace {

constexpr std::size_t most_texts = 200'000;
constexpr int unseen_mode = 3;
/// A jump to the right by so much of the em stands for a space between words: half the width of a usual one.
/// Common practice of programs that take text out, from memory.
constexpr double word_gap = 0.15;

} // namespace

void PageReader::begin_text(const Operation &) { text_ = line_start_ = {}; }

void PageReader::set_font(const Operation &given) {
  if (given.operands.size() < 2) return;
  const Object font = resource("Font", given.operands[0].text);
  if (font) state_.font = parts_.font(font);
  state_.size = given.number(1);
}

void PageReader::set_text_value(const Operation &given) {
  const double value = given.number(0);
  if (given.name == "Tc") state_.character_space = value;
  if (given.name == "Tw") state_.word_space = value;
  if (given.name == "Tz") state_.width_share = value / 100;
  if (given.name == "TL") state_.leading = value;
  if (given.name == "Ts") state_.rise = value;
  if (given.name == "Tr") state_.text_mode = static_cast<int>(std::clamp(value, 0.0, 7.0));
}

void PageReader::move_text(const Operation &given) {
  line_start_ = Matrix{1, 0, 0, 1, given.number(0), given.number(1)} * line_start_;
  text_ = line_start_;
}

void PageReader::move_text_and_lead(const Operation &given) {
  state_.leading = -given.number(1);
  move_text(given);
}

void PageReader::set_text_matrix(const Operation &given) {
  if (!given.has_numbers(6)) return;
  line_start_ = {given.number(0), given.number(1), given.number(2),
                 given.number(3), given.number(4), given.number(5)};
  text_ = line_start_;
}

void PageReader::next_line(const Operation &) {
  line_start_ = Matrix{1, 0, 0, 1, 0, -state_.leading} * line_start_;
  text_ = line_start_;
}

void PageReader::show(const Operation &given) { show_strings(given.operands); }

void PageReader::show_on_next_line(const Operation &given) {
  if (given.operands.size() >= 3) {
    state_.word_space = given.number(0);
    state_.character_space = given.number(1);
  }
  next_line(given);
  if (!given.operands.empty()) show_strings({given.operands.back()});
}

void PageReader::show_spaced(const Operation &given) {
  if (!given.operands.empty()) show_strings(given.operands.back().items);
}

void PageReader::draw_glyph(const Font &font, unsigned code, double advance) {
  const auto found = font.pictures.find(code);
  if (found == font.pictures.end() || !shows() || state_.text_mode == unseen_mode) return;
  const Matrix in_text{state_.size * state_.width_share, 0,          0, state_.size,
                       advance * state_.width_share,     state_.rise};
  const Matrix map = font.glyph_space * in_text * text_ * state_.to_page;
  const Object glyph = found->second, own = font.dictionary["Resources"];
  if (!map.finite()) return;
  const bool outer = std::exchange(in_glyph_, true);
  follow_within(glyph, own ? own : level_->resources, map, state_.clip);
  in_glyph_ = outer;
}

void PageReader::show_strings(const std::vector<Operand> &items) {
  if (!state_.font) return;
  const Font &font = parts_.fonts()[*state_.font];
  const double em = font.type3 ? font.glyph_space.a : 0.001; // a unit of the widths, in the unit of the size
  double advance = 0, end = 0;                               // in text space, before the width share
  std::string text;
  for (const Operand &item : items) {
    if (item.is(Operand::Kind::number)) {
      advance -= item.number / 1000 * state_.size;
      if (-item.number / 1000 > word_gap && !text.empty() && text.back() != ' ') text += ' ';
      continue;
    }
    const std::size_t step = font.two_bytes ? 2 : 1;
    for (std::size_t at = 0; at + step <= item.text.size(); at += step) {
      unsigned code = static_cast<unsigned char>(item.text[at]);
      if (font.two_bytes) code = code << 8 | static_cast<unsigned char>(item.text[at + 1]);
      const std::string &character = font.character_of(code);
      text += character;
      draw_glyph(font, code, advance);
      advance += font.width_of(code) * em * state_.size + state_.character_space;
      if (!font.two_bytes && code == ' ') advance += state_.word_space; // whatever the character (9.3.3)
      if (character != " ") end = advance;
    }
  }
  const Matrix run = Matrix{state_.width_share, 0, 0, 1, 0, state_.rise} * text_ * state_.to_page;
  const Box box = box_of({0, font.descent * state_.size}, {end, font.ascent * state_.size});
  const double size = std::abs(state_.size) * std::hypot(run.c, run.d);
  text_ = Matrix{1, 0, 0, 1, advance * state_.width_share, 0} * text_;
  const bool some = text.find_first_not_of(' ') != std::string::npos && box.width() > 0 && size > 0;
  if (!some || !run.finite() || !std::isfinite(size) || !shows() || drawing_.texts.size() >= most_texts)
    return;
  const Outline outline = outline_of(box, run);
  if (shared_part(outline, state_.clip).empty()) return;
  const bool seen = state_.text_mode % 4 != unseen_mode;
  if (seen) use(state_.fill);
  drawing_.texts.push_back({*state_.font, size, outline, std::move(text), seen});
  drawing_.order.push_back(false);
}

} // namespace stoneproof::finished
