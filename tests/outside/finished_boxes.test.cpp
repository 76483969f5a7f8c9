// Pages, boxes and turns of real PDFs against `pdfinfo -box` of poppler. It gives every box cut to the
// MediaBox, and the CropBox where a page does not name one (ISO 32000-1, 14.11.2.1), to two decimals.
#include "tests/outside/finished.h"

#include <array>
#include <cmath>
#include <map>
#include <regex>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

struct Told {
  std::size_t pages = 0;
  std::map<std::size_t, int> turns;                                   ///< by page
  std::map<std::pair<std::size_t, std::string>, finished::Box> boxes; ///< by page and name
};

Told told_in(const std::string &text) {
  static const std::regex pages("Pages: +(\\d+)"), turn("Page +(\\d+) rot: +(\\d+)"),
      box("Page +(\\d+) (\\w+)Box: +(\\S+) +(\\S+) +(\\S+) +(\\S+)");
  Told told;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    std::smatch part;
    if (std::regex_match(line, part, pages)) told.pages = std::stoul(part[1]);
    if (std::regex_match(line, part, turn)) told.turns[std::stoul(part[1])] = std::stoi(part[2]);
    if (std::regex_match(line, part, box))
      told.boxes[{std::stoul(part[1]), part[2]}] = {std::stod(part[3]), std::stod(part[4]),
                                                    std::stod(part[5]), std::stod(part[6])};
  }
  return told;
}

finished::Box cut_to(const finished::Box &box, const finished::Box &media) {
  return {std::max(box.left, media.left), std::max(box.bottom, media.bottom),
          std::min(box.right, media.right), std::min(box.top, media.top)};
}

/// The five boxes of a page, by name.
std::array<std::pair<const char *, finished::Box>, 5> boxes_of(const finished::SheetBoxes &boxes) {
  const auto inside = [&](const std::optional<finished::Box> &box) {
    return cut_to(box.value_or(boxes.seen()), boxes.media);
  };
  return {{{"Media", boxes.media},
           {"Crop", boxes.seen()},
           {"Bleed", inside(boxes.bleed)},
           {"Trim", inside(boxes.trim)},
           {"Art", inside(boxes.art)}}};
}

bool same(const finished::Box &one, const finished::Box &other) {
  const auto near = [](double a, double b) { return std::abs(a - b) <= 0.005 + 1e-6; };
  return near(one.left, other.left) && near(one.bottom, other.bottom) && near(one.right, other.right) &&
         near(one.top, other.top);
}

std::string text_of(const finished::Box &box) {
  return fmt::format("[{:.2f} {:.2f} {:.2f} {:.2f}]", box.left, box.bottom, box.right, box.top);
}

} // namespace

TEST_CASE("pages, boxes and turns agree with pdfinfo") {
  std::size_t files = 0, pages = 0, turned = 0, boxes = 0;
  std::string differences;
  for (const auto &path : sample_pdfs()) {
    const auto text = told_of("pdfinfo -box -f 1 -l 100000", path);
    if (!text || beyond_reader(path)) continue;
    CAPTURE(path.string());
    const auto pdf = read_pdf(path);
    CHECK(pdf);
    if (!pdf) continue;
    ++files;
    const Told theirs = told_in(*text);
    if (pdf->sheets().size() != theirs.pages)
      differences +=
          fmt::format("{}: {} pages here, {} there\n", sample_name(path), pdf->sheets().size(), theirs.pages);
    for (const auto &[page, turn] : theirs.turns) {
      if (page > pdf->sheets().size()) continue;
      const finished::SheetBoxes &ours = pdf->sheets()[page - 1].boxes;
      ++pages;
      turned += turn != 0;
      if (ours.rotate != turn)
        differences +=
            fmt::format("{} page {}: turned {} here, {} there\n", sample_name(path), page, ours.rotate, turn);
      for (const auto &[name, box] : boxes_of(ours)) {
        const auto found = theirs.boxes.find({page, name});
        if (found == theirs.boxes.end()) continue;
        ++boxes;
        if (!same(box, found->second))
          differences += fmt::format("{} page {} {}Box: {} here, {} there\n", sample_name(path), page, name,
                                     text_of(box), text_of(found->second));
      }
    }
  }
  CHECK(files >= 100);
  CHECK(pages >= 1000);
  CHECK(turned >= 1);
  CHECK(boxes == 5 * pages);
  CHECK(differences == "");
}
