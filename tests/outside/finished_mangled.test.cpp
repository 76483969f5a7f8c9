// Broken PDFs: whatever is done to them, reading ends in a value or a Fault, within the bounds on time and
// memory. Few files, so that this is fast; build/tests/bench/bench_mangled does it with thousands.
#include "engine/import/draft.h"
#include "tests/outside/samples.h"
#include "tests/support/files.h"
#include "tests/support/mangled_pdf.h"

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

constexpr finished::Bounds tight{std::chrono::seconds(5), 500'000'000};

/// Whether reading gave a value; the test fails where a Fault lacks a part.
bool ends_well(const std::string &bytes) {
  const Folder folder;
  const auto path = write_file(folder / "made.pdf", bytes);
  const auto outcome = finished::draft_book({.pdf = path, .pictures = folder.path}, tight);
  if (outcome) {
    CHECK(outcome.value().find("</book>") != std::string::npos);
    return true;
  }
  CHECK_FALSE(outcome.fault().what.empty());
  CHECK(outcome.fault().where == path.string());
  CHECK_FALSE(outcome.fault().remedy.empty());
  return false;
}

/// Those of which the rest is read all the same; they take no time worth speaking of.
constexpr const char *harmless[] = {
    "a count of 1,000,000,000 pages",
    "a count of -5 pages",
    "contents that are an empty list",
    "labels that hold themselves a thousand times",
    "a table whose predecessor is itself",
    "an object stream with nothing wrong",
    "a form that draws itself",
    "forms that each draw the next one twice",
    "100,000 saves",
    "100,000 restores",
    "matrices that are no numbers",
    "pictures of no area",
    "a picture of a billion by a billion pixels",
    "a palette whose base is itself",
    "widths of all codes a thousand times",
    "a map that gives every code a long text",
};

} // namespace

TEST_CASE("sample PDFs that were mangled end in a value or a fault") {
  int files = 0, values = 0, faults = 0;
  for (const auto &path : sample_pdfs()) {
    if (std::filesystem::file_size(path) > 300'000) continue;
    CAPTURE(path.string());
    (ends_well(mangled(content_of(path), static_cast<std::uint64_t>(files++))) ? values : faults) += 1;
  }
  CHECK(files >= 100);
  CHECK(values > 10);
  CHECK(faults > 10);
}

TEST_CASE("PDFs that are made to do harm end in a value or a fault") {
  for (const CraftedPdf &crafted : crafted_pdfs()) {
    CAPTURE(crafted.name);
    const bool value = ends_well(crafted.bytes);
    CHECK((value || std::find(std::begin(harmless), std::end(harmless), std::string_view(crafted.name)) ==
                        std::end(harmless)));
  }
}
