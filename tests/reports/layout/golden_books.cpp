#include "tests/reports/layout/golden_books.h"

#include "tests/support/small_book.h"

namespace stoneproof::test {

namespace {

Length mm(double value) { return Length::of_mm(value); }

TextBlock text(TextKind kind, double x, double y, double width, double height, double points,
               std::string words) {
  return {kind, {mm(x), mm(y), mm(width), mm(height)}, Length::of_pt(points), std::move(words), 0, {}};
}

/// The small book with its first page only.
Book one_page(double width = 200, double height = 250) {
  Book book = small_book();
  book.trim = {mm(width), mm(height)};
  book.pages.pop_back();
  return book;
}

/// Every picture has a small copy of a few pixels, so that its drawing shows.
Checked shown(Book book, PixelSize size = {1200, 800}) {
  Checked result = checked(std::move(book), size);
  for (auto &copy : result.copies)
    copy = SmallCopy{{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)}, 30, 20, {}};
  return result;
}

/// One of each thing that a drawing can show: a turned picture with a mark, an empty frame, one off the page,
/// texts.
Checked small() {
  Book book = small_book();
  book.contributors = {{"eleni", "Ελένη Καλφάτη", "eleni@example.org", {}}};
  book.pictures = {photo("p", "summer.jpg"), photo("q", "unused.tif")};
  book.pictures[0].contributor = 0;
  Frame turned = frame("turned", 0, 30, 40, 120, 80);
  turned.turn.degrees = -4;
  book.pages[0].frames = {turned, frame("empty", {}, 30, 140, 60, 60), frame("away", 0, 300, 20, 40, 40)};
  book.pages[0].texts = {text(TextKind::heading, 30, 20, 120, 10, 14, "By the river")};
  book.pages[1].frames = {frame("wide", 0, -3, -3, 406, 256)};
  book.pages[1].frames[0].across_gutter = true;
  return shown(std::move(book), {1500, 1000});
}

/// A page shown at its true size, with one picture over all of it.
Checked square_50() {
  Book book = one_page(50, 50);
  book.pictures = {photo("p", "button.jpg")};
  book.pages[0].frames = {frame("all", 0, 0, -3, 53, 56), frame("none", {}, 10, 10, 20, 20)};
  return shown(std::move(book), {500, 400});
}

Checked metre() {
  Book book = one_page(1000, 1000);
  book.pictures = {photo("p", "wall.jpg"), photo("q", "stamp.jpg")};
  book.pages[0].frames = {frame("wall", 0, 50, 50, 600, 800), frame("stamp", 1, 700, 100, 20, 30),
                          frame("empty", {}, 700, 200, 250, 250)};
  return shown(std::move(book), {6000, 8000});
}

Checked cover_and_spreads() {
  Book book = small_book();
  book.binding.kind = BindingKind::case_bound;
  book.pictures = {photo("front", "front.jpg"), photo("river", "river.jpg"), photo("bank", "bank.jpg")};
  book.cover = Cover{{mm(430), mm(256)}, mm(14), {}, {}};
  Page cover, second;
  cover.number = 0;
  cover.kind = PageKind::cover;
  cover.frames = {frame("front", 0, 230, 30, 180, 160)};
  cover.texts = {text(TextKind::spine, 209, 60, 12, 130, 12, "The Żółkiewski house")};
  book.pages[1].frames = {frame("river", 1, 150, 40, 100, 120), frame("bank", 2, 20, 40, 110, 120)};
  second.number = 4;
  second.kind = PageKind::spread;
  second.frames = {frame("left", 2, 10, 10, 180, 110), frame("right", 1, 215, 130, 175, 110)};
  book.pages.insert(book.pages.begin(), cover);
  book.pages.push_back(second);
  return shown(std::move(book));
}

Checked saddle() {
  Book book = small_book();
  book.binding.kind = BindingKind::saddle;
  book.stocks.block = Stock{mm(0.3), {}, {}, {}, {}};
  book.pictures = {photo("p", "fair.jpg")};
  book.pages.clear();
  for (int number = 1; number <= 8; ++number) {
    Page page;
    page.number = number;
    page.blank = number == 2;
    if (number == 1 || number == 5) page.frames = {frame("fair", 0, 20, 30, 160, 110)};
    book.pages.push_back(page);
  }
  return shown(std::move(book));
}

Checked landscape() {
  Book book = small_book();
  book.trim = {mm(297), mm(210)};
  book.pictures = {photo("p", "plain.jpg"), photo("q", "ridge.jpg")};
  book.pages[0].frames = {frame("plain", 0, 10, 20, 270, 90), frame("ridge", 1, 10, 120, 130, 80)};
  book.pages[1].frames = {frame("wide", 1, 20, 20, 550, 80), frame("low", 0, 320, 120, 250, 80)};
  book.pages[1].frames[0].across_gutter = true;
  return shown(std::move(book), {2400, 1200});
}

Checked crowded() {
  Book book = one_page();
  for (int i = 0; i < 60; ++i)
    book.pages[0].frames.push_back(
        frame("f" + std::to_string(i), {}, 12 + i % 6 * 30, 12 + i / 6 * 23, 26, 18));
  return shown(std::move(book));
}

/// Four pictures, each with a hundred marks.
Checked findings_400() {
  Book book = one_page();
  for (int i = 0; i < 4; ++i)
    book.pages[0].frames.push_back(
        frame("f" + std::to_string(i), {}, 12 + i % 2 * 90, 15 + i / 2 * 115, 80, 105));
  Checked result = shown(std::move(book));
  const std::vector<Finding> four = result.findings;
  while (result.findings.size() < 400)
    result.findings.insert(result.findings.end(), four.begin(), four.end());
  return result;
}

/// Nothing is named that need not be.
Checked empty_fields() {
  Book book = one_page();
  book.title.clear();
  book.language.clear();
  book.contributors = {{"c", "", "", {}}};
  book.pictures = {photo("p", "a.jpg")};
  book.pictures[0].contributor = 0;
  book.pictures[0].original.reset();
  book.pages[0].frames = {frame("", 0, 20, 20, 160, 120), frame("", {}, 20, 160, 60, 60)};
  book.pages[0].texts = {text(TextKind::caption, 100, 160, 80, 10, 9, "")};
  return shown(std::move(book), {300, 200});
}

Checked long_names() {
  Book book = one_page();
  book.title =
      "Rindfleischetikettierungsüberwachungsaufgabenübertragungsgesetz und andere Erinnerungen an das Haus "
      "am Wasserturm, aufgeschrieben für die Enkel und alle, die nach ihnen kommen";
  book.contributors = {{"c", std::string(90, 'W') + " von und zu " + std::string(90, 'M'), "", {}}};
  book.pictures = {photo("p", "scans/" + std::string(120, 'x') + ".jpg"),
                   photo("q", std::string(200, 'M') + ".tif")};
  book.pictures[0].contributor = 0;
  book.pages[0].frames = {frame(std::string(80, 'f'), 0, 20, 20, 160, 100),
                          frame("short", 1, 20, 130, 160, 100)};
  book.pages[0].texts = {text(TextKind::caption, 20, 122, 160, 5, 9, std::string(300, 'i'))};
  return shown(std::move(book), {500, 300});
}

Checked scripts() {
  Book book = small_book();
  book.title = "Ο κήπος της γιαγιάς · Сад бабушки · Ogród babci";
  book.contributors = {{"a", "Зинаида Щербакова-Жуковская", "", {}}, {"b", "Ευφροσύνη Παπαδοπούλου", "", {}}};
  book.pictures = {photo("p", "фото/лето у реки.jpg"), photo("q", "φωτογραφίες/καλοκαίρι.tif")};
  book.pictures[0].contributor = 0;
  book.pictures[1].contributor = 1;
  book.pages[0].frames = {frame("лето", 0, 20, 20, 160, 90), frame("καλοκαίρι", 1, 20, 130, 160, 90)};
  book.pages[0].texts = {
      text(TextKind::caption, 20, 112, 160, 10, 10, "Лето у реки, 1931. Καλοκαίρι στο ποτάμι.")};
  return shown(std::move(book), {500, 300});
}

Checked turned() {
  Book book = one_page();
  const double degrees[] = {-8, 15, 45, 90, 3};
  for (int i = 0; i < 5; ++i) {
    Frame made = frame("t" + std::to_string(i), {}, 25 + i % 2 * 85, 25 + i / 2 * 75, 60, 45);
    made.turn.degrees = degrees[i];
    book.pages[0].frames.push_back(made);
  }
  return shown(std::move(book));
}

Checked nothing_found() {
  Book book = one_page();
  book.pictures = {photo("p", "quiet.jpg")};
  book.pages[0].frames = {frame("quiet", 0, 20, 20, 100, 66)};
  return shown(std::move(book), {2400, 1600});
}

} // namespace

const std::vector<GoldenBook> golden_books{{"small", small},
                                           {"square-50", square_50},
                                           {"metre", metre},
                                           {"cover-and-spreads", cover_and_spreads},
                                           {"saddle", saddle},
                                           {"landscape", landscape},
                                           {"crowded", crowded},
                                           {"findings-400", findings_400},
                                           {"empty-fields", empty_fields},
                                           {"long-names", long_names},
                                           {"scripts", scripts},
                                           {"turned", turned},
                                           {"nothing-found", nothing_found}};

} // namespace stoneproof::test
