// The layouts of small proofs, whole, as text. A change that is meant is accepted by a person who has looked:
// copy the new text, which the failing test names, over the one in golden/.
#include "reports/layout/proof.h"
#include "tests/reports/layout/document_text.h"
#include "tests/reports/layout/golden_books.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <filesystem>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// Of a long proof every so many sheets stand for the others.
void thin_out(layout::Document &document) {
  constexpr std::size_t enough = 12;
  const std::size_t every = document.pages.size() / (enough + 1) + 1;
  std::size_t sheet = 0;
  std::erase_if(document.pages, [&](const layout::DocumentPage &) { return sheet++ % every != 0; });
}

} // namespace

TEST_CASE("the proofs of books of every shape are laid out as a person has seen and accepted them") {
  for (const GoldenBook &book : golden_books) {
    Checked result = book.checked();
    const auto content = content::proof_content(result.evidence, result.findings);
    layout::Document document = layout::proof_document(content, std::move(result), type(), {});
    thin_out(document);
    const std::string laid = DocumentText::of(document);
    const std::string name = book.name + ".proof.txt";
    const auto golden = std::filesystem::path(STONEPROOF_SOURCE_DIR) / "tests/reports/layout/golden" / name;
    const auto fresh = std::filesystem::temp_directory_path() / name;
    const bool same = std::filesystem::exists(golden) && laid == content_of(golden);
    if (!same) write_file(fresh, laid);
    CAPTURE(fresh);
    CHECK(same);
  }
}
