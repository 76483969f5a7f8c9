// What makes a PDF one to be kept (PDF/A-3, ISO 19005-3): what its colours mean, and the files it carries.
#pragma once

#include "reports/layout/document.h"
#include "reports/pdf/object_file.h"

#include <string>
#include <vector>

namespace stoneproof::pdf {

/// Writes the output intent, sRGB, and gives the value of OutputIntents (ISO 19005-3, 6.2.3).
std::string write_output_intents(ObjectFile &file);

/// Writes the attachments as associated files (ISO 19005-3, 6.8) and gives the catalog's entries for them;
/// none if there are none. With a date where the document has one.
Entries write_attachments(ObjectFile &file, const layout::Document &document);

} // namespace stoneproof::pdf
