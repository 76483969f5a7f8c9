// A made PDF, written to a folder and read.
#pragma once

#include "engine/import/read_pages.h"
#include "tests/support/catch.h"
#include "tests/support/made_pdf.h"

#include <memory>

namespace stoneproof::test {

/// Keeps the file as long as what was read of it.
struct Opened {
  explicit Opened(const std::string &text) {
    std::ofstream(folder.path / "made.pdf", std::ios::binary) << text;
    auto outcome = finished::PdfFile::open(folder.path / "made.pdf");
    REQUIRE(outcome);
    file = std::make_unique<finished::PdfFile>(std::move(outcome).value());
    drawn = std::make_unique<finished::Drawn>(finished::read_pages(*file));
  }
  const finished::PageDrawing &page(std::size_t index = 0) const {
    REQUIRE(index < drawn->sheets.size());
    return drawn->sheets[index].drawing;
  }

  Folder folder;
  std::unique_ptr<finished::PdfFile> file;
  std::unique_ptr<finished::Drawn> drawn;
};

} // namespace stoneproof::test
