// From places on the pages of the book to places on those of its PDF. The only way in is FinishedPdf; tested
// in tests/reports/record/finished_pdf.test.cpp.
#include "reports/record/finished_pdf.h"

#include <algorithm>

namespace stoneproof::record {

namespace {

using namespace literals;

constexpr Length least_mark = 2_mm;               // thinner ones are hard to see and to click on
constexpr Length note_size = 20_pt, step = 24_pt; // a viewer draws its own sign of about that size

/// Not thinner than `least_mark`, about the same centre.
Rect thick_enough(const Rect &area) {
  const Length width = std::max(area.width, least_mark), height = std::max(area.height, least_mark);
  return {area.x - (width - area.width) / 2, area.y - (height - area.height) / 2, width, height};
}

} // namespace

FinishedPdf::FinishedPdf(const Book &book, FinishedFile file) {
  for (std::size_t i = 0; i < book.pages.size(); ++i)
    if ((book.pages[i].kind == PageKind::cover) == (file == FinishedFile::cover)) add(book, i);
}

void FinishedPdf::add(const Book &book, std::size_t index) {
  const PageSpace space = page_space(book, WantedEdges{book.bleed, {}}, book.pages[index]);
  if (space.fold)
    add_spread(space, book.bleed.inside, index);
  else
    pages_.push_back({index, space.bleed, space.trim, space.bleed});
}

void FinishedPdf::add_spread(const PageSpace &space, Length inside, std::size_t index) {
  const Length fold = *space.fold;
  const auto across = [](const Rect &rect, Length from, Length to) {
    return Rect{from, rect.y, to - from, rect.height};
  };
  const Rect &bleed = space.bleed, &trim = space.trim;
  pages_.push_back({index, across(bleed, bleed.left(), fold + inside), across(trim, trim.left(), fold),
                    across(bleed, bleed.left(), fold)});
  pages_.push_back({index, across(bleed, fold - inside, bleed.right()), across(trim, fold, trim.right()),
                    across(bleed, fold, bleed.right())});
}

bool FinishedPdf::shows(std::size_t page) const {
  return std::any_of(pages_.begin(), pages_.end(), [&](const PdfPage &each) { return each.page == page; });
}

UserRect FinishedPdf::user_rect(const PdfPage &page, const Rect &rect) const {
  return {(rect.left() - page.media.left()).pt(), (page.media.bottom() - rect.bottom()).pt(),
          (rect.right() - page.media.left()).pt(), (page.media.bottom() - rect.top()).pt()};
}

std::vector<PdfPlace> FinishedPdf::places_of(std::size_t page, const Rect &area) const {
  std::vector<PdfPlace> places;
  const Rect wanted = thick_enough(area);
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    if (pages_[i].page != page) continue;
    const auto part = shared_part(wanted, pages_[i].own);
    // What passes the fold by no more than layout programs round stays on its own page.
    if (part && part->width > layout_rounding) places.push_back({i, user_rect(pages_[i], *part)});
  }
  return places;
}

/// Moved onto the page where its corner is off it.
PdfPlace FinishedPdf::note_at(std::size_t page, Point corner) const {
  const Rect &media = pages_[page].media;
  const Length width = std::min(note_size, media.width), height = std::min(note_size, media.height);
  const Rect note{std::clamp(corner.x, media.left(), media.right() - width),
                  std::clamp(corner.y, media.top(), media.bottom() - height), width, height};
  return {page, user_rect(pages_[page], note)};
}

PdfPlace FinishedPdf::note_near(std::size_t page, const Rect &area) const {
  std::size_t nearest = pages_.size();
  for (std::size_t i = 0; i < pages_.size(); ++i) {
    const bool later = nearest < pages_.size() && area.centre().x < pages_[i].own.left();
    if (pages_[i].page == page && !later) nearest = i;
  }
  const Length half = note_size / 2;
  return note_at(nearest, {area.centre().x - half, area.centre().y - half});
}

PdfPlace FinishedPdf::next_note(std::optional<std::size_t> page) {
  const auto found =
      std::find_if(pages_.begin(), pages_.end(), [&](const PdfPage &each) { return each.page == page; });
  PdfPage &at = found == pages_.end() ? pages_.front() : *found;
  const int across = std::max(1, static_cast<int>(at.trim.width / step));
  const int down = std::max(1, static_cast<int>(at.trim.height / step));
  const int number = at.notes++ % (across * down); // very many begin again at the corner
  return note_at(static_cast<std::size_t>(&at - pages_.data()),
                 {at.trim.x + step * (number % across), at.trim.y + step * (number / across)});
}

} // namespace stoneproof::record
