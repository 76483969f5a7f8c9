// Sample PDFs as engine/import reads them, beside what poppler's programs say.
#pragma once

#include "engine/import/read_pages.h"
#include "tests/outside/samples.h"
#include "tests/support/files.h"

#include <memory>
#include <optional>
#include <utility>

namespace stoneproof::test {

/// A PDF and what its pages draw.
struct ReadPdf {
  explicit ReadPdf(finished::PdfFile opened)
      : file(std::move(opened)), drawn(std::make_unique<finished::Drawn>(finished::read_pages(file))) {}
  const std::vector<finished::Sheet> &sheets() const { return drawn->sheets; }

  finished::PdfFile file;
  std::unique_ptr<finished::Drawn> drawn;
};

/// None: it could not be opened.
inline std::optional<ReadPdf> read_pdf(const std::filesystem::path &path) {
  auto file = finished::PdfFile::open(path);
  if (!file) return std::nullopt;
  return std::optional<ReadPdf>(std::in_place, std::move(file).value());
}

/// What a program prints of a PDF; none where it fails, as of one that asks for a password. `options` stand
/// before the file's name, `after` behind it.
inline std::optional<std::string> told_of(const std::string &program_and_options,
                                          const std::filesystem::path &path, const std::string &after = "") {
  const Printed printed =
      print_of(program_and_options + " '" + path.string() + "' " + after + " 2>/dev/null");
  return printed.status == 0 ? std::optional(printed.out) : std::nullopt;
}

/// The part of a path that is the same on every machine.
inline std::string sample_name(const std::filesystem::path &path) {
  return path.lexically_relative(samples_folder()).string();
}

/// PDFs that poppler mends, and PoDoFo reads only after they have been mended (engine/import/mend.h), which
/// read_pdf leaves out.
inline bool beyond_reader(const std::filesystem::path &path) {
  constexpr const char *names[] = {
      "issue-297.pdf",            // startxref leads to no table
      "encrypted_doc_no_id.pdf",  // encrypted, without the ID that the key is made of
      "Fpdf_FileAnnotations.pdf", // the dictionary of its only page has bytes of a string between the keys
  };
  return std::any_of(std::begin(names), std::end(names),
                     [&](const char *name) { return path.filename() == name; });
}

} // namespace stoneproof::test
