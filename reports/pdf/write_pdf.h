// A laid-out document as a PDF file.
#pragma once

#include "engine/outcome.h"
#include "reports/layout/document.h"
#include "reports/type/typesetter.h"

#include <filesystem>

namespace stoneproof {

/// Writes PDF 1.7 with a tagged structure, as PDF/A-3b (ISO 19005-3) has it, in the way of replace_file():
/// whole or not at all. The same document gives the same bytes, whatever the time, its zone, the locale and
/// the place. JPEG data goes into the file as it is, once an image; an image that no page shows is left out.
/// Indexes must be valid.
/// What has been written is let go of, so that memory holds the document or its objects and not both.
Outcome<Done> write_pdf(layout::Document document, const Typesetter &typesetter,
                        const std::filesystem::path &target);

} // namespace stoneproof
