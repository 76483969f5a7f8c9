// The whole letter. The only way in is letter_document; tested in tests/reports/layout/letter.test.cpp.
#include "reports/layout/letter.h"

#include "reports/layout/foot.h"
#include "reports/layout/letter_sheets.h"

#include <utility>

namespace stoneproof::layout {

Document letter_document(const content::LetterContent &content,
                         std::span<const std::optional<SmallCopy>> copies, const Typesetter &typesetter,
                         const LetterOptions &options) {
  LetterSheets sheets(typesetter, copies);
  lay_out_letter_front(sheets, content);
  sheets.document.bookmarks.push_back({content.about, 0, 0});
  lay_out_letter_pictures(sheets, content);
  lay_out_letter_back(sheets, content);
  sheets.document.bookmarks.push_back({content.check_heading, sheets.page(), 0});
  sheets.document.bookmarks.push_back({content.slip.heading, sheets.page(), 0});
  Document document = std::move(sheets.document);
  number_sheets(document, typesetter, content.name, style::plan_label);
  document.title = content.about;
  document.subject = content.letter_for + " " + content.name;
  document.language = content.language;
  document.fingerprint = options.fingerprint;
  document.made_at = options.made_at;
  return document;
}

} // namespace stoneproof::layout
