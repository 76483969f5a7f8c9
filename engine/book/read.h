// Reads the XML description of a book (schema/book.md).
#pragma once

#include "engine/book/book.h"
#include "engine/xml/source_fault.h"
#include "engine/xml/source_text.h"

#include <filesystem>

namespace stoneproof {

inline constexpr std::string_view book_namespace = "urn:stoneproof:book:1";

/// The book, or every fault found in the file, up to a limit; a file that is not well-formed XML gives one
/// fault. The file is opened read-only. Picture files are not looked at.
Reading<Book> read_book(const std::filesystem::path &file);

/// The same from text; its name becomes Book::source.
Reading<Book> parse_book(SourceText source);

} // namespace stoneproof
