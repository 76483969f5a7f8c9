// Reads fixtures and lists findings as text. The only ways in are those of fixture.h.
#include "tests/rules/fixture.h"

#include "engine/book/read.h"
#include "engine/measure/jpeg_quality.h"
#include "engine/press/read.h"
#include "tests/support/catch.h"

#include <algorithm>
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

/// A profile by one word: a kind of fault, or the space that it is of.
ProfileFacts profile_of(const std::string &word) {
  ProfileFacts profile{"Made " + word, ProfileSpace::rgb, ProfileClass::display, false, false};
  if (word == "broken") profile.broken = true;
  if (word == "wide") profile.wide_gamut = true;
  if (word == "link") profile.made_for = ProfileClass::other;
  if (word == "gray") profile.space = ProfileSpace::gray;
  if (word == "cmyk") profile.space = ProfileSpace::cmyk;
  return profile;
}

Shown &shown_of(Known &known) {
  if (!known.shown) {
    known.shown.emplace();
    known.shown->tone.range = 0.9;
  }
  return *known.shown;
}

Ink &ink_of(Known &known) {
  Shown &shown = shown_of(known);
  if (!shown.ink) shown.ink.emplace();
  return *shown.ink;
}

/// "dots", "finer-dots", "perhaps-dots"; false: none of these.
bool add_printed(Known &known, const std::string &word, double pixels) {
  if (!word.ends_with("dots")) return false;
  const bool sure = word == "dots";
  shown_of(known).detail.printed = {
      word == "perhaps-dots" ? Certainty::hint : Certainty::firm, 1 / pixels, 45, sure, 5, 0};
  return true;
}

/// A strip of bed, or the tilt in it; false: neither.
bool add_bed(Known &known, const std::string &word, double number) {
  if (word == "tilt") {
    REQUIRE(known.state.bed);
    known.state.bed->tilt = number;
    return true;
  }
  const auto has = [&](const char *part) { return word.find(part) != std::string::npos; };
  if (!has("white-") && !has("black-")) return false;
  const PixelSize size = known.state.facts->size;
  if (!known.state.bed)
    known.state.bed = Bed{Certainty::firm,
                          has("white-"),
                          0.1,
                          {0, 0, static_cast<double>(size.width), static_cast<double>(size.height)},
                          {}};
  if (has("perhaps")) known.state.bed->certainty = Certainty::hint;
  PixelRect &own = known.state.bed->original;
  if (has("left")) own.x += number;
  if (has("top")) own.y += number;
  (has("left") || has("right") ? own.width : own.height) -= number;
  return true;
}

/// What a line says beyond the header: "quality 72", "white 6%", "neutral", ...
void add_word(Known &known, const std::string &word, std::istringstream &words) {
  Facts &facts = *known.state.facts;
  if (word == "neutral") {
    known.state.neutral = true;
    return;
  }
  if (word == "alpha") {
    facts.alpha = true;
    return;
  }
  std::string value;
  REQUIRE(words >> value);
  if (word == "tag") {
    facts.tag = value_of(tag_words, value);
    return;
  }
  if (word == "profile") {
    facts.tag = ColourTag::profile;
    facts.profile = profile_of(value);
    return;
  }
  if (word == "screenshot") {
    shown_of(known).detail.screenshot.certainty = value_of(certainty_words, value);
    return;
  }
  const double number = std::stod(value); // a percent sign may follow
  if (add_printed(known, word, number) || add_bed(known, word, number)) return;

  if (word == "master" || word == "perhaps-master") {
    Master &master = known.master.emplace();
    master.file = "files/MADE.tif";
    master.size = facts.size;
    master.finer = number;
    master.sure = word == "master";
    master.likeness = master.sure ? 0.99 : 0.93;
  } else if (word == "quality" || word == "flat") {
    facts.jpeg.emplace().luma = standard_luma(static_cast<int>(number));
    if (word == "flat") facts.jpeg->luma->fill(static_cast<std::uint16_t>(number));
  } else if (word == "pages") {
    facts.pages = static_cast<int>(number);
  } else if (word == "white") {
    shown_of(known).tone.white = number / 100;
  } else if (word == "black") {
    shown_of(known).tone.black = number / 100;
  } else if (word == "range") {
    shown_of(known).tone.range = number / 100;
  } else if (word == "detail") {
    Upsampling &found = shown_of(known).detail.upsampling;
    if (found.certainty == Certainty::cannot_tell) found.certainty = Certainty::no;
    found.detail = {true, number / 100, number / 100};
  } else if (word == "enlarged" || word == "perhaps" || word == "roughly") {
    Upsampling &found = shown_of(known).detail.upsampling;
    found.certainty = word == "perhaps" ? Certainty::hint : Certainty::firm;
    found.factor = number;
    found.factor_sure = word == "enlarged";
  } else if (word == "resaved" || word == "was-jpeg") {
    JpegPast &past = shown_of(known).detail.past;
    past.certainty = Certainty::firm;
    past.kind = word == "resaved" ? JpegPastKind::aligned : JpegPastKind::was_jpeg;
    const int quality = static_cast<int>(number);
    past.earlier = {quality, quality - 1, quality + 1, true};
  } else if (word == "comb") {
    shown_of(known).tone.comb = number / 100;
  } else if (word == "ink") {
    ink_of(known).most = number / 100;
  } else if (word == "beyond") {
    ink_of(known).out_of_gamut = number / 100;
  } else {
    FAIL("no such word: " << word);
  }
}

/// "like ID", "better-than ID", "worse-than ID": the pair with a picture that comes before; false: none of
/// these.
bool add_copy(Scene &scene, const std::string &word, std::istringstream &words) {
  if (word != "like" && word != "better-than" && word != "worse-than") return false;
  std::string id;
  REQUIRE(words >> id);
  const auto &pictures = scene.book.pictures;
  const auto partner = static_cast<std::size_t>(
      std::find_if(pictures.begin(), pictures.end(), [&](const Picture &one) { return one.id == id; }) -
      pictures.begin());
  REQUIRE(partner < scene.pictures.size());
  CopyPair pair{{partner, scene.pictures.size(), {}, 1, 1, 1}, BetterCopy::alike};
  if (word == "better-than") pair.better = BetterCopy::other;
  if (word == "worse-than") pair.better = BetterCopy::whole;
  scene.copies.push_back(pair);
  return true;
}

/// "scan WORD", and the dirt on the glass of the scanner that was named last; false: neither.
bool add_dirt(Scene &scene, std::size_t &scanner, const std::string &word, std::istringstream &words) {
  const std::size_t picture = scene.pictures.size();
  std::string value;
  if (word == "scan") {
    REQUIRE(words >> value);
    const auto known = std::find(scene.scanners.begin(), scene.scanners.end(), value);
    scanner = static_cast<std::size_t>(known - scene.scanners.begin());
    if (known == scene.scanners.end()) {
      scene.scanners.push_back(value);
      scene.glasses.push_back({{}, Size{Length::of_mm(200), Length::of_mm(300)}, {}});
    }
    scene.glasses[scanner].scans.push_back(picture);
    return true;
  }
  if (!word.ends_with("speck") && word != "streak") return false;
  REQUIRE(words >> value);
  const double share = std::stod(value) / 100;
  GlassSpot spot{GlassSpotKind::speck, share, share,     share + 0.01,
                 share + 0.01,         -40,   {picture}, Certainty::firm};
  if (word == "streak")
    spot.kind = GlassSpotKind::streak_down, spot.top = 0, spot.bottom = 1, spot.right = share;
  if (word == "perhaps-speck") spot.certainty = Certainty::hint;
  auto &spots = scene.glasses.at(scanner).spots;
  const auto same = std::find_if(spots.begin(), spots.end(), [&](const GlassSpot &one) {
    return one.kind == spot.kind && one.left == spot.left && one.certainty == spot.certainty;
  });
  if (same == spots.end())
    spots.push_back(spot);
  else
    same->carriers.push_back(picture);
  return true;
}

Known known_of(Scene &scene, std::istringstream &words) {
  Known known;
  std::string first, times, format, colour, word;
  std::size_t scanner = 0;

  words >> first;
  if (first == "missing" || first == "unreadable") {
    known.state.missing = first == "missing";
    known.state.fault = Fault{first, "", ""};
    return known;
  }
  Facts &facts = known.state.facts.emplace();
  facts.tag = ColourTag::srgb;
  facts.size.width = std::stoll(first);
  words >> times >> facts.size.height >> format >> colour;
  facts.format = value_of(format_words, format);
  facts.colour = value_of(colour_words, colour);
  while (words >> word)
    if (!add_copy(scene, word, words) && !add_dirt(scene, scanner, word, words)) add_word(known, word, words);

  return known;
}

/// A press sheet may come with a profile of which only the limits are looked at.
std::shared_ptr<const PressProfile> made_press_profile() {
  PressProfile profile{"made.icc", {}, {}, 5, 0.1};
  return std::make_shared<const PressProfile>(profile);
}

struct Written {
  std::ostream &out;

  void operator()(std::monostate) const { out << '-'; }
  void operator()(Density density) const { out << density.ppi() << " ppi"; }
  void operator()(Length length) const { out << length.mm() << " mm"; }
  void operator()(Share share) const { out << share.value * 100 << " %"; }
  void operator()(Count count) const { out << count.value; }
  void operator()(Quality quality) const { out << "quality " << quality.value; }
  void operator()(Ruling ruling) const { out << ruling.lines << " lines"; }
  void operator()(Angle angle) const { out << angle.degrees << " degrees"; }
};

void write_place(std::ostream &out, const Book &book, const Finding &finding) {
  if (finding.page) {
    const Page &page = book.pages[*finding.page];
    out << (page.kind == PageKind::spread ? " spread " : " page ") << page.number;
    if (finding.frame) out << " frame " << page.frames[*finding.frame].id;
    if (finding.text) out << " text " << *finding.text + 1;
  }
  if (finding.picture) out << " picture " << book.pictures[*finding.picture].id;
  if (finding.with_picture) out << " with " << book.pictures[*finding.with_picture].id;

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
  std::vector<PictureState> states;
  for (const Known &known : pictures) {
    sizes.push_back(known.state.facts ? std::optional(known.state.facts->size) : std::nullopt);
    states.push_back(known.state);
  }
  const auto frames = place_frames(book, sizes);
  std::vector<std::optional<Shown>> shown;
  for (const PlacedFrame &placed : frames)
    shown.push_back(placed.laid && placed.laid->visible ? pictures[*placed.picture].shown : std::nullopt);
  std::vector<std::optional<Master>> files;
  for (const Known &known : pictures)
    if (masters) files.push_back(known.master);
  return {book, press,   states, frames, page_spaces(book, press), bind(book, press), shown,
          true, glasses, copies, files};
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
  if (pictures.starts_with("press profile\n") && std::getline(lines, line))
    scene.press.profile = made_press_profile();
  if (pictures.starts_with("files\n") && std::getline(lines, line)) scene.masters = true;
  if (pictures.starts_with("press strict\n") && std::getline(lines, line)) {
    scene.press.finished_pdf.transparency = false;
    scene.press.colours = {ColourModel::gray, ColourModel::cmyk};
  }
  for (const Picture &picture : scene.book.pictures) {
    REQUIRE(std::getline(lines, line));
    std::istringstream words(line);
    words >> id;
    REQUIRE(id == picture.id);
    scene.pictures.push_back(known_of(scene, words));
    scene.pictures.back().state.sha256 = "made of " + id;
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
    if (finding.measured.index() != 0) std::visit(Written{out << ": "}, finding.measured);
    if (finding.wanted.index() != 0) std::visit(Written{out << " of "}, finding.wanted);

    write_ways_out(out, finding.rescue);
    for (const FrameAt &at : finding.same_picture) out << "; on " << scene.book.pages[at.page].number;
    out << '\n';
  }
  return out.str();
}

} // namespace stoneproof::test
