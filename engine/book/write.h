// A book as values -> the XML description that read_book reads back.
#pragma once

#include "engine/book/book.h"

#include <string>

namespace stoneproof {

/// UTF-8. Lengths are written in millimetres to the tick, so that reading the text gives the same book but
/// for places in the file.
std::string book_text(const Book &book);

} // namespace stoneproof
