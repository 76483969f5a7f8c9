// What the tests of the PDF writer share: a folder of their own, programs that read PDFs, a sample document.
#pragma once

#include "reports/layout/document.h"
#include "reports/pdf/write_pdf.h"
#include "tests/support/programs.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>

namespace stoneproof::test {

inline const Typesetter &typesetter() {
  static const Typesetter loaded = Typesetter::load().value();
  return loaded;
}

/// Words that our fonts lack: of a CID-keyed CFF font (fonts-noto-cjk) and of one that is not (fonts-stix).
inline const std::string cjk_words = "山田太郎 漢字 かな 한글", script_words = "𝒜𝓑𝓩";

/// A JPEG of random colours, made by ImageMagick.
inline layout::Image picture(const Folder &folder, int width, int height) {
  const std::string path = folder.file("picture.jpg");
  const std::string size = std::to_string(width) + "x" + std::to_string(height);
  run_command("convert -size " + size + " -seed 5 plasma:red-blue -type TrueColor -quality 80 " + path);
  const std::string bytes = content_of(path);
  return {width, height, {bytes.begin(), bytes.end()}};
}

inline layout::PictureItem placed(std::size_t image, const Rect &at) {
  const Corners corners{
      {{at.left(), at.top()}, {at.right(), at.top()}, {at.right(), at.bottom()}, {at.left(), at.bottom()}}};
  return {image, corners, {corners.begin(), corners.end()}, ""};
}

inline layout::DocumentPage page_of(Size size, std::vector<layout::Item> items = {}) {
  layout::DocumentPage page;
  page.size = size;
  page.items = std::move(items);
  return page;
}

/// Without pages: a title, a subject, a language and a date that are awkward in one way or another.
inline layout::Document titled_document() {
  layout::Document document;
  document.title = "Album \u0141\u00F3d\u017A";
  document.subject = "Proof <1> & more";
  document.language = "pl";
  document.fingerprint = "first";
  document.made_at = 1'700'000'000;
  return document;
}

/// Writes a document and has it looked over by qpdf.
inline void write(const layout::Document &document, const std::string &path,
                  const Typesetter &fonts = typesetter()) {
  const auto written = write_pdf(document, fonts, path);
  if (!written) FAIL(written.fault().what);
  CHECK(run_command("qpdf --check " + path).find("No syntax or stream encoding errors found") !=
        std::string::npos);
}

} // namespace stoneproof::test
