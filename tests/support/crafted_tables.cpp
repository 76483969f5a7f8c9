// Each file tries one thing that a reader of object streams and tables could break at.
#include "tests/support/crafted_tables.h"

namespace stoneproof::test {

namespace {

/// What is wrong with a PDF whose page lies in an object stream (ISO 32000-1, 7.5.7 and 7.5.8).
struct PackedFault {
  std::string object_stream = "/N 1"; ///< of its dictionary
  std::string table;                  ///< of its dictionary; "@" is where it stands itself
  std::string widths = "[1 4 2]";
  bool in_itself = false; ///< the object stream is told to lie in itself
};

/// Objects 1 and 2 are catalog and pages, 3 the page, 4 the object stream, 5 the table.
std::string packed_page(const PackedFault &fault) {
  std::string pdf = "%PDF-1.6\n", entries;
  const auto entry = [&](int type, std::size_t place, int index) {
    entries += static_cast<char>(type);
    for (int shift = 24; shift >= 0; shift -= 8) entries += static_cast<char>(place >> shift & 255);
    entries += '\0';
    entries += static_cast<char>(index);
  };
  const auto object = [&](int number, const std::string &body) {
    entry(1, pdf.size(), 0);
    pdf += std::to_string(number) + " 0 obj\n" + body + "\nendobj\n";
  };
  const auto stream = [](const std::string &dictionary, const std::string &bytes) {
    return "<<" + dictionary + "/Length " + std::to_string(bytes.size()) + ">>\nstream\n" + bytes +
           "\nendstream";
  };
  entry(0, 0, 255);
  object(1, "<</Type/Catalog/Pages 2 0 R>>");
  object(2, "<</Type/Pages/Kids[3 0 R]/Count 1/MediaBox[0 0 300 200]>>");
  entry(2, 4, 0);
  const std::string held = "3 0 <</Type/Page/Parent 2 0 R>>";
  if (fault.in_itself) entry(2, 4, 1);
  const std::size_t before = entries.size();
  object(4, stream("/Type/ObjStm/First 4" + fault.object_stream, held));
  if (fault.in_itself) entries.resize(before);
  const std::size_t table = pdf.size();
  std::string more = fault.table;
  if (const std::size_t at = more.find('@'); at != std::string::npos)
    more.replace(at, 1, std::to_string(table));
  entry(1, table, 0);
  pdf += "5 0 obj\n" + stream("/Type/XRef/Size 6/Root 1 0 R/W" + fault.widths + more, entries) + "\nendobj\n";
  return pdf + "startxref\n" + std::to_string(table) + "\n%%EOF\n";
}

} // namespace

std::vector<CraftedPdf> crafted_tables() {
  return {
      {"an object stream with nothing wrong", packed_page({})},
      {"an object stream that goes on in itself", packed_page({"/N 1/Extends 4 0 R", "", "[1 4 2]", false})},
      {"an object stream that lies in itself", packed_page({"/N 1", "", "[1 4 2]", true})},
      {"an object stream of a billion objects", packed_page({"/N 1000000000", "", "[1 4 2]", false})},
      {"an object stream of -1 objects", packed_page({"/N -1", "", "[1 4 2]", false})},
      {"a table as a stream whose predecessor is itself", packed_page({"/N 1", "/Prev @", "[1 4 2]", false})},
      {"a table as a stream beside itself", packed_page({"/N 1", "/XRefStm @", "[1 4 2]", false})},
      {"a table as a stream of entries without width", packed_page({"/N 1", "", "[0 0 0]", false})},
      {"a table as a stream of entries of a billion bytes",
       packed_page({"/N 1", "", "[1 1000000000 2]", false})},
      {"a table as a stream of a billion entries",
       packed_page({"/N 1", "/Index[0 1000000000]", "[1 4 2]", false})},
  };
}

} // namespace stoneproof::test
