// The foot of every sheet of a document: its title and number.
#pragma once

#include "reports/layout/canvas.h"

#include <string_view>

namespace stoneproof::layout {

/// Gives every page its label and draws "title  2 / 7" at its right foot. To be called when all pages are
/// there.
void number_sheets(Document &document, const Typesetter &type, std::string_view title,
                   const TypeStyle &style = style::label);

} // namespace stoneproof::layout
