// The layouts of small proofs, whole, as text. A change that is meant is accepted by a person who has looked:
// copy the new text, which the failing test names, over the one in golden/.
#include "reports/layout/proof.h"
#include "tests/reports/layout/document_text.h"
#include "tests/reports/layout/golden_books.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <filesystem>
#include <iterator>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

/// Of a long proof the first and the last sheets stand for the others.
void keep_ends(layout::Document &document) {
  constexpr std::ptrdiff_t first = 8, last = 4;
  if (std::ssize(document.pages) > first + last)
    document.pages.erase(document.pages.begin() + first, document.pages.end() - last);
}

} // namespace

TEST_CASE("the proofs of books of every shape are laid out as a person has seen and accepted them") {
  for (const GoldenBook &book : golden_books) {
    Checked result = book.checked();
    const auto content = content::proof_content(result.evidence, result.findings);
    layout::Document document = layout::proof_document(content, std::move(result), type(), {});
    keep_ends(document);
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
