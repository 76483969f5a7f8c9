// What the verbs that work on a book read before they begin.
#pragma once

#include "engine/book/read.h"
#include "engine/press/read.h"
#include "reports/files/temporary_folder.h"
#include "reports/terminal/commands.h"
#include "reports/terminal/outputs.h"
#include "reports/type/typesetter.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace stoneproof::terminal {

struct BookInputs {
  Book book;
  std::string book_sha256; ///< of the description's file
  PressSheet press;
  Typesetter typesetter;
  std::shared_ptr<TemporaryFolder> pictures =
      {}; ///< those of a finished PDF; there as long as they may be read
};

/// The inputs, or every fault of the description and of the press sheet together. `book` may be a finished
/// PDF, of which `pdf` tells more. `press`: none is the built-in sheet.
Reading<BookInputs> read_inputs(const std::filesystem::path &book,
                                const std::optional<std::filesystem::path> &press,
                                const PdfOptions &pdf = {});

/// Why a file that is no PDF is not read as a description either, where that can be told at a glance.
std::optional<Fault> neither_book(const std::filesystem::path &file);

/// Every file in a folder and the folders in it, by name, but for the pictures of drafts ("album pictures"
/// beside album.xml), which are copies. Fault: it is no folder, or cannot be read.
Outcome<std::vector<std::filesystem::path>> files_in(const std::filesystem::path &folder);

/// Those of the files behind pictures that have the name of an output, and are pictures.
std::vector<Input> named_as(const std::vector<Output> &outputs,
                            const std::vector<std::filesystem::path> &files);

/// Every file that the book is made from, so that no output replaces one of them.
std::vector<Input> files_read(const std::filesystem::path &book,
                              const std::optional<std::filesystem::path> &press, const BookInputs &inputs);

} // namespace stoneproof::terminal
