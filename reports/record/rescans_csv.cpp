// One line for each picture that something is asked for. The only way in is rescans_csv; tested in
// tests/reports/record/rescans_csv.test.cpp.
#include "reports/record/rescans_csv.h"

#include "reports/content/letter_content.h"
#include "reports/record/csv.h"

namespace stoneproof::record {

namespace {

using content::PictureAsk;

void add_original(CsvRow &row, const Picture &picture) {
  const auto &original = picture.original;
  row.add("picture", picture.id);
  row.add("file", picture.file);
  row.add("original", original ? std::string(word_of(original_words, original->kind)) : "");
  row.add_size("original", original ? original->size : std::nullopt);
}

void add_ask(CsvRow &row, const PictureAsk &ask) {
  row.add("grade", std::string(word_of(grade_words, ask.grade)));
  row.add("ask", std::string(word_of(content::ask_keywords, ask.ask)));
  row.add_number("setting_ppi", ask.setting);
  row.add_number("width_px", ask.pixels ? std::optional(ask.pixels->width) : std::nullopt);
  row.add_number("height_px", ask.pixels ? std::optional(ask.pixels->height) : std::nullopt);
}

/// Ids have no spaces, so that a space parts them.
void add_frames(CsvRow &row, const Book &book, const PictureAsk &ask) {
  std::string pages, frames;
  for (const FrameAt &at : ask.frames) {
    const Page &page = book.pages[at.page];
    const std::string number = page.kind == PageKind::cover ? "cover" : fmt::format("{}", page.number);
    pages += (pages.empty() ? "" : " ") + number;
    frames += (frames.empty() ? "" : " ") + page.frames[at.frame].id;
  }
  row.add("pages", std::move(pages));
  row.add("frames", std::move(frames));
  row.add_size("printed", ask.printed);
  row.add_size("largest", ask.no_larger);
}

void add_words(CsvRow &row, const PictureAsk &ask, const content::LetterPicture &told) {
  row.add("reason", std::string(ask.rule));
  row.add("instruction", told.instruction);
  row.add("why", told.why);
  row.add("how", told.how);
  row.add("if_lost", told.if_lost);
}

CsvRow row_of(const Book &book, const content::ContributorAsks &person, const content::LetterContent &letter,
              std::size_t index) {
  const PictureAsk &ask = person.pictures[index];
  CsvRow row;
  row.add("contributor", person.contributor ? book.contributors[*person.contributor].id : "");
  row.add("contributor_name", letter.name);
  row.add("language", letter.language);
  add_original(row, book.pictures[ask.picture]);
  add_ask(row, ask);
  add_frames(row, book, ask);
  add_words(row, ask, letter.pictures[index]);
  return row;
}

std::string lines_of(const Book &book, const content::ContributorAsks &person) {
  const auto letter = content::letter_content(book, person);
  std::string lines;
  for (std::size_t i = 0; i < person.pictures.size(); ++i)
    lines += csv_line(row_of(book, person, letter, i).values);
  return lines;
}

/// The columns by their names, also where nothing is asked.
std::vector<std::string> rescan_columns() {
  Book book;
  book.pictures.emplace_back();
  Page page;
  page.frames.emplace_back();
  book.pages.push_back(std::move(page));
  content::ContributorAsks nobody;
  nobody.pictures.emplace_back().frames.push_back({0, 0});
  return row_of(book, nobody, content::letter_content(book, nobody), 0).names;
}

} // namespace

std::string rescans_csv(const Book &book, const content::Asks &asks) {
  std::string text = csv_line(rescan_columns());
  for (const content::ContributorAsks &person : asks.people) text += lines_of(book, person);
  return text + lines_of(book, asks.nobody);
}

} // namespace stoneproof::record
