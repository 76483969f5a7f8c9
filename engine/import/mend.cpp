// Rebuilding a table of objects, through the C interface of qpdf. The only way in is mend_pdf; tested in
// tests/engine/import/draft.test.cpp.
#include "engine/import/mend.h"

#include <qpdf/qpdf-c.h>

#include <memory>

namespace stoneproof::finished {

namespace {

struct CleanUp {
  void operator()(_qpdf_data *data) const {
    if (qpdf_has_error(data)) qpdf_get_error(data); // one that nobody asked for would be printed
    qpdf_cleanup(&data);
  }
};

} // namespace

bool mend_pdf(const std::filesystem::path &pdf, const std::string &password,
              const std::filesystem::path &mended) {
  const std::unique_ptr<_qpdf_data, CleanUp> data(qpdf_init());
  qpdf_set_suppress_warnings(data.get(), QPDF_TRUE);
  qpdf_silence_errors(data.get());
  const auto works = [](QPDF_ERROR_CODE code) { return (code & QPDF_ERRORS) == 0; };
  if (!works(qpdf_read(data.get(), pdf.c_str(), password.empty() ? nullptr : password.c_str()))) return false;
  if (!works(qpdf_init_write(data.get(), mended.c_str()))) return false;
  qpdf_set_preserve_encryption(data.get(), QPDF_FALSE);
  qpdf_set_static_ID(data.get(), QPDF_TRUE);
  // Streams stay as they are: one that is damaged is told of where it is read.
  qpdf_set_decode_level(data.get(), qpdf_dl_none);
  return works(qpdf_write(data.get()));
}

} // namespace stoneproof::finished
