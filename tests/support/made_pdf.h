// Small PDFs written by hand, object by object.
#pragma once

#include "tests/support/files.h"

#include <filesystem>
#include <fstream>
#include <string>
#include <utility>
#include <vector>

namespace stoneproof::test {

/// Objects of a PDF, numbered from 1 as they are added.
class MadePdf {
public:
  /// The number of the new object. `body` is what stands between obj and endobj.
  int add(std::string body) {
    objects_.push_back(std::move(body));
    return static_cast<int>(objects_.size());
  }
  int stream(const std::string &dictionary, const std::string &bytes) {
    return add("<<" + dictionary + "/Length " + std::to_string(bytes.size()) + ">>\nstream\n" + bytes +
               "\nendstream");
  }
  void set(int number, std::string body) { objects_[static_cast<std::size_t>(number) - 1] = std::move(body); }

  /// The whole file; `root` is the number of the catalog, `more` what else stands in the trailer.
  std::string text(int root, const std::string &more = {}) const {
    std::string pdf = "%PDF-1.6\n";
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < objects_.size(); ++i) {
      places.push_back(pdf.size());
      pdf += std::to_string(i + 1) + " 0 obj\n" + objects_[i] + "\nendobj\n";
    }
    const std::size_t table = pdf.size();
    pdf += "xref\n0 " + std::to_string(places.size() + 1) + "\n0000000000 65535 f \n";
    for (const std::size_t place : places) {
      const std::string digits = std::to_string(place);
      pdf += std::string(10 - digits.size(), '0') + digits + " 00000 n \n";
    }
    return pdf + "trailer\n<</Size " + std::to_string(places.size() + 1) + "/Root " + std::to_string(root) +
           " 0 R" + more + ">>\nstartxref\n" + std::to_string(table) + "\n%%EOF\n";
  }

private:
  std::vector<std::string> objects_;
};

/// A PDF of one page, 300 x 200 points, with this content. `resources` stands in its resource dictionary,
/// `page` in the page's own, `catalog` in the catalog; object numbers that they name must be of `pdf`.
inline std::string one_page(MadePdf pdf, const std::string &content, const std::string &resources = {},
                            const std::string &page = {}, const std::string &catalog = {}) {
  const int stream = pdf.stream("", content);
  const int pages = pdf.add("");
  const int only = pdf.add("<</Type/Page/Parent " + std::to_string(pages) + " 0 R/Contents " +
                           std::to_string(stream) + " 0 R/Resources<<" + resources + ">>" + page + ">>");
  pdf.set(pages, "<</Type/Pages/Count 1/Kids[" + std::to_string(only) + " 0 R]/MediaBox[0 0 300 200]>>");
  const int root = pdf.add("<</Type/Catalog/Pages " + std::to_string(pages) + " 0 R" + catalog + ">>");
  return pdf.text(root);
}

} // namespace stoneproof::test
