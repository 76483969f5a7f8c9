// Names of people -> names of files. The only way in is letter_names; tested in
// tests/reports/terminal/letter_files.test.cpp.
#include "reports/terminal/letter_files.h"

#include <fmt/format.h>

#include <set>

namespace stoneproof::terminal {

namespace {

constexpr std::size_t most_bytes = 120; // of 255 that usual file systems take

bool continues(char c) {
  return (static_cast<unsigned char>(c) & 0xc0u) == 0x80u;
} // within a character of UTF-8

/// '-' for what some file system refuses; names are moved between systems on sticks and in mails.
std::string safe_name(std::string_view person) {
  constexpr std::string_view refused = "/\\:*?\"<>|";
  std::string name;
  for (const char c : person) {
    const auto byte = static_cast<unsigned char>(c);
    const bool blank = byte <= 0x20 || byte == 0x7f;
    if (blank && (name.empty() || name.back() == ' ')) continue;
    name += blank ? ' ' : refused.find(c) != std::string_view::npos ? '-' : c;
  }
  if (name.size() > most_bytes) {
    std::size_t end = most_bytes;
    while (end > 0 && continues(name[end])) --end;
    name.resize(end);
  }
  name.erase(0, name.find_first_not_of(". "));
  name.erase(name.find_last_not_of(". ") + 1);
  return name.empty() ? "contributor" : name;
}

std::string folded(std::string name) {
  for (char &c : name)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return name;
}

} // namespace

std::vector<std::string> letter_names(const std::vector<std::string> &people) {
  std::set<std::string> taken;
  std::vector<std::string> names;
  for (const std::string &person : people) {
    const std::string safe = safe_name(person);
    std::string name = safe;
    for (int number = 2; !taken.insert(folded(name)).second; ++number)
      name = fmt::format("{} {}", safe, number);
    names.push_back(name + ".letter.pdf");
  }
  return names;
}

} // namespace stoneproof::terminal
