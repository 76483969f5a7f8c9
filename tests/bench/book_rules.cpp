// How the geometry and the rules of a book grow with its frames and texts: times, growth and peak memory of
// books that are built here, with made-up facts of their pictures and no file. Prints figures and asserts
// nothing. Usage: bench_book_rules [most items]
#include "engine/rules/rule.h"
#include "tests/bench/best_time.h"
#include "tests/bench/growth.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::literals;

namespace {

PressSheet a_sheet() {
  PressSheet sheet;
  sheet.density.fill({Density::of_ppi(300), Density::of_ppi(200)});
  sheet.bleed = {3_mm, 3_mm, 3_mm, 0_mm};
  sheet.safe_margin = {5_mm, 5_mm, 5_mm, 5_mm};
  sheet.cut_tolerance = 1_mm;
  sheet.jpeg_quality = {75, 50};
  sheet.formats = {Format::jpeg};
  sheet.colours = {ColourModel::rgb};
  sheet.least_type.fill(6_pt);
  return sheet;
}

/// A page of a grid: half its places hold pictures, half the captions under them, and a few stand off by a
/// little. The page grows with the items, so that all pages are as crowded.
void fill_page(Page &page, std::size_t items, Book &book, std::mt19937 &random) {
  const auto columns = static_cast<int>(std::ceil(std::sqrt(static_cast<double>(items) / 2)));
  std::uniform_int_distribution<int> stray(0, 199);
  const Length cell = 40_mm;
  const Size size = {cell * columns + 30_mm, cell * columns + 40_mm};
  if (book.pages.empty()) book.trim = size; // pages of the book's own size are compared with each other
  if (size != book.trim) page.trim = size;
  for (std::size_t i = 0; i < items / 2; ++i) {
    const int column = static_cast<int>(i) % columns, row = static_cast<int>(i) / columns;
    Frame frame;
    const Length off = stray(random) == 0 ? Length::of_mm(0.5) : Length{};
    frame.rect = {15_mm + cell * column + off, 15_mm + cell * row, 35_mm, 25_mm};
    frame.id = "f" + std::to_string(book.pictures.size());
    frame.picture = book.pictures.size();
    frame.order = 2 * i;
    page.frames.push_back(frame);
    book.pictures.emplace_back();
    TextBlock text;
    text.kind = i % 10 == 0 ? TextKind::body : TextKind::caption;
    text.rect = {15_mm + cell * column, 41_mm + cell * row, 35_mm, 8_mm};
    text.type_size = 8_pt;
    text.text = "The mill in the summer of the flood, seen from the bridge";
    text.order = 2 * i + 1;
    page.texts.push_back(text);
  }
}

Book made_book(std::size_t items, std::size_t items_a_page) {
  std::mt19937 random(1);
  Book book;
  for (std::size_t left = items; left > 0; left -= std::min(left, items_a_page)) {
    Page page;
    page.number = static_cast<int>(book.pages.size()) + 1;
    fill_page(page, std::min(left, items_a_page), book, random);
    book.pages.push_back(std::move(page));
  }
  return book;
}

/// Pictures with all that can be known of a header, each with a content of its own.
std::vector<PictureState> made_states(std::size_t count) {
  std::vector<PictureState> states(count);
  for (std::size_t i = 0; i < count; ++i) {
    Facts &facts = states[i].facts.emplace();
    facts.size = {600, 400};
    facts.format = Format::jpeg;
    facts.colour = ColourModel::rgb;
    facts.tag = ColourTag::srgb;
    states[i].sha256 = std::to_string(i);
  }
  return states;
}

struct Cost {
  double geometry = 0, rules = 0; ///< milliseconds, the best of five runs
  std::size_t findings = 0, pages = 0;
  double peak = 0; ///< MB that the process held at most
};

Cost measured(std::size_t items, std::size_t items_a_page) {
  Evidence evidence;
  evidence.book = made_book(items, items_a_page);
  evidence.press = a_sheet();
  evidence.pictures = made_states(evidence.book.pictures.size());
  std::vector<std::optional<PixelSize>> sizes;
  for (const PictureState &state : evidence.pictures) sizes.emplace_back(state.facts->size);
  Cost cost;
  cost.pages = evidence.book.pages.size();
  cost.geometry = bench::best_time(5, [&] {
    evidence.frames = place_frames(evidence.book, sizes);
    evidence.spaces = page_spaces(evidence.book, evidence.press);
    evidence.bound = bind(evidence.book, evidence.press);
  });
  cost.rules = bench::best_time(5, [&] { cost.findings = check_rules(evidence).size(); });
  cost.peak = bench::peak_memory();
  return cost;
}

void table(std::size_t most, std::size_t items_a_page, const char *title) {
  std::printf("%s\n%9s %7s %12s %10s %9s %9s %9s\n", title, "items", "pages", "geometry ms", "rules ms",
              "all ms", "findings", "peak MB");
  std::vector<std::pair<double, double>> points;
  for (const std::size_t items :
       std::initializer_list<std::size_t>{1'000, 2'000, 5'000, 10'000, 20'000, 50'000, 100'000}) {
    if (items > most) break;
    const Cost cost = bench::apart([&] { return measured(items, items_a_page == 0 ? items : items_a_page); });
    const double all = cost.geometry + cost.rules;
    std::printf("%9zu %7zu %12.1f %10.1f %9.1f %9zu %9.1f\n", items, cost.pages, cost.geometry, cost.rules,
                all, cost.findings, cost.peak);
    points.emplace_back(static_cast<double>(items), all);
  }
  std::printf("exponent of growth %.2f\n\n", bench::exponent(points));
}

} // namespace

int main(int count, char **values) {
  const std::size_t most = count > 1 ? std::strtoul(values[1], nullptr, 10) : 100'000;
  table(most, 20, "20 items a page");
  table(most, 1000, "1,000 items a page");
  table(most, 0, "all on one page");
}
