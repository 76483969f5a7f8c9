// Texts of real PDFs against poppler.
//
// Places: every word that `pdftotext -bbox` finds must be covered along its middle by outlines of texts found
// here, and every level text found here must begin and end where words do. Together they prove that runs of
// text start where they should and are as long as they should be; heights only as far as the middle of a
// word lies between descent and ascent. Turned text is left out: poppler's boxes of it are upright.
// Sizes: `pdftohtml -xml` tells the size of the type of every line, in thirds of a point. The size found here
// must be within that rounding. Type 3 fonts are left out: poppler guesses their size from a letter.
#include "tests/outside/finished.h"

#include "engine/import/layout_of.h"

#include <cmath>
#include <cstdio>
#include <map>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

using finished::Box;
using finished::Outline;
using finished::Spot;

/// A text in points from the top left corner of the MediaBox as the page is seen, y downwards.
struct Run {
  Outline outline;
  Box box;
  double size = 0;
  bool level = false;  ///< runs from left to right and stands upright
  bool inside = false; ///< on the page with all its letters
  bool type3 = false;
  std::string text;
};

/// A word, or a line of one size; `size` 0: not told.
struct ToldText {
  Box box; ///< `bottom` is its upper edge
  double size = 0;
  std::string text;
};

std::vector<Run> runs_of(const finished::Sheet &sheet, const std::deque<finished::Font> &fonts) {
  finished::SheetBoxes whole;
  whole.media = sheet.boxes.media;
  whole.rotate = sheet.boxes.rotate;
  const finished::Matrix map = finished::to_trim(whole);
  const Box sheet_box = *finished::box_round(finished::outline_of(whole.media, map));
  std::vector<Run> runs;
  for (const finished::ShownText &text : sheet.drawing.texts) {
    Run run;
    for (const Spot &spot : text.outline) run.outline.push_back(map.apply(spot));
    run.box = *finished::box_round(run.outline);
    run.size = text.size;
    run.type3 = fonts[text.font].type3;
    run.text = text.text;
    const Spot from = run.outline[0], to = run.outline[1], above = run.outline[3];
    run.level = to.x > from.x && std::abs(to.y - from.y) < 0.01 * (to.x - from.x) && above.y < from.y &&
                std::abs(above.x - from.x) < 0.01 * (from.y - above.y);
    run.inside = run.box.left >= 0 && run.box.bottom >= 0 && run.box.right <= sheet_box.width() &&
                 run.box.top <= sheet_box.height();
    runs.push_back(std::move(run));
  }
  return runs;
}

bool overlap(const Box &one, const Box &other) {
  return one.left < other.right && other.left < one.right && one.bottom < other.top && other.bottom < one.top;
}

/// Whether a word may be part of turned or mirrored text.
bool near_turned(const Box &word, const std::vector<Run> &runs) {
  return std::any_of(runs.begin(), runs.end(),
                     [&](const Run &run) { return !run.level && overlap(run.box, word); });
}

/// The share of a level line from `left` to `right` at the height `y` that the boxes cover.
double covered(double left, double right, double y, const std::vector<Run> &runs, double slack) {
  std::vector<std::pair<double, double>> pieces;
  for (const Run &run : runs)
    if (run.box.bottom <= y && y <= run.box.top)
      pieces.emplace_back(std::max(left, run.box.left - slack), std::min(right, run.box.right + slack));
  std::sort(pieces.begin(), pieces.end());
  double reached = left, sum = 0;
  for (const auto &[from, to] : pieces) {
    sum += std::max(0.0, to - std::max(reached, from));
    reached = std::max(reached, to);
  }
  return right > left ? sum / (right - left) : 1;
}

/// Words of these files that are not found here, and why.
struct Disagreement {
  const char *file;
  int words;
  const char *why;
};
constexpr Disagreement known[] = {
    {"en-eyes.pdf", 3, "poppler makes one upright word of the two parts of a fraction"},
    {"en-eyesj.pdf", 1, "as en-eyes.pdf"},
    {"Fpdf_ClipText.pdf", 50, "the clip leaves nothing of them"},
    {"SF424_page2.pdf", 7, "they stand in the appearances of form fields, which are no page content"},
    {"form_acrobatReader.pdf", 1, "as SF424_page2.pdf"},
    {"form_evince.pdf", 1, "as SF424_page2.pdf"},
    {"libreoffice-form.pdf", 2, "as SF424_page2.pdf"},
    {"issue-604.pdf", 27, "a space whose ActualText is a sign"},
};

int known_to_be_lost(const std::filesystem::path &path) {
  const auto found = std::find_if(std::begin(known), std::end(known),
                                  [&](const Disagreement &one) { return path.filename() == one.file; });
  return found == std::end(known) ? 0 : found->words;
}

/// Calls `word` with the page, from 0, and each word of `pdftotext -bbox`.
template <class Each>
void for_words(const std::string &told, Each word) {
  std::size_t pages = 0;
  std::istringstream lines(told);
  for (std::string line; std::getline(lines, line);) {
    pages += line.find("<page ") != std::string::npos;
    ToldText found;
    Box &box = found.box;
    if (std::sscanf(line.c_str(), " <word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\">", &box.left,
                    &box.bottom, &box.right, &box.top) != 4)
      continue;
    const std::size_t from = line.find('>') + 1;
    found.text = line.substr(from, line.rfind('<') - from);
    word(pages - 1, found);
  }
}

/// pdftohtml draws larger than this for no zoom.
constexpr double zoom = 3;

/// Calls `line` with the page, from 0, and each line of `pdftohtml -xml`, in points.
template <class Each>
void for_lines(const std::string &told, Each line) {
  std::size_t pages = 0;
  std::map<int, double> sizes;
  std::istringstream rows(told);
  for (std::string row; std::getline(rows, row);) {
    pages += row.find("<page ") != std::string::npos;
    int id = 0, top = 0, left = 0, width = 0, height = 0, size = 0;
    if (std::sscanf(row.c_str(), " <fontspec id=\"%d\" size=\"%d\"", &id, &size) == 2)
      sizes[id] = size / zoom;
    if (std::sscanf(row.c_str(), "<text top=\"%d\" left=\"%d\" width=\"%d\" height=\"%d\" font=\"%d\">", &top,
                    &left, &width, &height, &id) == 5)
      line(pages - 1,
           ToldText{{left / zoom, top / zoom, (left + width) / zoom, (top + height) / zoom}, sizes[id], row});
  }
}

/// Pages of texts, each file read once.
template <class Each>
void for_samples(const std::string &program, const std::string &after, Each sample) {
  for (const auto &path : sample_pdfs()) {
    const auto told = told_of(program, path, after);
    if (!told || beyond_reader(path)) continue;
    CAPTURE(path.string());
    const auto pdf = read_pdf(path);
    CHECK(pdf);
    if (!pdf) continue;
    std::vector<std::vector<Run>> pages;
    for (const finished::Sheet &sheet : pdf->sheets())
      pages.push_back(runs_of(sheet, pdf->drawn->parts.fonts()));
    sample(path, *told, pages);
  }
}

/// Whether a place on the line of a run is within a word, or a quarter of an em from one.
bool at_word(double x, const Run &run, const std::vector<ToldText> &words) {
  return std::any_of(words.begin(), words.end(), [&](const ToldText &word) {
    const double slack = run.size / 4;
    return overlap(word.box, {x - slack, run.box.bottom, x + slack, run.box.top});
  });
}

} // namespace

TEST_CASE("words lie where pdftotext finds them") {
  int words = 0;
  std::string differences;
  for_samples("pdftotext -bbox", "-", [&](const auto &path, const std::string &told, const auto &pages) {
    int here = 0, lost = 0;
    std::string first;
    for_words(told, [&](std::size_t page, const ToldText &word) {
      const Box &box = word.box;
      if (page >= pages.size() || near_turned(box, pages[page])) return;
      ++here;
      const double slack = 0.05 * (box.top - box.bottom);
      const double share = covered(box.left, box.right, (box.bottom + box.top) / 2, pages[page], slack);
      if (share >= 0.9) return;
      if (lost++ == 0)
        first = fmt::format("page {}: \"{}\" at {:.2f} to {:.2f}, {:.2f} to {:.2f}: {:.2f} of it", page + 1,
                            word.text, box.left, box.right, box.bottom, box.top, share);
    });
    words += here;
    if (lost > known_to_be_lost(path))
      differences +=
          fmt::format("{}: {} of {} words, the first on {}\n", sample_name(path), lost, here, first);
  });
  CHECK(words >= 100'000);
  CHECK(differences == "");
}

TEST_CASE("texts begin and end where words do") {
  int runs = 0;
  std::string differences;
  for_samples("pdftotext -bbox", "-", [&](const auto &path, const std::string &told, const auto &pages) {
    std::vector<std::vector<ToldText>> words(pages.size());
    for_words(told, [&](std::size_t page, const ToldText &word) {
      if (page < words.size()) words[page].push_back(word);
    });
    int here = 0, astray = 0;
    std::string first;
    for (std::size_t page = 0; page < pages.size(); ++page)
      for (const Run &run : pages[page]) {
        // Letters beyond the page, and those without a character, are no words to poppler.
        if (!run.level || !run.inside || run.text.find("\xEF\xBF\xBD") != std::string::npos) continue;
        ++here;
        const bool begins = run.text.front() == ' ' || at_word(run.box.left, run, words[page]);
        const bool ends = run.text.back() == ' ' || at_word(run.box.right, run, words[page]);
        if (begins && ends) continue;
        if (astray++ == 0)
          first = fmt::format("page {}: \"{}\" at {:.2f} to {:.2f}, {:.2f} to {:.2f}", page + 1, run.text,
                              run.box.left, run.box.right, run.box.bottom, run.box.top);
      }
    runs += here;
    if (astray > 0)
      differences +=
          fmt::format("{}: {} of {} texts, the first on {}\n", sample_name(path), astray, here, first);
  });
  CHECK(runs >= 50'000);
  CHECK(differences == "");
}

TEST_CASE("type is as large as pdftohtml says") {
  int lines = 0;
  std::string differences;
  for_samples(
      "pdftohtml -xml -i -stdout -zoom 3", "",
      [&](const auto &path, const std::string &told, const auto &pages) {
        if (path.filename() == "SF424_page2.pdf") return; // the text of a field lies over the page's own
        int here = 0, other = 0;
        std::string first;
        for_lines(told, [&](std::size_t page, const ToldText &line) {
          if (page >= pages.size()) return;
          // The runs under the beginning of the line.
          const double x = line.box.left + 0.1 * (line.box.right - line.box.left),
                       y = (line.box.bottom + line.box.top) / 2;
          double nearest = 0;
          for (const Run &run : pages[page]) {
            const bool here_too =
                run.box.left <= x && x <= run.box.right && run.box.bottom <= y && y <= run.box.top;
            if (here_too && !run.type3 && std::abs(run.size - line.size) < std::abs(nearest - line.size))
              nearest = run.size;
          }
          if (nearest == 0) return;
          ++here;
          if (std::abs(nearest - line.size) <= 0.5 / zoom + 1e-3) return;
          if (other++ == 0)
            first = fmt::format("page {}: {:.2f} pt here, {:.2f} there: {}", page + 1, nearest, line.size,
                                line.text);
        });
        lines += here;
        if (other > 0)
          differences +=
              fmt::format("{}: {} of {} lines, the first on {}\n", sample_name(path), other, here, first);
      });
  CHECK(lines >= 10'000);
  CHECK(differences == "");
}
