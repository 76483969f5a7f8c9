// Bytes of a content stream -> operations. The only way in is ContentParser; tested in
// tests/engine/import/content_parser.test.cpp.
#include "engine/import/content_parser.h"

#include "engine/import/syntax.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstdlib>

namespace stoneproof::finished {

namespace {

/// A number as PDF writes it: no exponent, a sign perhaps doubled by careless programs.
bool parse_number(std::string_view word, double &number) {
  bool negative = false;
  while (!word.empty() && (word[0] == '+' || word[0] == '-')) {
    negative = negative || word[0] == '-';
    word.remove_prefix(1);
  }
  if (word.empty() || !((word[0] >= '0' && word[0] <= '9') || word[0] == '.')) return false;
  double value = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), value, std::chars_format::fixed);
  if (read.ec == std::errc::invalid_argument) {
    if (word != ".") return false;
    value = 0;
  } else if (read.ec != std::errc())
    value = 0;
  number = negative ? -value : value;
  return true;
}

/// The full names of the abbreviations in an inline image (ISO 32000-1, table 93).
std::string_view full_key(std::string_view key) {
  constexpr std::string_view pairs[][2] = {{"BPC", "BitsPerComponent"}, {"CS", "ColorSpace"}, {"D", "Decode"},
                                           {"DP", "DecodeParms"},       {"F", "Filter"},      {"H", "Height"},
                                           {"IM", "ImageMask"},         {"W", "Width"}};
  for (const auto &pair : pairs)
    if (pair[0] == key) return pair[1];
  return key;
}

} // namespace

const Operand *Operand::find(std::string_view key) const {
  for (std::size_t i = 0; i + 1 < items.size(); i += 2)
    if (items[i].is(Kind::name) && items[i].text == key) return &items[i + 1];
  return nullptr;
}

double Operation::number(std::size_t at) const {
  return at < operands.size() && operands[at].is(Operand::Kind::number) ? operands[at].number : 0;
}

bool Operation::has_numbers(std::size_t count) const {
  return operands.size() >= count &&
         std::all_of(operands.end() - static_cast<std::ptrdiff_t>(count), operands.end(),
                     [](const Operand &o) { return o.is(Operand::Kind::number); });
}

std::string_view Operation::last_name() const {
  return !operands.empty() && operands.back().is(Operand::Kind::name) ? std::string_view(operands.back().text)
                                                                      : std::string_view();
}

void ContentParser::skip_space() {
  while (!at_end()) {
    if (content_[at_] == '%')
      while (!at_end() && content_[at_] != '\n' && content_[at_] != '\r') ++at_;
    else if (is_space(content_[at_]))
      ++at_;
    else
      return;
  }
}

std::string ContentParser::read_string() {
  std::string bytes;
  int open = 1;
  for (++at_; !at_end(); ++at_) {
    char c = content_[at_];
    if (c == '(') ++open;
    if (c == ')' && --open == 0) {
      ++at_;
      break;
    }
    if (c != '\\') {
      bytes += c;
      continue;
    }
    if (++at_ >= content_.size()) break;
    c = content_[at_];
    if (c >= '0' && c <= '7') {
      int value = 0, digits = 0;
      for (; digits < 3 && !at_end() && content_[at_] >= '0' && content_[at_] <= '7'; ++digits)
        value = value * 8 + (content_[at_++] - '0');
      --at_;
      bytes += static_cast<char>(value);
    } else if (c == '\r') {
      if (at_ + 1 < content_.size() && content_[at_ + 1] == '\n') ++at_;
    } else if (c != '\n') {
      constexpr std::string_view from = "nrtbf", to = "\n\r\t\b\f";
      const std::size_t escape = from.find(c);
      bytes += escape == std::string_view::npos ? c : to[escape];
    }
  }
  return bytes;
}

std::string ContentParser::read_hex_string() {
  std::string bytes;
  int digits = 0, value = 0;
  for (++at_; !at_end() && content_[at_] != '>'; ++at_) {
    const int digit = hex_value(content_[at_]);
    if (digit < 0) continue;
    value = value * 16 + digit;
    if (++digits < 2) continue;
    bytes += static_cast<char>(value);
    digits = value = 0;
  }
  if (digits == 1) bytes += static_cast<char>(value * 16);
  if (!at_end()) ++at_;
  return bytes;
}

std::string ContentParser::read_name() {
  std::string name;
  for (++at_; !at_end() && is_regular(content_[at_]); ++at_) {
    if (content_[at_] == '#' && at_ + 2 < content_.size() && hex_value(content_[at_ + 1]) >= 0 &&
        hex_value(content_[at_ + 2]) >= 0) {
      name += static_cast<char>(hex_value(content_[at_ + 1]) * 16 + hex_value(content_[at_ + 2]));
      at_ += 2;
    } else
      name += content_[at_];
  }
  return name;
}

std::string_view ContentParser::read_word() {
  const std::size_t from = at_;
  while (!at_end() && is_regular(content_[at_])) ++at_;
  if (at_ == from) ++at_; // a stray delimiter
  return content_.substr(from, at_ - from);
}

void ContentParser::read_list(Operand &operand, char end, int depth) {
  operand.items.reserve(16); // a line of text has some dozens
  while (true) {
    skip_space();
    if (at_end()) return;
    if (content_[at_] == end) {
      const bool doubled = end == '>' && at_ + 1 < content_.size() && content_[at_ + 1] == '>';
      at_ += doubled ? 2u : 1u;
      return;
    }
    Operand &item = operand.items.emplace_back();
    const bool whole = read_operand(item, depth + 1);
    const bool value = whole || item.text == "true" || item.text == "false" || item.text == "null";
    if (!value || operand.items.size() > most_operands) operand.items.pop_back();
  }
}

/// False where a word stands that is no number: an operator, true, false or null.
bool ContentParser::read_operand(Operand &operand, int depth) {
  const char c = content_[at_];
  const bool doubled = at_ + 1 < content_.size() && content_[at_ + 1] == c;
  if (c == '(') {
    operand.kind = Operand::Kind::string;
    operand.text = read_string();
  } else if (c == '<' && !doubled) {
    operand.kind = Operand::Kind::string;
    operand.text = read_hex_string();
  } else if (c == '/') {
    operand.kind = Operand::Kind::name;
    operand.text = read_name();
  } else if ((c == '[' || (c == '<' && doubled)) && depth < most_depth) {
    operand.kind = c == '[' ? Operand::Kind::array : Operand::Kind::dictionary;
    at_ += c == '[' ? 1u : 2u;
    read_list(operand, c == '[' ? ']' : '>', depth);
  } else {
    const std::string_view word = read_word();
    operand.kind = Operand::Kind::word;
    if (!parse_number(word, operand.number)) {
      operand.text = word;
      return false;
    }
    operand.kind = Operand::Kind::number;
  }
  return true;
}

/// The bytes between ID and EI. Without a filter their number follows from the dictionary's; else EI is the
/// first one that stands by itself and has text behind it.
std::string_view ContentParser::inline_data(const Operand &dictionary) {
  if (!at_end() && is_space(content_[at_])) ++at_;
  const std::size_t from = at_;
  std::size_t search = from;
  const Operand *filter = dictionary.find("Filter");
  const Operand *width = dictionary.find("Width"), *height = dictionary.find("Height");
  const Operand *mask = dictionary.find("ImageMask");
  if (!filter && mask && mask->text == "true" && width && height && width->number > 0 && height->number > 0) {
    const double bytes = std::ceil(width->number / 8) * height->number;
    if (bytes < static_cast<double>(content_.size() - from)) search = from + static_cast<std::size_t>(bytes);
  }
  for (;; ++search) {
    search = content_.find("EI", search);
    if (search == std::string_view::npos) break;
    const bool begins = search == from || is_space(content_[search - 1]);
    const bool ends = search + 2 >= content_.size() || !is_regular(content_[search + 2]);
    const std::string_view behind = content_.substr(search + 2, 12);
    const bool text = std::all_of(behind.begin(), behind.end(), [](char c) {
      return (c >= 32 && c < 127) || c == '\n' || c == '\r' || c == '\t';
    });
    if (!begins || !ends || !text) continue;
    at_ = search + 2;
    return content_.substr(from, search - from);
  }
  at_ = content_.size();
  return content_.substr(from);
}

void ContentParser::read_inline_image(Operation &operation) {
  Operand dictionary;
  dictionary.kind = Operand::Kind::dictionary;
  while (true) {
    skip_space();
    if (at_end()) break;
    Operand item;
    const bool whole = read_operand(item, 0);
    if (!whole && item.text == "ID") break;
    if (!whole && item.text == "EI") return;
    if (item.is(Operand::Kind::name) && dictionary.items.size() % 2 == 0) item.text = full_key(item.text);
    if (dictionary.items.size() < 200) dictionary.items.push_back(std::move(item));
  }
  operation.data = inline_data(dictionary);
  operation.operands.assign(1, std::move(dictionary));
}

bool ContentParser::next(Operation &operation) {
  operation.operands.clear();
  operation.data = {};
  while (true) {
    skip_space();
    if (at_end()) return false;
    Operand operand;
    if (read_operand(operand, 0) || operand.text == "true" || operand.text == "false" ||
        operand.text == "null") {
      if (operation.operands.size() >= most_operands) operation.operands.clear();
      operation.operands.push_back(std::move(operand));
      continue;
    }
    operation.name = std::move(operand.text);
    if (operation.name == "BI") read_inline_image(operation);
    return true;
  }
}

} // namespace stoneproof::finished
