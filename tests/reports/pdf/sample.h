// What the tests of the PDF writer share: a folder of their own, programs that read PDFs, a sample document.
#pragma once

#include "reports/layout/document.h"
#include "reports/pdf/write_pdf.h"
#include "tests/support/catch.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>

namespace stoneproof::test {

/// A folder of its own, removed afterwards.
struct Folder {
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "stoneproof-pdf-XXXXXX").string();
    path = mkdtemp(name.data());
  }
  ~Folder() { std::filesystem::remove_all(path); }
  std::string file(const std::string &name) const { return (path / name).string(); }
  std::filesystem::path path;
};

/// What a command prints; the test fails when the command does.
inline std::string run(const std::string &command) {
  INFO(command);
  FILE *pipe = popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) out += static_cast<char>(c);
  const int status = pclose(pipe);
  INFO(out);
  REQUIRE(WEXITSTATUS(status) == 0);
  return out;
}

inline std::string bytes_of(const std::string &path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream content;
  content << file.rdbuf();
  return content.str();
}

inline const Typesetter &typesetter() {
  static const Typesetter loaded = Typesetter::load().value();
  return loaded;
}

/// A JPEG of random colours, made by ImageMagick.
inline layout::Image picture(const Folder &folder, int width, int height) {
  const std::string path = folder.file("picture.jpg");
  const std::string size = std::to_string(width) + "x" + std::to_string(height);
  run("convert -size " + size + " -seed 5 plasma:red-blue -type TrueColor -quality 80 " + path);
  const std::string bytes = bytes_of(path);
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

/// Writes a document and has it looked over by qpdf.
inline void write(const layout::Document &document, const std::string &path) {
  const auto written = write_pdf(document, typesetter(), path);
  if (!written) FAIL(written.fault().what);
  CHECK(run("qpdf --check " + path).find("No syntax or stream encoding errors found") != std::string::npos);
}

} // namespace stoneproof::test
