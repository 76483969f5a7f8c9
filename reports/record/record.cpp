// The record from its parts. The only way in is record_text; tested in tests/reports/record, which also
// validates real records against schema/record.schema.json.
#include "reports/record/record.h"

#include "reports/content/proof_content.h"
#include "reports/record/parts.h"

#include <ctime>
#include <fmt/chrono.h>

namespace stoneproof::record {

namespace {

Json date_of(std::optional<std::int64_t> seconds) {
  if (!seconds) return nullptr;
  return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(static_cast<std::time_t>(*seconds)));
}

Json counts_part(const std::array<std::size_t, 3> &counts) {
  Json part = Json::object();
  for (const auto &[grade, word] : grade_words)
    part[std::string(word)] = counts[static_cast<std::size_t>(grade)];
  return part;
}

} // namespace

std::string record_text(const Evidence &evidence, const std::vector<Finding> &findings,
                        const RecordOptions &options) {
  const auto counts = content::count_grades(findings);
  Json root = {
      {"stoneproof", options.version},
      {"record", schema_number},
      {"made_at", date_of(options.made_at)},
      {"book", book_part(evidence.book, options.book_sha256)},
      {"press", press_part(evidence.press, evidence.book.binding.kind)},
      {"object", object_part(evidence)},
      {"verdict", counts[0] == 0 ? "clear" : "held"},
      {"counts", counts_part(counts)},
      {"pictures", Json::array()},
      {"glasses", Json::array()},

      {"frames", Json::array()},
      {"findings", Json::array()},
  };
  for (std::size_t i = 0; i < evidence.book.pictures.size(); ++i)
    root["pictures"].push_back(picture_part(evidence, i));
  for (const Glass &glass : evidence.glasses) root["glasses"].push_back(glass_part(evidence, glass));
  for (std::size_t i = 0; i < evidence.frames.size(); ++i) root["frames"].push_back(frame_part(evidence, i));
  for (const Finding &finding : findings) root["findings"].push_back(finding_part(evidence, finding));
  return root.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace stoneproof::record
