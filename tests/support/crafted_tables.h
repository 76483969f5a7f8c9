// PDFs whose objects lie in an object stream and whose table is a stream, and which tell what cannot be.
#pragma once

#include "tests/support/mangled_pdf.h"

namespace stoneproof::test {

std::vector<CraftedPdf> crafted_tables();

} // namespace stoneproof::test
