// Names, references, comments, instructions and the declaration of XML 1.0. Only way in: scan.cpp.
// Tested in tests/engine/xml/scan.test.cpp.
#include "engine/xml/scan_cursor.h"

#include "engine/xml/characters.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace stoneproof {
namespace {

std::string lower_case(std::string_view word) {
  std::string lower(word);
  for (char &c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

bool is_version(std::string_view version) {
  return version.size() > 2 && version.substr(0, 2) == "1." &&
         version.find_first_not_of("0123456789", 2) == std::string_view::npos;
}

} // namespace

bool ScanCursor::take(std::string_view word) {
  if (!starts(word)) return false;
  at_ += word.size();
  return true;
}

bool ScanCursor::skip_space() {
  const std::size_t begin = at_;
  while (!at_end() && is_xml_space(text_[at_])) ++at_;
  return at_ > begin;
}

bool ScanCursor::fail(std::size_t offset, std::string what, std::string remedy) {
  fault_ = ScanFault{offset, std::move(what), std::move(remedy)};
  return false;
}

std::optional<std::string_view> ScanCursor::name() {
  const std::size_t begin = at_;
  Decoded next = decode(text_, at_);
  if (next.bytes == 0 || !is_name_start(next.character)) return std::nullopt;
  while (next.bytes > 0 && is_name_character(next.character)) {
    at_ += next.bytes;
    next = decode(text_, at_);
  }
  return text_.substr(begin, at_ - begin);
}

bool ScanCursor::valid_characters() {
  for (std::size_t at = 0; at < text_.size();) {
    const Decoded next = decode(text_, at);
    if (next.bytes == 0) return fail(at, "these bytes are not UTF-8", "Save the file as UTF-8.");
    if (!is_xml_character(next.character))
      return fail(
          at,
          fmt::format("the character U+{:04X} is not allowed in XML", static_cast<unsigned>(next.character)),
          "Remove the character.");
    at += next.bytes;
  }
  return true;
}

// name="value" of the declaration, after white space, if it is the wanted one.
std::optional<std::string_view> ScanCursor::pseudo_attribute(std::string_view wanted) {
  const std::size_t before = at_;
  if (skip_space() && take(wanted)) {
    skip_space();
    if (take("=")) {
      skip_space();
      const std::size_t open = at_;
      const std::size_t close = at_end() ? std::string_view::npos : text_.find(text_[open], open + 1);
      if (!at_end() && (text_[open] == '"' || text_[open] == '\'') && close != std::string_view::npos) {
        at_ = close + 1;
        return text_.substr(open + 1, close - open - 1);
      }
    }
  }
  at_ = before;
  return std::nullopt;
}

bool ScanCursor::declaration() {
  constexpr const char *remedy = "Write <?xml version=\"1.0\" encoding=\"UTF-8\"?>.";
  if (!starts("<?xml") || text_.size() < 6 || !is_xml_space(text_[5])) return true;
  take("<?xml");
  const auto version = pseudo_attribute("version");
  if (!version || !is_version(*version)) return fail(0, "the XML declaration has no version 1.0", remedy);
  const auto encoding = pseudo_attribute("encoding");
  if (encoding && lower_case(*encoding) != "utf-8")
    return fail(0, fmt::format("the file says its encoding is {}; only UTF-8 is read", in_quotes(*encoding)),
                "Save the file as UTF-8.");
  const auto standalone = pseudo_attribute("standalone");
  skip_space();
  if ((standalone && *standalone != "yes" && *standalone != "no") || !take("?>"))
    return fail(0, "the XML declaration is broken", remedy);
  return true;
}

bool ScanCursor::comment() {
  const std::size_t begin = at_;
  const std::size_t dashes = text_.find("--", at_ + 4);
  if (dashes == std::string_view::npos)
    return fail(begin, "a comment is never closed", "Add --> where it ends.");
  if (text_.compare(dashes, 3, "-->") != 0)
    return fail(dashes, "\"--\" stands inside a comment", "Take one of the two dashes out.");
  at_ = dashes + 3;
  return true;
}

bool ScanCursor::instruction() {
  const std::size_t begin = at_;
  take("<?");
  const auto target = name();
  if (!target) return fail(begin, "a processing instruction has no name", "Remove it.");
  if (lower_case(*target) == "xml")
    return fail(begin, "an XML declaration stands where none is allowed",
                "Make it the very first characters of the file, or remove it.");
  if (target->find(':') != std::string_view::npos)
    return fail(begin, "the name of a processing instruction has a colon", "Remove it.");
  const std::size_t end = text_.find("?>", at_);
  if (end == std::string_view::npos)
    return fail(begin, "a processing instruction is never closed", "Add ?>.");
  if (end != at_ && !is_xml_space(text_[at_]))
    return fail(begin, "white space is missing after the name of a processing instruction",
                "Put a space there.");
  at_ = end + 2;
  return true;
}

bool ScanCursor::reference() {
  const std::size_t begin = at_;
  const std::size_t end = text_.find(';', begin);
  const std::size_t stop = text_.find_first_of("&<\"' \t\r\n", begin + 1);
  if (end == std::string_view::npos || stop < end)
    return fail(begin, "a \"&\" stands alone", "Write &amp; for a \"&\" that is meant as text.");
  const std::string_view name = text_.substr(begin + 1, end - begin - 1);
  at_ = end + 1;
  if (name.starts_with('#')) return numeric_reference(begin, name.substr(1));
  constexpr std::string_view known[] = {"amp", "lt", "gt", "quot", "apos"};
  if (std::find(std::begin(known), std::end(known), name) != std::end(known)) return true;
  return fail(begin, fmt::format("the entity {} is not known", in_quotes(name)),
              "Write the character itself; only &amp; &lt; &gt; &quot; &apos; are known.");
}

bool ScanCursor::numeric_reference(std::size_t begin, std::string_view digits) {
  const bool hexadecimal = digits.starts_with('x');
  if (hexadecimal) digits.remove_prefix(1);
  std::uint32_t code = 0;
  const auto [last, error] =
      std::from_chars(digits.data(), digits.data() + digits.size(), code, hexadecimal ? 16 : 10);
  if (error == std::errc() && last == digits.data() + digits.size() && is_xml_character(code)) return true;
  return fail(begin, fmt::format("{} is no character", in_quotes(text_.substr(begin, at_ - begin))),
              "Write the character itself.");
}

} // namespace stoneproof
