// The stroke alphabet and the pens that write it. Only way in: pen.h. What it writes is looked at by eye.
#include "demo/paint/pen.h"

#include <array>

namespace stoneproof::demo {

namespace {

struct Glyph {
  char letter;
  /// Strokes parted by spaces, each a row of points "xy" (x 0 to 4; y 1 capital top, 3 small top, 7 base
  /// line, 9 below it). A stroke that begins with ~ is curved.
  std::string_view strokes;
};

constexpr Glyph alphabet[] = {{'A', "072147 1535"},
                              {'B', "0107 ~0131423404 ~043445463707"},
                              {'C', "~4231110206173746"},
                              {'D', "0107 ~0121324446372707"},
                              {'E', "41010747 0434"},
                              {'F', "410107 0434"},
                              {'G', "~4231110206173746 464424"},
                              {'H', "0107 4147 0444"},
                              {'I', "2127 1131 1737"},
                              {'J', "~414637170605"},
                              {'K', "0107 4105 1547"},
                              {'L', "010747"},
                              {'M', "0701244147"},
                              {'N', "07014741"},
                              {'O', "~110206173746423111"},
                              {'P', "0107 ~0131423404"},
                              {'Q', "~110206173746423111 2547"},
                              {'R', "0107 ~0131423404 2447"},
                              {'S', "~4231110213344546371706"},
                              {'T', "0141 2127"},
                              {'U', "~010617374641"},
                              {'V', "012741"},
                              {'W', "0117233741"},
                              {'X', "0147 4107"},
                              {'Y', "0124 412427"},
                              {'Z', "01410747"},
                              {'a', "~4433130406173746 4347"},
                              {'b', "0107 ~0413334446371706"},
                              {'c', "~4433130406173746"},
                              {'d', "4147 ~4433130406173746"},
                              {'e', "0545 ~454433130406173746"},
                              {'f', "~41312227 1333"},
                              {'g', "~4433130406173746 ~4348391908"},
                              {'h', "0107 ~0413334447"},
                              {'i', "2327 2121"},
                              {'j', "~232819 2121"},
                              {'k', "0107 3305 1437"},
                              {'l', "2127"},
                              {'m', "0307 ~04132427 ~24334447"},
                              {'n', "0307 ~0413334447"},
                              {'o', "~130406173746443313"},
                              {'p', "0309 ~0413334446371706"},
                              {'q', "4349 ~4433130406173746"},
                              {'r', "0307 ~05132333"},
                              {'s', "~44331304153546371706"},
                              {'t', "~21262737 1333"},
                              {'u', "~0306173746 4347"},
                              {'v', "032743"},
                              {'w', "0317243743"},
                              {'x', "0347 4307"},
                              {'y', "0327 4309"},
                              {'z', "03430747"},
                              {'0', "~110206173746423111"},
                              {'1', "122127"},
                              {'2', "~021131424307 0747"},
                              {'3', "~021131423324 ~243445463717 1706"},
                              {'4', "310545 3137"},
                              {'5', "410104 ~043344463717 1706"},
                              {'6', "~41210406173746453405"},
                              {'7', "014117"},
                              {'8', "~11021334463717061433423111"},
                              {'9', "~4334140302113142463717"},
                              {'.', "2727"},
                              {',', "2718"},
                              {'-', "1535"},
                              {'/', "4107"},
                              {':', "2424 2727"},
                              {'\'', "2122"},
                              {'!', "2125 2727"}};

std::string_view strokes_of(char letter) {
  for (const Glyph &glyph : alphabet)
    if (glyph.letter == letter) return glyph.strokes;
  return {};
}

struct Bounds {
  double left = 0, right = 2;
};

/// How far a letter's points reach sideways, in sixths of the capital height.
Bounds bounds_of(char letter, bool even_pitch) {
  if (even_pitch) return {0, 4};
  Bounds found{9, 0};
  for (const char *p = strokes_of(letter).data(), *end = p + strokes_of(letter).size(); p < end;) {
    if (*p == '~' || *p == ' ') {
      ++p;
      continue;
    }
    found = {std::min(found.left, p[0] - 48.0), std::max(found.right, p[0] - 48.0)};
    p += 2;
  }
  return found.left > found.right ? Bounds{} : found;
}

constexpr double letter_gap = 1.5; // sixths of the capital height

} // namespace

double written_width(std::string_view text, double height, const Pen &pen) {
  double width = 0;
  for (const char letter : text) {
    const Bounds b = bounds_of(letter, pen.even_pitch);
    width += (b.right - b.left + letter_gap) * height / 6;
  }
  return width;
}

double write(Canvas &canvas, Vec base, double height, std::string_view text, const Pen &pen, Random &random) {
  const double unit = height / 6;
  Vec last{};
  bool has_last = false;
  for (const char letter : text) {
    const Bounds bounds = bounds_of(letter, pen.even_pitch);
    const Vec shift{pen.tremble * random.bell() * height * 0.3, pen.tremble * random.bell() * height * 0.5};
    const auto point = [&](const char *code) {
      const double up = 7 - (code[1] - 48.0);
      const Vec p{(code[0] - 48.0 - bounds.left + up * pen.slant) * unit, -up * unit};
      return base + shift + p + Vec{random.bell(), random.bell()} * (pen.tremble * height * 0.12);
    };
    const std::string_view strokes = strokes_of(letter);
    for (std::size_t at = 0; at < strokes.size();) {
      const std::size_t end = std::min(strokes.find(' ', at), strokes.size());
      const bool curved = strokes[at] == '~';
      Outline points;
      for (std::size_t i = at + (curved ? 1 : 0); i + 1 < end; i += 2) points.push_back(point(&strokes[i]));
      if (pen.joined && has_last && at == 0 && letter >= 'a')
        lines(canvas, curve({last, (last + points.front()) * 0.5 + Vec{0, 0.3 * unit}, points.front()}),
              height * pen.weight * 0.6, pen.ink, pen.opacity);
      lines(canvas, curved || pen.joined ? curve(points) : points, height * pen.weight, pen.ink,
            pen.opacity * (1 - pen.tremble * random.share()));
      last = points.back();
      at = end + 1;
    }
    has_last = !strokes.empty() && letter >= 'a';
    base.x += (bounds.right - bounds.left + letter_gap) * unit;
  }
  return base.x;
}

void write_centred(Canvas &canvas, Vec base_middle, double height, std::string_view text, const Pen &pen,
                   Random &random) {
  write(canvas, base_middle - Vec{written_width(text, height, pen) / 2, 0}, height, text, pen, random);
}

std::string babble(Random &random, int letters) {
  static constexpr std::array<std::string_view, 24> syllables = {
      "lo",  "ren", "ta", "mi",  "sor", "ve",  "an", "dri", "ka",  "el", "mu",  "ben",
      "tis", "ro",  "ga", "lin", "pe",  "stu", "or", "fa",  "nel", "we", "cha", "id"};
  std::string text;
  while (static_cast<int>(text.size()) < letters) {
    const int count = 1 + random.below(3);
    for (int i = 0; i < count; ++i) text += syllables[static_cast<std::size_t>(random.below(24))];
    text += random.below(9) == 0 ? ". " : random.below(8) == 0 ? ", " : " ";
  }
  return text.substr(0, static_cast<std::size_t>(letters));
}

} // namespace stoneproof::demo
