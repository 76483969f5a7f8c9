#include "reports/type/cff_charset.h"
#include "tests/support/catch.h"

#include <string>

using namespace stoneproof;

namespace {

using Cids = std::vector<std::uint16_t>;

std::string bytes(std::initializer_list<int> values) {
  std::string out;
  for (const int value : values) out += static_cast<char>(value);
  return out;
}

/// A font of so many glyphs with this charset, CID-keyed or not, as far as its charset needs one.
std::string font_of(int glyphs, const std::string &charset, bool by_cid) {
  const std::string ros = bytes({139, 139, 140, 12, 30}); // 0 0 1: ROS
  const std::string top_start = bytes({28, 0, 44, 15}) +
                                bytes({29, 0, 0, 0, 40, 17}) +   // charset, CharStrings
                                bytes({30, 0x1A, 0x5F, 12, 7}) + // a fraction for another operator
                                bytes({251, 0, 247, 0, 5}) + (by_cid ? ros : bytes({139, 139, 140, 12, 2}));
  const std::string head = bytes({1, 0, 4, 1}) + bytes({0, 1, 1, 1, 2, 'A'}) +
                           bytes({0, 1, 1, 1, static_cast<int>(1 + top_start.size())}) + top_start;
  REQUIRE(head.size() == 40);
  return head + bytes({0, glyphs, 1, 1}) + charset; // of the INDEX of CharStrings only its count is looked at
}

} // namespace

TEST_CASE("the charset of a CID-keyed font gives the CIDs of its glyphs") {
  const std::string single = bytes({0, 0, 7, 1, 44, 0, 9});
  const std::string short_ranges = bytes({1, 0, 5, 1, 1, 0, 0});
  const std::string long_ranges =
      bytes({2, 255, 0, 0, 2, 0, 1, 0, 200}); // the last one is longer than the font
  CHECK(cids_of(font_of(4, single, true)) == Cids{0, 7, 300, 9});
  CHECK(cids_of(font_of(4, short_ranges, true)) == Cids{0, 5, 6, 256});
  CHECK(cids_of(font_of(5, long_ranges, true)) == Cids{0, 0xFF00, 0xFF01, 0xFF02, 1});
  CHECK(cids_of(font_of(1, single, true)) == Cids{0});
}

TEST_CASE("a font that is not CID-keyed has no CIDs") {
  CHECK(cids_of(font_of(4, bytes({0, 0, 7, 1, 44, 0, 9}), false)) == Cids{});
}

TEST_CASE("what is cut off or unknown is no font") {
  const std::string whole = font_of(4, bytes({0, 0, 7, 1, 44, 0, 9}), true);
  for (std::size_t size = 0; size < whole.size(); ++size) {
    INFO(size);
    CHECK_FALSE(cids_of(whole.substr(0, size)));
  }
  CHECK_FALSE(cids_of(font_of(4, bytes({3, 0, 7, 1, 44, 0, 9}), true))); // there is no format 3
  CHECK_FALSE(cids_of(std::string(100, '\xFF')));
}
