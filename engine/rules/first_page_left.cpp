// The first page stands as a left one. The only way in is first_page_left_rule; tested by
// tests/rules/first-page-left.
#include "engine/rules/about.h"

#include <algorithm>
#include <array>

namespace stoneproof {

namespace {

/// Languages whose books open to the right, by the first part of their tag (common knowledge, not a full
/// list).
constexpr std::array<std::string_view, 9> written_leftwards = {"ar", "dv", "fa", "he", "ps",
                                                               "sd", "ug", "ur", "yi"};

bool opens_to_the_right(std::string_view language) {
  const std::string_view first = language.substr(0, language.find('-'));
  return std::find(written_leftwards.begin(), written_leftwards.end(), first) != written_leftwards.end();
}

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const Book &book = evidence.book;
  if (book.binding.first_page == Side::right || opens_to_the_right(book.language)) return;
  Finding finding;
  finding.grade = Grade::query;
  findings.push_back(std::move(finding));
}

} // namespace

extern const Rule first_page_left_rule = {
    "first-page-left",
    Grade::query,
    "First page is on the left",
    "The first leaf of a block has its front on the right. A book whose page 1 is laid out as a left page "
    "has every inner margin, bleed and spread on the wrong side once it is bound.",
    "The side on which page 1 stands (that of a finished PDF is taken for a right one). By custom odd pages "
    "lie on the right and even ones on the left "
    "(common practice in books that open to the left; those in Arabic, Hebrew and other languages written "
    "towards the left are not asked about).",
    "Make page 1 a right one (in a description: first-page=\"right\") and look at the spreads again. If the "
    "book does begin on a left page, put a "
    "page before it.",
    check,
};

} // namespace stoneproof
