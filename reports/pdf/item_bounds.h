// Where an item lies on its page.
#pragma once

#include "reports/layout/document.h"
#include "reports/type/typesetter.h"

namespace stoneproof::pdf {

/// The rectangle round all that an item shows; of lines, without their width.
Rect bounds_of(const layout::Item &item, const Typesetter &typesetter);

} // namespace stoneproof::pdf
