// What a PDF says of itself: title, dates, language, how it opens.
#pragma once

#include "reports/layout/document.h"
#include "reports/pdf/object_file.h"

#include <string>

namespace stoneproof::pdf {

/// The information dictionary. It holds the fingerprint, so that the file's /ID varies with it.
Entries information(const layout::Document &document);

/// Writes the XMP packet and gives its reference.
std::string write_metadata(ObjectFile &file, const layout::Document &document);

/// The XMP packet (ISO 16684-1) with the same values as the information dictionary; says that the file is
/// PDF/A-3b (ISO 19005-3, 6.6.4).
std::string xmp_packet(const layout::Document &document);

} // namespace stoneproof::pdf
