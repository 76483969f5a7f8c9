// Whether the words of a sheet stay on it.
#pragma once

#include "reports/layout/style.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"

namespace stoneproof::test {

/// Every word stands inside the margins of its sheet, but for so much at the right and at the foot.
inline void check_inside(const layout::DocumentPage &page, Length past_right, Length past_foot) {
  for (const layout::Item &item : page.items) {
    const auto *text = std::get_if<layout::TextItem>(&item);
    if (!text) continue;
    CAPTURE(text->text);
    CHECK(text->at.x >= layout::style::margin - Length::of_mm(0.1));
    CHECK(text->at.x + type().width(text->face, text->size, text->text) <=
          page.size.width - layout::style::margin + past_right);
    CHECK(text->at.y <= page.size.height - layout::style::foot + past_foot);
    CHECK(text->at.y - text->size >= Length::of_mm(5));
  }
}

} // namespace stoneproof::test
