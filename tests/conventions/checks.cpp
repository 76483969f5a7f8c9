// The checks that checks.h promises. Tested, with samples that must fail, in conventions.test.cpp.
#include "tests/conventions/checks.h"

#include <algorithm>
#include <array>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string_view>

namespace stoneproof::test {

namespace {

/// The flow, from the bottom up; a folder includes itself and what stands before it. engine/outcome.h stands
/// below all.
constexpr std::array flow = {
    "engine",           "engine/units",   "engine/colour",  "engine/xml",     "engine/book",
    "engine/press",     "engine/picture", "engine/import",  "engine/measure", "engine/placement",
    "engine/plan",      "engine/binding", "engine/rules",   "engine/run",     "reports/files",
    "reports/content",  "reports/type",   "reports/layout", "reports/pdf",    "reports/record",
    "reports/terminal",
};

struct Library {
  const char *header;       ///< a pattern for the name as included
  std::string_view folders; ///< that may include it, parted by spaces
};
constexpr Library libraries[] = {
    {"tiff(io|vers|conf)?\\.h(xx)?", "engine/picture"},
    {"(jpeglib|jerror|turbojpeg)\\.h", "engine/picture"},
    {"png\\.h", "engine/picture"},
    {"gif_lib\\.h", "engine/picture"},
    {"webp/.*", "engine/picture"},
    {"libheif/.*", "engine/picture"},
    {"libexif/.*", "engine/picture"},
    {"(kissfft/)?kiss_fft.*", "engine/measure"},
    {"lcms2.*\\.h", "engine/colour"},
    {"openssl/.*", "engine/picture engine/import"},
    {"zlib\\.h", "engine/import"},
    {"pugixml\\.hpp", "engine/xml"},
    {"tbb/.*", "engine/run"},
    {"podofo/.*", "engine/import reports/pdf"},
    {"(openjpeg|jbig2)\\.h", "engine/import"},
    {"qpdf/.*", "engine/import reports/pdf"},
    {"hb(-.*)?\\.h", "reports/type"},
    {"fontconfig/.*", "reports/type"},
    {"nlohmann/.*", "reports/record"},
    {"CLI/.*", "reports/terminal"},
};

bool begins(std::string_view text, std::string_view with) { return text.substr(0, with.size()) == with; }

std::string folder_of(const std::string &path) { return path.substr(0, path.rfind('/')); }

/// Whether a word stands in a list of words.
bool holds(std::string_view list, const std::string &word) {
  return (" " + std::string(list) + " ").find(" " + word + " ") != std::string::npos;
}

bool is_header(const Source &source) {
  return source.path.size() > 2 && source.path.substr(source.path.size() - 2) == ".h";
}

std::vector<std::string> includes_of(const Source &source) {
  static const std::regex include("^[ \t]*#[ \t]*include[ \t]*[<\"]([^>\"]+)[>\"]");
  std::vector<std::string> names;
  std::istringstream lines(source.text);
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    if (std::regex_search(line, match, include)) names.push_back(match[1]);
  }
  return names;
}

/// The folder's place in the flow.
std::optional<std::size_t> rank_of(const std::string &folder) {
  const auto found = std::find(flow.begin(), flow.end(), folder);
  if (found == flow.end()) return std::nullopt;
  return static_cast<std::size_t>(found - flow.begin());
}

bool is_outer(std::string_view path) { return begins(path, "demo/") || begins(path, "tests/"); }
bool is_ours(std::string_view path) {
  return begins(path, "engine/") || begins(path, "reports/") || is_outer(path);
}

} // namespace

Complaints upward_includes(const Source &source) {
  if (is_outer(source.path)) return {};
  const auto rank = rank_of(folder_of(source.path));
  if (!rank) return {source.path + " lies in a folder that is not in the flow"};
  Complaints complaints;
  for (const std::string &name : includes_of(source)) {
    if (!is_ours(name)) continue;
    const auto included = rank_of(folder_of(name));
    if (!included || *included > *rank) complaints.push_back(source.path + " includes " + name);
  }
  return complaints;
}

Complaints stray_libraries(const Source &source) {
  if (is_outer(source.path)) return {};
  Complaints complaints;
  for (const std::string &name : includes_of(source))
    for (const Library &library : libraries)
      if (std::regex_match(name, std::regex(library.header)) &&
          !holds(library.folders, folder_of(source.path)))
        complaints.push_back(source.path + " includes " + name);
  return complaints;
}

Complaints impure_includes(const Source &source) {
  const std::string folder = folder_of(source.path);
  static const std::set<std::string> pure = {"engine/measure", "engine/placement", "engine/plan",
                                             "engine/rules"};
  if (pure.count(folder) == 0) return {};
  static const std::set<std::string> impure = {"filesystem", "fstream",  "iostream", "cstdio", "stdio.h",
                                               "fcntl.h",    "unistd.h", "thread",   "random", "chrono"};
  Complaints complaints;
  for (const std::string &name : includes_of(source))
    if (impure.count(name) != 0 || begins(name, "sys/"))
      complaints.push_back(source.path + " includes " + name);
  return complaints;
}

Complaints missing_purpose(const Source &source) {
  constexpr std::size_t some_words = 25;
  const std::string first = source.text.substr(0, source.text.find('\n'));
  if (is_header(source) || (begins(first, "// ") && first.size() > some_words)) return {};
  return {source.path + " does not open with its purpose"};
}

Complaints missing_guard(const Source &source) {
  if (!is_header(source)) return {};
  if (begins(source.text, "#pragma once\n") || source.text.find("\n#pragma once\n") != std::string::npos)
    return {};
  return {source.path + " has no #pragma once"};
}

Complaints too_long(const Source &source) {
  const auto lines = std::count(source.text.begin(), source.text.end(), '\n');
  if (lines <= 400) return {};
  return {source.path + " has " + std::to_string(lines) + " lines"};
}

Complaints strangers_at_the_top(const std::vector<std::string> &paths) {
  static const std::set<std::string> named = {"CMakeLists.txt", "README.md", "DEVELOPERS.md",
                                              "LICENSE",        "engine",    "schema",
                                              "reports",        "tests",     "demo"};
  std::set<std::string> top;
  for (const std::string &path : paths) top.insert(path.substr(0, path.find('/')));
  Complaints complaints;
  for (const std::string &entry : top)
    if (entry[0] != '.' && named.count(entry) == 0)
      complaints.push_back(entry + " does not belong at the top");
  for (const std::string &entry : named)
    if (top.count(entry) == 0) complaints.push_back(entry + " is missing at the top");
  return complaints;
}

} // namespace stoneproof::test
