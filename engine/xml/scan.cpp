// A strict scan of XML 1.0 without a DTD: the parser that builds the tree lets through much that is not
// well-formed and knows no columns. Only way in: scan. Tested in tests/engine/xml/scan.test.cpp.
#include "engine/xml/scan.h"

#include "engine/xml/characters.h"
#include "engine/xml/scan_cursor.h"

#include <fmt/format.h>

#include <algorithm>

namespace stoneproof {
namespace {

class Scanner : private ScanCursor {
public:
  Scanner(std::string_view text, const ScanLimits &limits) : ScanCursor(text), limits_(limits) {}

  std::variant<std::vector<ElementMark>, ScanFault> run() {
    if (valid_characters() && declaration() && misc() && root() && misc() && nothing_more())
      return std::move(marks_);
    return std::move(*fault_);
  }

private:
  struct Open {
    std::string_view name;
    std::size_t mark; // index into marks_
  };

  bool misc();
  bool root();
  bool content();
  bool start_tag();
  bool attribute(ElementMark &mark, std::vector<std::string_view> &names);
  bool attribute_value();
  bool end_tag();
  bool cdata();
  bool text_run();
  void mark_text(std::size_t begin, std::size_t end);
  bool nothing_more();
  bool count_node(std::size_t at);

  ScanLimits limits_;
  std::vector<ElementMark> marks_;
  std::vector<Open> open_;
  std::size_t nodes_ = 0;
};

// Comments, processing instructions and white space around the root.
bool Scanner::misc() {
  for (;;) {
    skip_space();
    if (starts("<!--")) {
      if (!comment()) return false;
    } else if (starts("<?")) {
      if (!instruction()) return false;
    } else {
      return true;
    }
  }
}

bool Scanner::root() {
  if (starts("<!DOCTYPE"))
    return fail(at_, "a document type declaration (DTD) is not accepted",
                "Remove the <!DOCTYPE ...> part; a description needs none.");
  if (at_end()) return fail(at_, "there is no element in the file", "Name a file with a description.");
  if (!starts("<")) return fail(at_, "there is text before the first element", "Remove the text.");
  if (starts("</")) return fail(at_, "an end tag stands before any start tag", "Remove the end tag.");
  if (starts("<!")) return fail(at_, "this markup is not allowed before the first element", "Remove it.");
  return start_tag() && content();
}

bool Scanner::content() {
  while (!open_.empty()) {
    if (at_end())
      return fail(marks_[open_.back().mark].tag,
                  fmt::format("<{}> is never closed", printable(open_.back().name)),
                  fmt::format("Add </{}> where the element ends.", printable(open_.back().name)));
    const bool good = starts("<!--")        ? comment()
                      : starts("<![CDATA[") ? cdata()
                      : starts("<!") ? fail(at_, "this markup is not allowed inside an element", "Remove it.")
                      : starts("<?") ? instruction()
                      : starts("</") ? end_tag()
                      : starts("<")  ? start_tag()
                                     : text_run();
    if (!good) return false;
  }
  return true;
}

bool Scanner::count_node(std::size_t at) {
  if (++nodes_ <= limits_.most_nodes) return true;
  return fail(at, fmt::format("the file has more than {} elements and attributes", limits_.most_nodes),
              "Check that this is the right file, or split it.");
}

bool Scanner::start_tag() {
  ElementMark mark;
  mark.tag = at_++;
  if (open_.size() >= limits_.most_depth)
    return fail(mark.tag, fmt::format("elements are nested more than {} deep", limits_.most_depth),
                "Check that this is the right file.");
  if (!count_node(mark.tag)) return false;
  const auto tag_name = name();
  if (!tag_name)
    return fail(mark.tag, "a \"<\" is not followed by a name",
                "Write &lt; for a \"<\" that is meant as text.");
  std::vector<std::string_view> names;
  for (;;) {
    const bool spaced = skip_space();
    if (at_end())
      return fail(mark.tag, fmt::format("the tag <{}> has no end", printable(*tag_name)), "Add the \">\".");
    if (starts("/>") || starts(">")) break;
    if (!spaced) return fail(at_, "white space is missing before an attribute", "Put a space here.");
    if (!attribute(mark, names)) return false;
  }
  marks_.push_back(std::move(mark));
  if (!take("/>")) {
    take(">");
    open_.push_back({*tag_name, marks_.size() - 1});
  }
  return true;
}

bool Scanner::attribute(ElementMark &mark, std::vector<std::string_view> &names) {
  const std::size_t begin = at_;
  const auto attribute_name = name();
  if (!attribute_name)
    return fail(begin, "this is not the name of an attribute", "Write attributes as name=\"value\".");
  if (!count_node(begin)) return false;
  if (names.size() >= limits_.most_attributes)
    return fail(begin, fmt::format("an element has more than {} attributes", limits_.most_attributes),
                "Check that this is the right file.");
  if (std::find(names.begin(), names.end(), *attribute_name) != names.end())
    return fail(begin, fmt::format("the attribute {} is written twice", printable(*attribute_name)),
                "Keep one of the two.");
  names.push_back(*attribute_name);
  skip_space();
  if (!take("="))
    return fail(begin, fmt::format("the attribute {} has no value", printable(*attribute_name)),
                "Write attributes as name=\"value\".");
  skip_space();
  mark.attributes.push_back({begin, at_ + 1});
  return attribute_value();
}

bool Scanner::attribute_value() {
  const std::size_t begin = at_;
  if (!starts("\"") && !starts("'"))
    return fail(at_, "the value of an attribute is not in quotes", "Put quotes around the value.");
  const char quote = text_[at_++];
  while (!at_end() && text_[at_] != quote) {
    if (text_[at_] == '<')
      return fail(at_, "a \"<\" stands inside the value of an attribute",
                  "Write &lt; for it, or add the quote that ends the value.");
    if (text_[at_] == '&') {
      if (!reference()) return false;
    } else {
      ++at_;
    }
  }
  if (at_end()) return fail(begin, "the quotes around this value are never closed", "Add the closing quote.");
  ++at_;
  return true;
}

bool Scanner::end_tag() {
  const std::size_t begin = at_;
  at_ += 2;
  const auto tag_name = name();
  const std::string_view expected = open_.back().name;
  if (!tag_name || *tag_name != expected)
    return fail(
        begin,
        fmt::format("</{}> does not close <{}>", printable(tag_name.value_or("")), printable(expected)),
        fmt::format("Add </{}> before it, or mend the name.", printable(expected)));
  skip_space();
  if (!take(">"))
    return fail(begin, fmt::format("the tag </{}> has no end", printable(expected)), "Add the \">\".");
  open_.pop_back();
  return true;
}

bool Scanner::cdata() {
  const std::size_t begin = at_, inside = at_ + 9;
  const std::size_t end = text_.find("]]>", inside);
  if (end == std::string_view::npos)
    return fail(begin, "a CDATA section is never closed", "Add ]]> where it ends.");
  mark_text(inside, end);
  at_ = end + 3;
  return true;
}

bool Scanner::text_run() {
  const std::size_t begin = at_;
  while (!at_end() && text_[at_] != '<') {
    if (starts("]]>")) return fail(at_, "\"]]>\" stands in the text", "Write ]]&gt; instead.");
    if (text_[at_] == '&') {
      if (!reference()) return false;
    } else {
      ++at_;
    }
  }
  mark_text(begin, at_);
  return true;
}

void Scanner::mark_text(std::size_t begin, std::size_t end) {
  ElementMark &mark = marks_[open_.back().mark];
  if (mark.text) return;
  while (begin < end && is_xml_space(text_[begin])) ++begin;
  if (begin < end) mark.text = begin;
}

bool Scanner::nothing_more() {
  if (at_end()) return true;
  if (starts("</")) return fail(at_, "an end tag stands after the last element", "Remove the end tag.");
  if (starts("<!")) return fail(at_, "this markup is not allowed after the last element", "Remove it.");
  if (starts("<"))
    return fail(at_, "a second element stands beside the first", "Keep one element that holds all others.");
  return fail(at_, "there is text after the last element", "Remove the text.");
}

} // namespace

std::variant<std::vector<ElementMark>, ScanFault> scan(std::string_view text, const ScanLimits &limits) {
  return Scanner(text, limits).run();
}

} // namespace stoneproof
