// For user_pdf.cpp: what is done to objects of qpdf.
#pragma once

#include "engine/import/layout_of.h"
#include "reports/pdf/user_pdf.h"

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageObjectHelper.hh>

#include <memory>

namespace stoneproof::pdf {

/// Opens a PDF, mending what is broken; throws std::exception where it cannot.
std::unique_ptr<QPDF> open_quietly(const std::filesystem::path &file, const std::string &password);

/// The boxes of a page, read as the importer reads them.
finished::SheetBoxes boxes_of(QPDFPageObjectHelper &page);

/// Replaces the empty forms of `proof` by the pages of `user`. Pages that are not there, or damaged, leave
/// theirs empty.
void fill_own_pages(QPDF &proof, QPDF &user);

void add_notes(QPDF &user, const std::vector<UserNote> &notes);

} // namespace stoneproof::pdf
