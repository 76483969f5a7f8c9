// An XML file as a tree of elements with the place of each part.
#pragma once

#include "engine/xml/scan.h"
#include "engine/xml/source_text.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace stoneproof {

struct XmlAttribute {
  std::string space; ///< the namespace; empty for a name without a prefix
  std::string name;  ///< without a prefix
  std::string value; ///< references resolved, line ends and tabs turned into spaces as XML 1.0 says
  SourcePlace place; ///< of the name
  SourcePlace value_place;
};

struct Element {
  std::string space;                    ///< the namespace
  std::string name;                     ///< without a prefix
  SourcePlace place;                    ///< of the '<'
  std::vector<XmlAttribute> attributes; ///< without the declarations of namespaces
  std::vector<Element> children;
  std::string text;       ///< of the element itself, without that of its children
  SourcePlace text_place; ///< of the first text that is not white space; line 0 when there is none
};

struct Document {
  SourceText source;
  Element root;
};

/// Reads a well-formed XML file, opened read-only; else the one fault that stops reading. Limits: see
/// read_source and ScanLimits.
std::variant<Document, SourceFault> read_document(const std::filesystem::path &file);

/// The same from text; `name` is what messages call it.
std::variant<Document, SourceFault> parse_document(SourceText source, const ScanLimits &limits = {});

} // namespace stoneproof
