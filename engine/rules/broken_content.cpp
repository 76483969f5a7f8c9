// Some of a page of the finished PDF cannot be read. The only way in is broken_content_rule; tested by
// tests/rules/broken-content.
#include "engine/rules/about.h"
#include "engine/rules/print_page.h"

namespace stoneproof {

namespace {

void check(const Evidence &evidence, std::vector<Finding> &findings) {
  const auto &file = evidence.book.print_file;
  if (file && file->mended) {
    findings.emplace_back();
    findings.back().grade = Grade::hold;
  }
  if (file && file->cut_short) {
    findings.emplace_back();
    findings.back().grade = Grade::hold;
    findings.back().measured = Count{evidence.book.pages.size()};
  }
  each_print_page(evidence, [&](std::size_t page, const PrintPage &print) {
    if (!print.broken && !print.cut_short) return;
    findings.push_back(about_print_page(print.broken ? Grade::hold : Grade::query, evidence, page));
  });
}

} // namespace

extern const Rule broken_content_rule = {
    "broken-content",
    Grade::hold,
    "Page cannot be read whole",
    "What cannot be read here may be missing in print, and was not checked.",
    "A file whose table of objects had to be rebuilt before it could be read, or that has more than 10,000 "
    "pages; content streams that cannot be decoded to their end; and pages that draw more than is followed: "
    "four "
    "million operations, 20,000 pictures or forms, forms 24 deep within each other, 64 MB in one of them.",
    "Export the page anew, and look at it in another program. A page that is only very full may be printed "
    "sound, but look at it.",
    check,
    false,
    true,
};

} // namespace stoneproof
