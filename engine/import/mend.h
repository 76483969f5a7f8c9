// Rewrites a PDF whose table of objects is broken.
#pragma once

#include <filesystem>
#include <string>

namespace stoneproof::finished {

/// Finds the objects of a PDF wherever they are, through qpdf, and writes those that can be reached to
/// `mended`, which is not encrypted. False: nothing could be read, or written.
bool mend_pdf(const std::filesystem::path &pdf, const std::string &password,
              const std::filesystem::path &mended);

} // namespace stoneproof::finished
