// The operations of a content stream, one after the other (ISO 32000-1, 7.8.2, 8.9.7). Also reads the
// character maps of fonts, which have the same syntax.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace stoneproof::finished {

/// A value before an operator.
struct Operand {
  enum class Kind { number, name, string, array, dictionary, word };
  Kind kind = Kind::word;
  double number = 0;
  std::string text;           ///< of a name (without its slash), a string's bytes, a word as true or null
  std::vector<Operand> items; ///< of an array; of a dictionary key and value by turns

  bool is(Kind wanted) const { return kind == wanted; }
  /// Of a dictionary: the value of a key; null where it has none.
  const Operand *find(std::string_view key) const;
};

struct Operation {
  std::string name;              ///< the operator; "BI" of a whole inline image
  std::vector<Operand> operands; ///< of an inline image its dictionary
  std::string_view data;         ///< of an inline image its bytes, still encoded

  /// The operand at a place from the first as a number; 0 where it is none.
  double number(std::size_t at) const;
  /// Whether there are so many operands, and each of them a number.
  bool has_numbers(std::size_t count) const;
  /// The last operand as a name; empty where it is none.
  std::string_view last_name() const;
};

class ContentParser {
public:
  /// `content` must outlive the parser.
  explicit ContentParser(std::string_view content) : content_(content) {}

  /// The next operation; false at the end. Broken syntax is passed over. Of more operands than
  /// `most_operands` the first stay away.
  bool next(Operation &operation);

  static constexpr std::size_t most_operands = 100'000;
  static constexpr int most_depth = 28; ///< of arrays and dictionaries within each other

private:
  void skip_space();
  bool read_operand(Operand &operand, int depth);
  void read_list(Operand &operand, char end, int depth);
  std::string read_string();
  std::string read_hex_string();
  std::string read_name();
  std::string_view read_word();
  void read_inline_image(Operation &operation);
  std::string_view inline_data(const Operand &dictionary);
  bool at_end() const { return at_ >= content_.size(); }

  std::string_view content_;
  std::size_t at_ = 0;
};

} // namespace stoneproof::finished
