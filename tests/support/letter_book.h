// Findings and asks of a small book with two people: what tests of the letters start from.
#pragma once

#include "reports/content/letter_content.h"
#include "tests/support/plan_book.h"

namespace stoneproof::test {

/// Pictures of 1200 x 800 px from prints of 150 x 100 mm, on page 1 as large as `width` says (mm). Nothing is
/// found yet.
inline Checked letter_book(const std::vector<double> &widths) {
  Book book = small_book();
  book.contributors = {{"eleni", "Ελένη Καλφάτη", "", {}, {}}, {"zaneta", "Żaneta Wróblak", "", {}, "de-AT"}};
  for (std::size_t i = 0; i < widths.size(); ++i) {
    book.pictures.push_back(original("p" + std::to_string(i), OriginalKind::print, 150, 100));
    book.pictures.back().contributor = 0;
    book.pages[0].frames.push_back(frame("f" + std::to_string(i), i, 0, 0, widths[i], widths[i] * 2 / 3));
  }
  Checked result = checked(std::move(book));
  result.findings.clear();
  return result;
}

inline Finding found(const Checked &checked, std::size_t picture, std::string_view rule, Grade grade) {
  Finding finding;
  finding.rule = rule;
  finding.grade = grade;
  finding.picture = picture;
  finding.contributor = checked.evidence.book.pictures[picture].contributor;
  return finding;
}

} // namespace stoneproof::test
