// The whole scanning plan: front, people, advice. The only way in is plan_document; tested in
// tests/reports/layout/plan.test.cpp.
#include "reports/layout/plan.h"

#include "reports/content/figures.h"
#include "reports/layout/foot.h"
#include "reports/layout/plan_front.h"
#include "reports/layout/plan_piles.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace stoneproof::layout {

namespace {

using namespace literals;

/// A piece of advice, broken to the width of a column.
struct Piece {
  std::string_view heading;
  std::vector<std::string> lines;
  Length height;
};

/// How many pieces go into the first of two columns so that the higher one is as low as it can be.
std::size_t first_column(const std::vector<Piece> &pieces) {
  Length first, second;
  for (const Piece &piece : pieces) second += piece.height;
  std::size_t count = 0;
  while (count < pieces.size() && first + pieces[count].height <= second) {
    first += pieces[count].height;
    second -= pieces[count].height;
    ++count;
  }
  return count;
}

/// How to scan, in two columns on one sheet, which the advice is short enough for (tested).
void lay_out_advice(Sheets &sheets, const std::vector<content::Advice> &advice) {
  constexpr Length between = 11_mm, under_heading = 0.5_mm, after = 4_mm;
  constexpr Length width = (Sheets::width - between) / 2;
  sheets.begin();
  sheets.canvas().as(Role::heading2).text({style::margin, sheets.y}, style::heading, "How to scan");
  std::vector<Piece> pieces;
  for (const content::Advice &each : advice) {
    Piece piece{each.heading,
                sheets.type_lines(style::advice, width, content::with_figures_kept_whole(each.text)),
                {}};
    piece.height =
        style::advice_heading.leading + under_heading + height_of(style::advice, piece.lines.size()) + after;
    pieces.push_back(std::move(piece));
  }
  const std::size_t first = first_column(pieces);
  Point at{style::margin, style::head};
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (i == first) at = {style::margin + width + between, style::head};
    Canvas on = sheets.canvas();
    on.as(Role::heading3).text(at, style::advice_heading, pieces[i].heading);
    on.as(Role::paragraph)
        .lines({at.x, at.y + style::advice_heading.leading + under_heading}, style::advice, pieces[i].lines);
    at.y += pieces[i].height;
  }
}

/// Where a person's name stands on their first sheet.
constexpr Rect person_head{style::margin, style::margin, Sheets::width,
                           style::plan_label.leading + style::title.leading};

std::string bookmark_title(const content::PlanPile &pile) {
  return pile.setting.empty() ? pile.device : fmt::format("{}, {}", pile.device, pile.setting);
}

/// A row of the table leads to the sheets of that person, where there are any, and their head leads back.
void link_people(const content::PlanContent &content, const std::vector<PersonRow> &rows,
                 const std::vector<std::size_t> &begins, std::vector<DocumentPage> &pages) {
  for (std::size_t i = 0; i < rows.size(); ++i)
    for (std::size_t person = 0; person < content.people.size(); ++person)
      if (content.people[person].line == i) {
        pages[rows[i].sheet].links.push_back({rows[i].area, begins[person]});
        pages[begins[person]].links.push_back({person_head, rows[i].sheet});
      }
}

} // namespace

Document plan_document(const content::PlanContent &content, const Typesetter &typesetter,
                       const PlanOptions &options) {
  Document document;
  Sheets sheets{typesetter};
  const std::vector<PersonRow> rows = lay_out_plan_front(sheets, content);
  document.bookmarks.push_back({"What there is to scan", 0, 0});
  std::vector<std::size_t> begins;
  for (const content::PersonPlan &person : content.people) {
    begins.push_back(sheets.pages.size());
    document.bookmarks.push_back({person.name, begins.back(), 0});
    const std::vector<std::size_t> piles = lay_out_person(sheets, person);
    for (std::size_t i = 0; i < piles.size(); ++i)
      document.bookmarks.push_back({bookmark_title(person.piles[i]), piles[i], 1});
  }
  document.bookmarks.push_back({"How to scan", sheets.pages.size(), 0});
  lay_out_advice(sheets, content.advice);
  link_people(content, rows, begins, sheets.pages);
  document.pages = std::move(sheets.pages);
  number_sheets(document, typesetter, content.title);
  document.title = fmt::format("Scanning plan of {}", content.title);
  document.subject = content.verdict;
  document.language = "en"; // of the plan's own words
  document.fingerprint = options.fingerprint;
  document.made_at = options.made_at;
  return document;
}

} // namespace stoneproof::layout
