// Findings -> notes. The only way in is notes_on_pdf; tested in tests/reports/terminal/finished_pdf.test.cpp.
#include "reports/terminal/annotations.h"

#include "engine/rules/rule.h"
#include "reports/record/mark_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace stoneproof::terminal {

namespace {

using pdf::NoteKind;
using pdf::UserNote;

NoteKind box_of(Grade grade) {
  switch (grade) {
  case Grade::hold: return NoteKind::solid_box;
  case Grade::query: return NoteKind::dashed_box;
  case Grade::note: break;
  }
  return NoteKind::dotted_box;
}

/// Of "#rrggbb" the channel at a place.
double channel(std::string_view colour, std::size_t at) {
  return std::stoi(std::string(colour.substr(1 + 2 * at, 2)), nullptr, 16) / 255.0;
}

/// How far a box stands off what it marks, and off the box in it.
constexpr Length box_step = Length::of_mm(1);

/// Signs without a place stand in a row at the head of their page.
Rect next_place(int before) {
  const Length step = Length::of_pt(24), margin = Length::of_pt(6);
  return {margin + step * before, margin, step, step};
}

/// Whether boxes round the two would run into each other.
bool is_same_place(const Rect &a, const Rect &b) {
  const auto near = [](Length one, Length other) { return std::max(one - other, other - one) < box_step; };
  return near(a.left(), b.left()) && near(a.top(), b.top()) && near(a.right(), b.right()) &&
         near(a.bottom(), b.bottom());
}

/// The box stays within `page`, but for what lies beyond that itself.
Rect kept_within(const Rect &page, const Rect &box) { return shared_part(box, page).value_or(box); }

/// Boxes of one page, stood clear of what they mark, and round one place nested.
class BoxNest {
public:
  explicit BoxNest(const Rect &page) : page_(page) {}

  void add(UserNote &note) {
    const auto same = [&](const Place &place) { return is_same_place(place.area, note.area); };
    auto place = std::ranges::find_if(places_, same);
    if (place == places_.end()) place = places_.insert(place, {note.area, {}});
    place->notes.push_back(&note);
  }

  /// The inner ones keep clear of the page's edge, so that those round them find room.
  void spread() const {
    for (const Place &place : places_) {
      Length out = box_step, left = box_step * static_cast<std::int64_t>(place.notes.size() - 1);
      for (UserNote *note : place.notes) {
        note->area = kept_within(page_.grown(-left), place.area.grown(out));
        out = out + box_step, left = left - box_step;
      }
    }
  }

private:
  struct Place {
    Rect area;
    std::vector<UserNote *> notes;
  };
  Rect page_;
  std::vector<Place> places_;
};

void stand_clear(const Book &book, std::vector<UserNote> &notes) {
  std::map<std::size_t, BoxNest> nests;
  for (UserNote &note : notes) {
    if (note.kind == NoteKind::text) continue;
    const auto &print = book.pages[note.page].print;
    const PageBoxes boxes = print ? print->boxes : PageBoxes{};
    nests.try_emplace(note.page, boxes.crop.value_or(boxes.media)).first->second.add(note);
  }
  for (const auto &[page, nest] : nests) nest.spread();
}

} // namespace

std::vector<UserNote> notes_on_pdf(const Evidence &evidence, const std::vector<Finding> &findings,
                                   const content::ProofContent &content,
                                   std::optional<std::int64_t> made_at) {
  std::vector<int> numbers(findings.size());
  for (const content::Mark &mark : content.marks) numbers[mark.finding] = mark.number;
  record::MarkNames names(evidence);
  std::map<std::size_t, int> signs;
  std::vector<UserNote> notes;
  for (const Finding &finding : findings) {
    UserNote note;
    note.page = finding.page.value_or(0);
    note.kind = finding.page && finding.area ? box_of(finding.grade) : NoteKind::text;
    note.area = note.kind == NoteKind::text ? next_place(signs[note.page]++) : *finding.area;
    const std::string_view colour = record::look_of(finding.grade).colour;
    note.red = channel(colour, 0);
    note.green = channel(colour, 1);
    note.blue = channel(colour, 2);
    const int number = numbers[static_cast<std::size_t>(&finding - findings.data())];
    note.title = fmt::format("{} · {}", number, find_rule(finding.rule)->title);
    note.words = fmt::format("{} · {}", number, record::mark_words(evidence, finding));
    note.name = names.name_of(finding);
    if (made_at) note.date = record::pdf_date(*made_at);
    notes.push_back(std::move(note));
  }
  stand_clear(evidence.book, notes);
  return notes;
}

} // namespace stoneproof::terminal
