// Findings -> notes. The only way in is notes_on_pdf; tested in tests/reports/terminal/finished_pdf.test.cpp.
#include "reports/terminal/annotations.h"

#include "engine/rules/rule.h"
#include "reports/record/mark_words.h"

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

/// Signs without a place stand in a row at the head of their page.
Rect next_place(int before) {
  const Length step = Length::of_pt(24), margin = Length::of_pt(6);
  return {margin + step * before, margin, step, step};
}

} // namespace

std::vector<UserNote> notes_on_pdf(const Evidence &evidence, const std::vector<Finding> &findings,
                                   std::optional<std::int64_t> made_at) {
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
    note.title = find_rule(finding.rule)->title;
    note.words = record::mark_words(evidence, finding);
    note.name = names.name_of(finding);
    if (made_at) note.date = record::pdf_date(*made_at);
    notes.push_back(std::move(note));
  }
  return notes;
}

} // namespace stoneproof::terminal
