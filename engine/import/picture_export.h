// Writes the pictures of a PDF out as files: JPEG as it is, the rest as TIFF.
#pragma once

#include "engine/import/drawn_parts.h"
#include "engine/import/layout_of.h"
#include "engine/import/pdf_file.h"
#include "engine/outcome.h"

#include <filesystem>
#include <string>

namespace stoneproof::finished {

/// Writes one picture into `folder` under `stem` and the ending of its format; its ICC profile beside it,
/// where the picture's own file has none. What cannot be decoded is written as the PDF holds it. Fault: the
/// folder cannot be written to.
Outcome<WrittenPicture> write_picture(const PdfFile &file, const ImageSource &source,
                                      const std::filesystem::path &folder, const std::string &stem);

} // namespace stoneproof::finished
