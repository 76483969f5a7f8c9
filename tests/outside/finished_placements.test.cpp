// Where the pictures of real PDFs lie, against `pdfimages -list` of poppler: on every page as many placements
// in the same order, the same pixels, and densities within 1 %, or within the whole numbers that it prints.
#include "tests/outside/finished.h"

#include <cmath>
#include <map>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

struct Placement {
  double width = 0, height = 0; ///< pixels
  double x = 0, y = 0;          ///< ppi
};
using Pages = std::map<std::size_t, std::vector<Placement>>;

/// Soft masks and stencil masks of other pictures, which it lists too, are no placements.
Pages listed(const std::string &list) {
  Pages pages;
  std::istringstream lines(list);
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::vector<std::string> fields{std::istream_iterator<std::string>(words), {}};
    if (fields.size() < 12 || fields[0].find_first_not_of("0123456789") != std::string::npos) continue;
    if (fields[2] == "smask" || fields[2] == "mask") continue;
    const auto from_end = [&](std::size_t at) { return std::stod(fields[fields.size() - at]); };
    pages[std::stoul(fields[0])].push_back(
        {std::stod(fields[3]), std::stod(fields[4]), from_end(4), from_end(3)});
  }
  return pages;
}

/// A picture in a pattern's cell is told of once for many, and listed never.
Pages placed(const ReadPdf &pdf) {
  Pages pages;
  for (std::size_t page = 0; page < pdf.sheets().size(); ++page)
    for (const finished::ShownImage &shown : pdf.sheets()[page].drawing.images) {
      if (shown.tiled) continue;
      const finished::Object &image = pdf.drawn->parts.images()[shown.image].dictionary;
      const double width = image["Width"].number_or(0), height = image["Height"].number_or(0);
      pages[page + 1].push_back({width, height, width * 72 / std::hypot(shown.place.a, shown.place.b),
                                 height * 72 / std::hypot(shown.place.c, shown.place.d)});
    }
  return pages;
}

bool same_density(double ours, double theirs) {
  return std::abs(ours - theirs) <= std::max(0.01 * theirs, 0.5 + 1e-6);
}

/// Pages on which we are content to differ.
struct Disagreement {
  const char *file;
  std::size_t page;
  const char *why;
};
constexpr Disagreement known[] = {
    {"SF424_page2.pdf", 1, "the picture is on a button that is shown on the screen and does not print"},
};

bool is_known(const std::filesystem::path &path, std::size_t page) {
  return std::any_of(std::begin(known), std::end(known), [&](const Disagreement &one) {
    return path.filename() == one.file && page == one.page;
  });
}

/// What differs on one page, a line each; empty where nothing does.
std::string differences(const std::vector<Placement> &ours, const std::vector<Placement> &theirs) {
  if (ours.size() != theirs.size())
    return fmt::format("{} placements here, {} there\n", ours.size(), theirs.size());
  std::string told;
  for (std::size_t i = 0; i < ours.size(); ++i) {
    const Placement &a = ours[i], &b = theirs[i];
    if (a.width != b.width || a.height != b.height || !same_density(a.x, b.x) || !same_density(a.y, b.y))
      told += fmt::format("number {}: {} x {} px at {:.2f}, {:.2f} ppi here, {} x {} at {}, {} there\n",
                          i + 1, a.width, a.height, a.x, a.y, b.width, b.height, b.x, b.y);
  }
  return told;
}

} // namespace

TEST_CASE("placements agree with pdfimages") {
  int files = 0;
  std::size_t placements = 0;
  std::string told;
  for (const auto &path : sample_pdfs()) {
    const auto list = told_of("pdfimages -list", path);
    if (!list || beyond_reader(path)) continue;
    CAPTURE(path.string());
    const auto pdf = read_pdf(path);
    CHECK(pdf);
    if (!pdf) continue;
    Pages theirs = listed(*list), ours = placed(*pdf);
    files += !theirs.empty();
    for (const auto &[page, those] : theirs) placements += those.size(), ours[page];
    for (const auto &[page, these] : ours)
      if (const std::string lines = differences(these, theirs[page]); !lines.empty() && !is_known(path, page))
        told += fmt::format("{} page {}: {}", sample_name(path), page, lines);
  }
  CHECK(files >= 40);
  CHECK(placements >= 400);
  CHECK(told == "");
}
