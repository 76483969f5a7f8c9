// Line breaking. The only ways in are wrap and shortened; tested in tests/reports/layout.
#include "reports/layout/text_fit.h"

namespace stoneproof::layout {

namespace {

/// Bytes of the character that starts at `at`, its combining marks not included; 1 for bytes that are not
/// UTF-8.
std::size_t character_bytes(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 1;
  return std::min(length, text.size() - at);
}

/// Starts of the characters of a text, and its end.
std::vector<std::size_t> character_starts(std::string_view text) {
  std::vector<std::size_t> starts;
  for (std::size_t at = 0; at < text.size(); at += character_bytes(text, at)) starts.push_back(at);
  starts.push_back(text.size());
  return starts;
}

/// One paragraph being broken.
class Breaker {
public:
  Breaker(const Typesetter &type, Face face, Length size, Length width)
      : type_(type), face_(face), size_(size), width_(width), space_(measure(" ")) {}

  void add_word(std::string_view word) {
    const Length wide = measure(word);
    if (!line_.empty() && used_ + space_ + wide <= width_) {
      line_ += ' ';
      line_ += word;
      used_ += space_ + wide;
      return;
    }
    end_line();
    if (wide <= width_) {
      line_ = word;
      used_ = wide;
    } else {
      add_long_word(word);
    }
  }
  void end_line() {
    if (!line_.empty()) lines_.push_back(std::move(line_));
    line_.clear();
    used_ = {};
  }
  void add_empty_line() { lines_.emplace_back(); }
  std::vector<std::string> take() { return std::move(lines_); }

private:
  Length measure(std::string_view text) const { return type_.width(face_, size_, text); }

  /// As many characters a line as fit, at least one; the rest stays open for the next word.
  void add_long_word(std::string_view word) {
    const auto starts = character_starts(word);
    std::size_t from = 0;
    for (std::size_t next = 1; next < starts.size(); ++next) {
      const bool fits = measure(word.substr(starts[from], starts[next] - starts[from])) <= width_;
      if (fits || next == from + 1) continue;
      lines_.emplace_back(word.substr(starts[from], starts[next - 1] - starts[from]));
      from = next - 1;
    }
    line_ = word.substr(starts[from]);
    used_ = measure(line_);
  }

  const Typesetter &type_;
  Face face_;
  Length size_, width_, space_;
  std::vector<std::string> lines_;
  std::string line_;
  Length used_;
};

void break_paragraph(Breaker &breaker, std::string_view paragraph) {
  bool any = false;
  for (std::size_t at = 0; at < paragraph.size();) {
    const std::size_t end = std::min(paragraph.find_first_of(" \t\r", at), paragraph.size());
    if (end > at) {
      breaker.add_word(paragraph.substr(at, end - at));
      any = true;
    }
    at = end + 1;
  }
  if (any)
    breaker.end_line();
  else
    breaker.add_empty_line();
}

} // namespace

std::vector<std::string> wrap(const Typesetter &type, Face face, Length size, Length width,
                              std::string_view text) {
  Breaker breaker(type, face, size, width);
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    break_paragraph(breaker, text.substr(at, end - at));
    at = end + 1;
  }
  return breaker.take();
}

std::string shortened(const Typesetter &type, Face face, Length size, Length width, std::string_view text) {
  if (type.width(face, size, text) <= width) return std::string(text);
  const auto starts = character_starts(text);
  const std::size_t count = starts.size() - 1;
  const auto with_kept = [&](std::size_t kept) {
    const std::size_t front = (kept + 1) / 2, back = kept / 2;
    return std::string(text.substr(0, starts[front])) + "…" + std::string(text.substr(starts[count - back]));
  };
  std::size_t low = 0, high = count; // the most characters that still fit lie in [low, high)
  while (high - low > 1) {
    const std::size_t middle = (low + high) / 2;
    (type.width(face, size, with_kept(middle)) <= width ? low : high) = middle;
  }
  return with_kept(low);
}

} // namespace stoneproof::layout
