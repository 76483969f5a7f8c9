// Reads a text file whole and finds lines and columns in it. Ways in: read_source and SourceText.
// Tested in tests/engine/xml/source_text.test.cpp.
#include "engine/xml/source_text.h"

#include "engine/xml/characters.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace stoneproof {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

class Descriptor {
public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0) close(number_);
  }
  Descriptor(const Descriptor &) = delete;
  Descriptor &operator=(const Descriptor &) = delete;
  int number() const { return number_; }

private:
  int number_;
};

Fault unreadable(const std::filesystem::path &file, int error) {
  if (error == ENOENT) return {"there is no such file", file.string(), "Check the path."};
  return {fmt::format("the file cannot be read: {}", std::strerror(error)), file.string(),
          "Check that the file may be read and that its disk is well."};
}

Fault too_large(const std::filesystem::path &file, std::size_t most_bytes) {
  return {fmt::format("the file is larger than {} bytes, the most that is read", most_bytes), file.string(),
          "Check that this is the right file, or split it."};
}

// Reads to the end; a file that grows meanwhile is read no further than the limit.
Outcome<std::string> contents(const Descriptor &descriptor, const std::filesystem::path &file,
                              std::size_t size, std::size_t most_bytes) {
  std::string text(size + 1, '\0');
  std::size_t filled = 0;
  for (;;) {
    const ssize_t got = read(descriptor.number(), text.data() + filled, text.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) return unreadable(file, errno);
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
    if (filled > most_bytes) return too_large(file, most_bytes);
    if (filled == text.size()) text.resize(2 * filled);
  }
  text.resize(filled);
  return text;
}

std::vector<std::size_t> line_starts(std::string_view text) {
  std::vector<std::size_t> starts{0};
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool carriage_return = text[i] == '\r' && !(i + 1 < text.size() && text[i + 1] == '\n');
    if (text[i] == '\n' || carriage_return) starts.push_back(i + 1);
  }
  return starts;
}

bool begins_character(char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }

std::size_t characters_in(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins_character));
}

// Bytes of the first `count` characters.
std::size_t bytes_of(std::string_view text, std::size_t count) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (begins_character(text[i]) && count-- == 0) return i;
  return text.size();
}

// Characters are counted a block at a time, so that finding a column in a line of many megabytes takes no
// longer.
constexpr std::size_t block = 256;

std::vector<std::size_t> block_counts(std::string_view text) {
  std::vector<std::size_t> counts{0};
  for (std::size_t begin = 0; begin < text.size(); begin += block)
    counts.push_back(counts.back() + characters_in(text.substr(begin, block)));
  return counts;
}

} // namespace

SourceText::SourceText(std::string name, std::string text) : name_(std::move(name)), text_(std::move(text)) {
  if (text_.compare(0, byte_order_mark.size(), byte_order_mark) == 0) text_.erase(0, byte_order_mark.size());
  line_starts_ = line_starts(text_);
  block_counts_ = block_counts(text_);
}

std::size_t SourceText::characters_before(std::size_t offset) const {
  const std::size_t begin = offset - offset % block;
  return block_counts_[offset / block] + characters_in(text().substr(begin, offset - begin));
}

SourcePlace SourceText::place_of(std::size_t offset) const {
  const auto next = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const std::size_t start = *std::prev(next);
  const std::size_t before = characters_before(std::min(offset, text_.size())) - characters_before(start);
  return {static_cast<int>(next - line_starts_.begin()), static_cast<int>(before) + 1};
}

std::string SourceText::where(SourcePlace place) const {
  return fmt::format("{}:{}:{}", name_, place.line, place.column);
}

std::string_view SourceText::line(int number) const {
  const auto index = static_cast<std::size_t>(number - 1);
  const std::size_t begin = line_starts_[index];
  const std::size_t end = index + 1 < line_starts_.size() ? line_starts_[index + 1] : text_.size();
  std::string_view line = text().substr(begin, end - begin);
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) line.remove_suffix(1);
  return line;
}

SourceFault SourceText::fault_at(SourcePlace place, std::string what, std::string remedy) const {
  constexpr std::size_t most_around = 200; // characters kept on each side of the caret
  std::string_view shown = line(place.line);
  auto before = static_cast<std::size_t>(place.column - 1);
  if (before > most_around) {
    shown.remove_prefix(bytes_of(shown, before - most_around));
    before = most_around;
  }
  shown = shown.substr(0, bytes_of(shown, before + most_around));
  return {{std::move(what), where(place), std::move(remedy)},
          printable(shown, true),
          static_cast<int>(before) + 1};
}

Outcome<SourceText> read_source(const std::filesystem::path &file, std::size_t most_bytes) {
  // O_NONBLOCK: opening a FIFO that nobody writes to returns at once.
  const Descriptor descriptor(open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY));
  struct stat status {};
  if (descriptor.number() < 0 || fstat(descriptor.number(), &status) != 0) return unreadable(file, errno);
  if (S_ISDIR(status.st_mode))
    return Fault{"this is a folder, not a file", file.string(), "Name the XML file inside the folder."};
  if (!S_ISREG(status.st_mode))
    return Fault{"this is not a regular file", file.string(), "Name an ordinary XML file."};
  const auto size = static_cast<std::size_t>(status.st_size);
  if (size > most_bytes) return too_large(file, most_bytes);
  auto text = contents(descriptor, file, size, most_bytes);
  if (!text) return text.fault();
  if (text.value().empty())
    return Fault{"the file is empty", file.string(), "Name a file with a description."};
  const std::string_view mark = std::string_view(text.value()).substr(0, 2);
  if (mark == "\xFF\xFE" || mark == "\xFE\xFF")
    return Fault{"the file is UTF-16; only UTF-8 is read", file.string(), "Save the file as UTF-8."};
  return SourceText(file.string(), std::move(text).value());
}

} // namespace stoneproof
