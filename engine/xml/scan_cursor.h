// The small parts of XML that a scan meets everywhere: names, references, comments, instructions, the
// declaration. For scan.cpp alone.
#pragma once

#include "engine/xml/scan.h"

namespace stoneproof {

/// A place in a text that moves forward. What returns bool has moved behind its part, or has set the fault.
class ScanCursor {
protected:
  explicit ScanCursor(std::string_view text) : text_(text) {}

  bool at_end() const { return at_ >= text_.size(); }
  bool starts(std::string_view word) const { return text_.compare(at_, word.size(), word) == 0; }
  bool take(std::string_view word);
  bool skip_space(); ///< whether there was any
  std::optional<std::string_view> name();
  bool fail(std::size_t offset, std::string what, std::string remedy);

  bool valid_characters(); ///< of the whole text; moves nowhere
  bool declaration();      ///< <?xml ...?>, if there is one
  bool comment();
  bool instruction();
  bool reference();

  std::string_view text_;
  std::size_t at_ = 0;
  std::optional<ScanFault> fault_;

private:
  bool numeric_reference(std::size_t begin, std::string_view digits);
  std::optional<std::string_view> pseudo_attribute(std::string_view wanted);
};

} // namespace stoneproof
