// JSON -> what an earlier round found. The only way in is read_record; tested in tests/reports/record.
#include "reports/record/read_record.h"

#include "reports/record/record.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

namespace stoneproof::record {

namespace {

using Parsed = nlohmann::json;

constexpr const char *name_a_record = "Name a record that stoneproof proof wrote, as BOOK.record.json.";

std::optional<std::string> text_or_none(const Parsed &value) {
  return value.is_string() ? std::optional(value.get<std::string>()) : std::nullopt;
}

content::RecordedFinding finding_of(const Parsed &part) {
  content::RecordedFinding finding;
  finding.rule = part.at("rule").get<std::string>();
  const auto grade = part.at("grade").get<std::string>();
  for (const auto &[value, word] : grade_words)
    if (word == grade) finding.grade = value;
  if (const Parsed &page = part.at("page"); page.is_number_integer()) finding.page = page.get<int>();
  finding.frame = text_or_none(part.at("frame"));
  finding.text = text_or_none(part.at("text"));
  finding.picture = text_or_none(part.at("picture"));
  finding.message = part.at("message").get<std::string>();
  return finding;
}

content::RecordedRound round_of(const Parsed &root) {
  content::RecordedRound round;
  round.title = root.at("book").at("title").get<std::string>();
  round.held = root.at("verdict").get<std::string>() == "held";
  round.pixels_measured = root.at("frames").empty();
  for (const Parsed &frame : root.at("frames")) {
    round.frames.push_back(frame.at("id").get<std::string>());
    if (!frame.at("tone").is_null()) round.pixels_measured = true;
  }
  for (const Parsed &finding : root.at("findings")) round.findings.push_back(finding_of(finding));
  return round;
}

} // namespace

Outcome<content::RecordedRound> parse_record(std::string_view text, const std::string &name) {
  const Parsed root = Parsed::parse(text, nullptr, false);
  if (!root.is_object() || !root.contains("record") || !root.contains("findings"))
    return Fault{"this is no record", name, name_a_record};
  if (root["record"] != schema_number)
    return Fault{
        fmt::format("the record has schema number {}; this program reads {}", root["record"].dump(),
                    schema_number),
        name, "Proof the earlier book again with this program, or compare with the program that wrote it."};
  try {
    return round_of(root);
  } catch (const Parsed::exception &) {
    return Fault{"the record lacks some of its keys, or they hold something else", name, name_a_record};
  }
}

Outcome<content::RecordedRound> read_record(const std::filesystem::path &file) {
  std::error_code error;
  if (std::filesystem::is_directory(file, error))
    return Fault{"this is a folder", file.string(), name_a_record};
  errno = 0;
  std::ifstream in(file, std::ios::binary);
  if (!in)
    return Fault{fmt::format("the record cannot be read: {}", std::strerror(errno)), file.string(),
                 name_a_record};
  std::ostringstream text;
  text << in.rdbuf();
  return parse_record(text.str(), file.string());
}

} // namespace stoneproof::record
