// Reads fixtures and lists findings as text. The only ways in are those of fixture.h.
#include "tests/rules/fixture.h"

#include "engine/book/read.h"
#include "engine/measure/jpeg_quality.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

#include <fstream>
#include <iomanip>
#include <sstream>

namespace stoneproof::test {

namespace {

template <class E, std::size_t N>
E value_of(const Word<E> (&words)[N], const std::string &word) {
  for (const auto &entry : words)
    if (entry.word == word) return entry.value;
  FAIL("no such word: " << word);
  return words[0].value;
}

/// "quality N", or "flat N" for tables of N throughout, or nothing.
std::optional<JpegFacts> saved_as(std::istringstream &words) {
  std::string kind;
  int number = 0;
  if (!(words >> kind >> number)) return std::nullopt;
  JpegFacts jpeg;
  jpeg.luma = standard_luma(number);
  if (kind == "flat") jpeg.luma->fill(static_cast<std::uint16_t>(number));
  return jpeg;
}

PictureState state_of(std::istringstream &words) {
  PictureState state;
  std::string first, times, format, colour;
  words >> first;
  if (first == "missing" || first == "unreadable") {
    state.missing = first == "missing";
    state.fault = Fault{first, "", ""};
    return state;
  }
  Facts facts;
  facts.size.width = std::stoll(first);
  words >> times >> facts.size.height >> format >> colour;
  facts.format = value_of(format_words, format);
  facts.colour = value_of(colour_words, colour);
  facts.jpeg = saved_as(words);
  state.facts = facts;
  return state;
}

struct Written {
  std::ostream &out;

  void operator()(std::monostate) const { out << '-'; }
  void operator()(Density density) const { out << density.ppi() << " ppi"; }
  void operator()(Length length) const { out << length.mm() << " mm"; }
  void operator()(Share share) const { out << share.value * 100 << " %"; }
  void operator()(Count count) const { out << count.value; }
  void operator()(Quality quality) const { out << "quality " << quality.value; }
};

void write_place(std::ostream &out, const Book &book, const Finding &finding) {
  if (finding.page) {
    const Page &page = book.pages[*finding.page];
    out << (page.spread ? " spread " : " page ") << page.number;
    if (finding.frame) out << " frame " << page.frames[*finding.frame].id;
    if (finding.text) out << " text " << *finding.text + 1;
  }
  if (finding.picture) out << " picture " << book.pictures[*finding.picture].id;
  if (finding.contributor) out << " from " << book.contributors[*finding.contributor].id;
  for (const PageSide side : finding.sides) {
    constexpr const char *names[] = {"top", "bottom", "left", "right", "fold"};
    out << ' ' << names[static_cast<std::size_t>(side)];
  }
}

void write_ways_out(std::ostream &out, const Rescue &rescue) {
  if (rescue.rescan) {
    out << "; rescan at " << rescue.rescan->needed_ppi << " ppi, so ";
    if (rescue.rescan->setting) out << *rescue.rescan->setting;
    if (!rescue.rescan->setting) out << "none";
    out << (rescue.rescan->film ? ", film" : "") << (rescue.rescan->beyond_flatbed ? ", beyond flatbed" : "");
  }
  if (const auto &size = rescue.print_no_larger)
    out << "; no larger than " << size->width.mm() << " x " << size->height.mm() << " mm";
  if (const auto &crop = rescue.looser_crop)
    out << "; show " << crop->width_share * 100 << " x " << crop->height_share * 100 << " %";
}

} // namespace

Evidence Scene::evidence() const {
  std::vector<std::optional<PixelSize>> sizes;
  for (const PictureState &state : pictures)
    sizes.push_back(state.facts ? std::optional(state.facts->size) : std::nullopt);
  std::vector<PageSpace> spaces;
  for (const Page &page : book.pages) spaces.push_back(page_space(book, press, page));
  return {book, press, pictures, place_frames(book, sizes), spaces};
}

std::string text_of(const std::filesystem::path &file) {
  std::ifstream in(file);
  INFO(file);
  REQUIRE(in.good());
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

Scene scene_of(const std::string &description, const std::string &pictures) {
  Scene scene;
  scene.press = built_in_press_sheet();
  auto reading = parse_book(SourceText{"book.xml", description});
  for (const SourceFault &fault : reading.faults) UNSCOPED_INFO(with_caret(fault));
  REQUIRE(reading);
  scene.book = *std::move(reading.value);
  std::istringstream lines(pictures);
  std::string line, id;
  for (const Picture &picture : scene.book.pictures) {
    REQUIRE(std::getline(lines, line));
    std::istringstream words(line);
    words >> id;
    REQUIRE(id == picture.id);
    scene.pictures.push_back(state_of(words));
  }
  REQUIRE_FALSE(std::getline(lines, line));
  return scene;
}

Scene read_scene(const std::filesystem::path &stem) {
  return scene_of(text_of(stem.string() + ".xml"), text_of(stem.string() + ".pictures"));
}

std::string listed(const Scene &scene, const std::vector<Finding> &findings) {
  std::ostringstream out;
  out << std::fixed << std::setprecision(3);
  for (const Finding &finding : findings) {
    out << finding.rule << ' ' << word_of(grade_words, finding.grade);
    write_place(out, scene.book, finding);
    if (finding.wanted.index() != 0) {
      std::visit(Written{out << ": "}, finding.measured);
      std::visit(Written{out << " of "}, finding.wanted);
    }
    write_ways_out(out, finding.rescue);
    for (const FrameAt &at : finding.same_picture) out << "; on " << scene.book.pages[at.page].number;
    out << '\n';
  }
  return out.str();
}

} // namespace stoneproof::test
