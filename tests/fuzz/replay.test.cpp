// Files that once broke a reader, or that come near it, through the functions that the fuzzers run. What they
// must not do is crash, which the sanitizer build makes strict.
#include "tests/fuzz/harnesses.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

using namespace stoneproof;

TEST_CASE("what the fuzzers found once is found no more") {
  int files = 0;
  for (const fuzz::Harness &harness : fuzz::harnesses) {
    const std::filesystem::path folder =
        std::filesystem::path(STONEPROOF_SOURCE_DIR "/tests/fuzz/replay") / harness.family;
    CAPTURE(folder.string());
    REQUIRE(std::filesystem::is_directory(folder));
    for (const auto &entry : std::filesystem::directory_iterator(folder)) {
      const std::string bytes = test::content_of(entry.path());
      CHECK_FALSE(bytes.empty());
      // Aborts, and with it the program, where anything does not hold together.
      harness.run({reinterpret_cast<const std::uint8_t *>(bytes.data()), bytes.size()});
      ++files;
    }
  }
  CHECK(files >= 10);
}
