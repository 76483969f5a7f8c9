// Whether a text is well-formed XML 1.0, and where its elements, attributes and texts stand.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stoneproof {

struct AttributeMark {
  std::size_t name, value; ///< byte offsets of the name and of the value's first byte
};
struct ElementMark {
  std::size_t tag = 0;             ///< byte offset of the '<'
  std::optional<std::size_t> text; ///< byte offset of the first text that is not white space
  std::vector<AttributeMark> attributes;
};

/// Why a text is refused, and at which byte.
struct ScanFault {
  std::size_t offset = 0;
  std::string what, remedy;
};

/// Bounds that a description never comes near; they keep a hostile file from asking much of the machine.
struct ScanLimits {
  std::size_t most_depth = 32;        ///< elements inside elements
  std::size_t most_attributes = 64;   ///< of one element
  std::size_t most_nodes = 1'000'000; ///< elements and attributes together
};

/// The marks of all elements in document order, or the first fault. The text is to be UTF-8 without a byte
/// order mark. Everything that XML 1.0 (fifth edition) forbids in a document without a DTD is refused, and so
/// is a DTD; names are not resolved to namespaces here.
std::variant<std::vector<ElementMark>, ScanFault> scan(std::string_view text, const ScanLimits &limits = {});

} // namespace stoneproof
