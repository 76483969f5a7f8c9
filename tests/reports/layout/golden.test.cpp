// The layout of a small proof, whole, as text. A change that is meant is accepted by a person who has looked:
// copy the new text, which the failing test names, over small.proof.txt.
#include "reports/layout/proof.h"
#include "tests/reports/layout/document_text.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"
#include "tests/support/small_book.h"

#include <filesystem>
#include <fstream>
#include <sstream>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// One of each thing that a drawing can show: a turned picture with a mark, an empty frame, one off the page,
/// texts.
Checked golden_book() {
  Book book = small_book();
  book.contributors = {{"eleni", "Ελένη Καλφάτη", "eleni@example.org", {}}};
  book.pictures = {photo("p", "summer.jpg"), photo("q", "unused.tif")};
  book.pictures[0].contributor = 0;
  Frame turned = frame("turned", 0, 30, 40, 120, 80);
  turned.turn.degrees = -4;
  book.pages[0].frames = {turned, frame("empty", {}, 30, 140, 60, 60), frame("away", 0, 300, 20, 40, 40)};
  book.pages[0].texts = {{TextKind::heading,
                          {Length::of_mm(30), Length::of_mm(20), Length::of_mm(120), Length::of_mm(10)},
                          Length::of_pt(14),
                          "By the river",
                          {}}};
  book.pages[1].frames = {frame("wide", 0, -3, -3, 406, 256)};
  book.pages[1].frames[0].across_gutter = true;
  Checked result = checked(std::move(book), {1500, 1000});
  result.copies[0] = SmallCopy{{0, 0, 1500, 1000}, 300, 200, {}};
  return result;
}

} // namespace

TEST_CASE("the small proof is laid out as a person has seen and accepted it") {
  Checked result = golden_book();
  const auto content = content::proof_content(result.evidence, result.findings);
  const auto type = Typesetter::load();
  REQUIRE(type);
  const std::string laid =
      DocumentText::of(layout::proof_document(content, std::move(result), type.value(), {}));
  const std::filesystem::path golden =
      std::filesystem::path(STONEPROOF_SOURCE_DIR) / "tests/reports/layout/small.proof.txt";
  const auto fresh = std::filesystem::temp_directory_path() / "small.proof.txt";
  if (laid != content_of(golden)) write_file(fresh, laid);
  CAPTURE(fresh);
  CHECK(laid == content_of(golden));
}
