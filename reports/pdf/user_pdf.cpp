// The way into the user's PDF: opens it, and finds how its pages are seen. The only ways in are the functions
// of user_pdf.h and, for this folder, of user_page.h; tested in tests/reports/pdf/user_pdf.test.cpp.
#include "reports/pdf/user_pdf.h"

#include "engine/import/apart.h"
#include "engine/import/draft.h"
#include "reports/files/replace_file.h"
#include "reports/files/temporary_folder.h"
#include "reports/pdf/user_page.h"

#include <fmt/format.h>
#include <qpdf/QPDFWriter.hh>

#include <fstream>
#include <functional>

namespace stoneproof::pdf {

namespace {

Fault unreadable(const UserPdf &pdf, const std::string &why) {
  return {fmt::format("the PDF cannot be copied from ({})", why), pdf.file.string(),
          "Export it anew from the layout program."};
}

/// Makes a file apart from this process and moves it to `target`.
Outcome<Done> made_apart(const UserPdf &pdf, const std::filesystem::path &target,
                         const std::function<void(const std::filesystem::path &)> &make) {
  auto folder = TemporaryFolder::make(std::filesystem::temp_directory_path());
  if (!folder) return folder.fault();
  const auto made = folder.value().path() / "made.pdf";
  const auto work = [&]() -> Outcome<std::string> {
    try {
      make(made);
      return std::string();
    } catch (const std::exception &error) {
      return unreadable(pdf, error.what());
    }
  };
  const auto done = finished::run_apart(work, finished::bounds_for(pdf.file), pdf.file.string());
  if (!done) return done.fault();
  return replace_file(target, [&](std::ostream &stream) -> Outcome<Done> {
    stream << std::ifstream(made, std::ios::binary).rdbuf();
    return Done{};
  });
}

/// qpdf would say of an empty stream that it is compressed, which nothing at all cannot be.
void fill_empty_streams(QPDF &pdf) {
  for (QPDFObjectHandle &object : pdf.getAllObjects())
    if (object.isStream() && object.getDict().getKey("/Filter").isNull() &&
        object.getRawStreamData()->getSize() == 0)
      object.replaceStreamData("\n", QPDFObjectHandle::newNull(), QPDFObjectHandle::newNull());
}

/// The same bytes for the same content, whatever the time.
void write(QPDF &pdf, const std::filesystem::path &file, qpdf_stream_data_e streams) {
  QPDFWriter writer(pdf, file.c_str());
  writer.setStreamDataMode(streams);
  writer.setDeterministicID(true);
  writer.setPreserveEncryption(false);
  writer.setLinearization(false);
  writer.write();
}

} // namespace

std::unique_ptr<QPDF> open_quietly(const std::filesystem::path &file, const std::string &password) {
  auto pdf = std::make_unique<QPDF>();
  pdf->setSuppressWarnings(true);
  pdf->processFile(file.c_str(), password.empty() ? nullptr : password.c_str());
  return pdf;
}

Outcome<Done> put_own_pages(const std::filesystem::path &proof, const UserPdf &pdf) {
  return made_apart(pdf, proof, [&](const std::filesystem::path &made) {
    const auto user = open_quietly(pdf.file, pdf.password), target = open_quietly(proof, {});
    fill_own_pages(*target, *user);
    fill_empty_streams(*target);
    write(*target, made, qpdf_s_compress);
  });
}

Outcome<Done> write_annotated(const UserPdf &pdf, const std::vector<UserNote> &notes,
                              const std::filesystem::path &target) {
  return made_apart(pdf, target, [&](const std::filesystem::path &made) {
    const auto user = open_quietly(pdf.file, pdf.password);
    add_notes(*user, notes);
    write(*user, made, qpdf_s_preserve);
  });
}

} // namespace stoneproof::pdf
