// Chooses fonts for a line and measures it. The only way in is Typesetter; tested in
// tests/reports/type/typesetter.test.cpp.
#include "reports/type/typesetter.h"

#include "reports/type/font.h"
#include "reports/type/unicode.h"

#include <algorithm>
#include <array>
#include <span>
#include <unordered_map>

namespace stoneproof {
namespace {

// In the order of Face, then the fallbacks. Lato for its figures of one width and its cover of Latin, Greek
// and Cyrillic; DejaVu Sans for the breadth of what it has.
constexpr std::array<FontWanted, 7> fonts_wanted{{
    {"Gentium Plus", "fonts-sil-gentiumplus", false, false},
    {"Gentium Plus", "fonts-sil-gentiumplus", true, false},
    {"Gentium Plus", "fonts-sil-gentiumplus", false, true},
    {"Lato", "fonts-lato", false, false},
    {"Lato", "fonts-lato", true, false},
    {"DejaVu Sans", "fonts-dejavu-core", false, false},
    {"DejaVu Sans", "fonts-dejavu-core", true, false},
}};

constexpr FontId fallback = 5, bold_fallback = 6;

FontId font_for(Face face) { return static_cast<FontId>(face); }

/// The fonts to try for a face, best first: its own, the fallback, then the other ones that were loaded, for
/// a bold face those of them first that are bold.
std::vector<FontId> fonts_for(Face face, const std::vector<Font> &all) {
  const bool bold = face == Face::text_bold || face == Face::label_bold;
  std::vector<FontId> fonts{font_for(face), bold ? bold_fallback : fallback};
  if (bold) fonts.push_back(fallback); // it has more signs
  const std::size_t own = fonts.size();
  for (FontId other = fonts_wanted.size(); other < all.size(); ++other) fonts.push_back(other);
  constexpr int bold_weight = 600; // semi-bold of OpenType's usWeightClass, and above
  if (bold)
    std::stable_partition(fonts.begin() + static_cast<std::ptrdiff_t>(own), fonts.end(),
                          [&all](FontId font) { return all[font].facts().weight >= bold_weight; });
  return fonts;
}

/// The characters of `words` that neither the fallback nor every face and every other font has, each once.
std::u32string lacking(const std::vector<Font> &fonts, std::u32string_view words) {
  std::u32string characters(words);
  std::sort(characters.begin(), characters.end());
  characters.erase(std::unique(characters.begin(), characters.end()), characters.end());
  std::erase_if(characters, [&](char32_t c) {
    const auto has = [c](const Font &font) { return font.has(c); };
    return c <= 0x20 || c == 0xFFFD || std::any_of(fonts.begin() + fallback, fonts.end(), has) ||
           std::all_of(fonts.begin(), fonts.begin() + fallback, has);
  });
  return characters;
}

std::u32string settable(std::string_view line) {
  std::u32string text = code_points(line);
  std::erase(text, U'\u00AD');
  for (char32_t &c : text) {
    if (c == U'\t' || c == U'\n' || c == U'\r') c = U' ';
    if (c < 0x20 || (c >= 0x7F && c < 0xA0)) c = 0xFFFD;
  }
  return text;
}

/// What one shaping gave: the glyphs of `span` in one font, valid until the next shaping in the same thread.
struct Piece {
  FontId font;
  TextSpan span;
  std::span<const hb_glyph_info_t> infos;
  std::span<const hb_glyph_position_t> positions;
};

/// Shapes a line piece by piece, from left to right as seen, each in the first of `fonts` that has its
/// characters.
template <class Sink>
class Shaper {
public:
  Shaper(const std::vector<Font> &all, std::vector<FontId> fonts, std::u32string_view text, Sink sink)
      : all_(all), fonts_(std::move(fonts)), text_(text), sink_(std::move(sink)) {}

  void run() {
    for (const TextSpan &span : spans_of(text_)) set(span, 0);
  }

private:
  /// With the font at a place in the order, as far as it has the characters; one that none has is set as the
  /// fallback's white square.
  void set(const TextSpan &span, std::size_t place) {
    if (place == fonts_.size()) {
      sink_(shaped(span, fonts_[1], all_[fonts_[1]].square()));
      return;
    }
    const Piece piece = shaped(span, fonts_[place]);
    if (lacks_any(piece))
      split(piece, place);
    else
      sink_(piece);
  }

  Piece shaped(const TextSpan &span, FontId font, GlyphId missing = 0) {
    // One buffer a thread: making one costs as much as shaping a short word.
    thread_local const HbBuffer buffer(hb_buffer_create());
    all_[font].shape(text_, span, buffer.get(), missing);
    unsigned count = 0;
    const auto *infos = hb_buffer_get_glyph_infos(buffer.get(), &count);
    return {font, span, {infos, count}, {hb_buffer_get_glyph_positions(buffer.get(), &count), count}};
  }

  static bool lacks_any(const Piece &piece) {
    return std::any_of(piece.infos.begin(), piece.infos.end(),
                       [](const auto &info) { return info.codepoint == 0; });
  }

  /// Cuts between clusters that the font has and those it lacks, so that a letter stays with its accents.
  void split(const Piece &piece, std::size_t place) {
    const std::size_t first = piece.span.first, count = piece.span.count;
    std::vector<bool> starts(count), lacks(count);
    for (const auto &info : piece.infos) {
      starts[info.cluster - first] = true;
      if (info.codepoint == 0) lacks[info.cluster - first] = true;
    }
    std::vector<TextSpan> parts;
    for (std::size_t i = 0; i < count; ++i) {
      if (i > 0 && !starts[i]) lacks[i] = lacks[i - 1];
      if (parts.empty() || lacks[i] != lacks[i - 1])
        parts.push_back({first + i, 0, piece.span.script, piece.span.right_to_left});
      ++parts.back().count;
    }
    if (piece.span.right_to_left) std::reverse(parts.begin(), parts.end());
    for (const TextSpan &part : parts)
      lacks[part.first - first] ? set(part, place + 1) : sink_(shaped(part, fonts_[place]));
  }

  const std::vector<Font> &all_;
  const std::vector<FontId> fonts_;
  const std::u32string_view text_;
  Sink sink_;
};

/// Appends the glyphs of a piece, each with the characters it came from: those up to where the next cluster
/// begins.
void append_glyphs(const Piece &piece, std::vector<ShapedGlyph> &glyphs) {
  std::vector<std::size_t> starts;
  for (const auto &info : piece.infos) starts.push_back(info.cluster);
  starts.push_back(piece.span.first + piece.span.count);
  std::sort(starts.begin(), starts.end());
  for (std::size_t i = 0; i < piece.infos.size(); ++i) {
    const std::size_t first = piece.infos[i].cluster;
    const std::size_t end = *std::upper_bound(starts.begin(), starts.end(), first);
    const auto &p = piece.positions[i];
    glyphs.push_back({piece.infos[i].codepoint, p.x_advance, p.x_offset, p.y_offset, first, end - first});
  }
}

/// A cheap test of UTF-8 that is right when it says no. Every right-to-left script lies in U+0590 to U+08FF
/// or above U+A000; there the look of a word may depend on its neighbours.
bool may_run_right_to_left(std::string_view line) {
  return std::any_of(line.begin(), line.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte >= 0xD6 && byte <= 0xE0) || byte >= 0xEA;
  });
}

/// A word (or a space) as it is set wherever it stands.
struct SetWord {
  ShapedLine line;
  double ems = 0;
};

/// Words that one thread has met.
class WordCache {
public:
  /// Forgets everything when asked for other fonts than before; keeps them alive, so that an address is not
  /// mistaken.
  void belong_to(const std::shared_ptr<const std::vector<Font>> &fonts) {
    if (fonts_ == fonts) return;
    fonts_ = fonts;
    words_.clear();
  }

  template <class Set>
  const SetWord &get(Face face, std::string_view word, Set set) {
    key_.assign(1, static_cast<char>(face)).append(word);
    if (const auto known = words_.find(key_); known != words_.end()) return known->second;
    if (words_.size() == most) words_.clear();
    return words_.emplace(key_, set()).first->second;
  }

private:
  static constexpr std::size_t most = 1 << 12; // some megabytes at most; a book's words

  std::shared_ptr<const std::vector<Font>> fonts_;
  std::unordered_map<std::string, SetWord> words_;
  std::string key_;
};

std::vector<ShapedGlyph> &glyphs_in(ShapedLine &line, FontId font) {
  if (line.runs.empty() || line.runs.back().font != font) line.runs.push_back({font, {}});
  return line.runs.back().glyphs;
}

void append(ShapedLine &line, const ShapedLine &word) {
  for (const ShapedRun &run : word.runs) {
    auto &glyphs = glyphs_in(line, run.font);
    for (ShapedGlyph glyph : run.glyphs) {
      glyph.first += line.text.size();
      glyphs.push_back(glyph);
    }
  }
  line.text += word.text;
}

ShapedLine set_whole(const std::vector<Font> &all, Face face, std::string_view text) {
  ShapedLine line{settable(text), {}};
  Shaper(all, fonts_for(face, all), line.text, [&line](const Piece &piece) {
    if (!piece.infos.empty()) append_glyphs(piece, glyphs_in(line, piece.font));
  }).run();
  return line;
}

double ems_of(const std::vector<Font> &all, const ShapedLine &line) {
  double ems = 0;
  for (const ShapedRun &run : line.runs) {
    std::int64_t units = 0;
    for (const ShapedGlyph &glyph : run.glyphs) units += glyph.advance;
    ems += static_cast<double>(units) / all[run.font].facts().units_per_em;
  }
  return ems;
}

/// Calls `use` with each word and each space of a line, or with the whole line where words are not
/// independent.
template <class Use>
void for_each_word(const std::shared_ptr<const std::vector<Font>> &fonts, Face face, std::string_view line,
                   Use use) {
  const auto set = [&](std::string_view word) {
    SetWord done{set_whole(*fonts, face, word)};
    done.ems = ems_of(*fonts, done.line);
    return done;
  };
  if (may_run_right_to_left(line)) {
    use(set(line));
    return;
  }
  thread_local WordCache cache;
  cache.belong_to(fonts);
  while (!line.empty()) {
    const std::string_view word = line.substr(0, line[0] == ' ' ? 1 : line.find(' '));
    use(cache.get(face, word, [&] { return set(word); }));
    line.remove_prefix(word.size());
  }
}

Length scaled(Length size, int units, const FontFacts &facts) {
  return size * (static_cast<double>(units) / facts.units_per_em);
}

} // namespace

Outcome<Typesetter> Typesetter::load(std::string_view words, const std::string &language) {
  const auto files = find_fonts(fonts_wanted);
  if (!files) return files.fault();
  auto fonts = std::make_shared<std::vector<Font>>();
  for (const FontFile &file : files.value()) {
    auto font = Font::load(file, language);
    if (!font) return font.fault();
    fonts->push_back(std::move(font).value());
  }
  // Characters of a font that cannot be used are looked for once more in others.
  std::vector<FontFile> useless, others;
  for (bool again = true; again;) {
    again = false;
    for (const FontFile &file : find_fonts_with(lacking(*fonts, code_points(words)), useless)) {
      auto font = Font::load(file, language);
      if (font && font.value().facts().may_be_embedded)
        fonts->push_back(std::move(font).value()), others.push_back(file);
      else
        useless.push_back(file), again = true;
    }
  }
  for (const FontFile &file : others) {
    const auto bold = find_bold_of(file);
    if (!bold || *bold == file) continue;
    auto font = Font::load(*bold, language);
    if (font && font.value().facts().may_be_embedded) fonts->push_back(std::move(font).value());
  }
  return Typesetter(std::move(fonts));
}

Length Typesetter::width(Face face, Length size, std::string_view line) const {
  double ems = 0;
  for_each_word(fonts_, face, line, [&ems](const SetWord &word) { ems += word.ems; });
  return size * ems;
}

ShapedLine Typesetter::shape(Face face, std::string_view line) const {
  ShapedLine shaped;
  for_each_word(fonts_, face, line, [&shaped](const SetWord &word) { append(shaped, word.line); });
  return shaped;
}

const Font &Typesetter::font_of(Face face) const { return (*fonts_)[font_for(face)]; }

Length Typesetter::ascent(Face face, Length size) const {
  return scaled(size, font_of(face).facts().ascent, font_of(face).facts());
}
Length Typesetter::descent(Face face, Length size) const {
  return scaled(size, -font_of(face).facts().descent, font_of(face).facts());
}
Length Typesetter::cap_height(Face face, Length size) const {
  return scaled(size, font_of(face).facts().cap_height, font_of(face).facts());
}

const FontFacts &Typesetter::facts(FontId font) const { return (*fonts_)[font].facts(); }
int Typesetter::advance(FontId font, GlyphId glyph) const { return (*fonts_)[font].advance(glyph); }
Outcome<FontSubset> Typesetter::subset(FontId font, const std::vector<GlyphId> &glyphs) const {
  return (*fonts_)[font].subset(glyphs);
}

} // namespace stoneproof
