// Quality and subsampling of JPEGs that nobody here made, against ImageMagick's identify. Its %Q is an
// estimate from sums of the tables and from some of their steps, so that it is held to ours only where the
// tables are standard ones. The files are fetched by tests/get-samples.sh; without them this test fails,
// because silence would prove nothing.
#include "engine/measure/jpeg_quality.h"
#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>
#include <fstream>
#include <map>
#include <sstream>
#include <string_view>

using namespace stoneproof;

namespace {

/// The JPEGs among the samples, by what they hold.
std::map<std::filesystem::path, JpegFacts> sample_jpegs() {
  const char *named = std::getenv("STONEPROOF_SAMPLES");
  const std::filesystem::path folder = named ? named : STONEPROOF_SOURCE_DIR "/build/samples";
  if (!std::filesystem::is_directory(folder))
    FAIL(fmt::format("no samples in {}: run  bash tests/get-samples.sh DIR  and set STONEPROOF_SAMPLES=DIR",
                     folder.string()));
  std::map<std::filesystem::path, JpegFacts> found;
  for (const auto &entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    const auto facts = read_facts(entry.path());
    if (facts && facts.value().jpeg) found.emplace(entry.path(), *facts.value().jpeg);
  }
  return found;
}

struct Identified {
  int quality = 0;      ///< 0: it could not tell
  std::string sampling; ///< "2x2,1x1,1x1"
};

/// What identify says of each path.
std::map<std::filesystem::path, Identified> identified(const std::vector<std::filesystem::path> &files) {
  const test::Folder folder;
  std::ofstream list(folder / "list");
  for (const auto &file : files) list << file.string() << "\n";
  list.close();
  const std::string command = fmt::format("xargs -a {} -d '\\n' identify -ping -format "
                                          "'%d/%f\t%Q\t%[jpeg:sampling-factor]\n' > {} 2>/dev/null",
                                          (folder / "list").string(), (folder / "said").string());
  // identify fails as a whole where it refuses one file; what it says of the others is still compared.
  [[maybe_unused]] const int status = std::system(command.c_str());
  std::map<std::filesystem::path, Identified> said;
  std::ifstream lines(folder / "said");
  for (std::string line; std::getline(lines, line);) {
    std::istringstream fields(line);
    std::string path, quality, sampling;
    std::getline(fields, path, '\t');
    std::getline(fields, quality, '\t');
    std::getline(fields, sampling, '\t');
    said[path] = {std::atoi(quality.c_str()), sampling};
  }
  return said;
}

/// How many luma samples stand for one of Cb and Cr, across and down, by the name and by the factors of
/// identify; 0 where it cannot be told.
struct Ratio {
  int across = 0, down = 0;
  bool operator==(const Ratio &) const = default;
};

Ratio ratio_of_name(const std::string &name) {
  static const std::map<std::string, Ratio> ratios = {{"4:4:4", {1, 1}}, {"4:2:2", {2, 1}},
                                                      {"4:2:0", {2, 2}}, {"4:4:0", {1, 2}},
                                                      {"4:1:1", {4, 1}}, {"4:1:0", {4, 2}}};
  const auto found = ratios.find(name);
  return found == ratios.end() ? Ratio{} : found->second;
}

Ratio ratio_of_factors(const std::string &factors) {
  int y_across = 0, y_down = 0, across = 0, down = 0;
  if (std::sscanf(factors.c_str(), "%dx%d,%dx%d", &y_across, &y_down, &across, &down) != 4) return {};
  return across > 0 && down > 0 ? Ratio{y_across / across, y_down / down} : Ratio{};
}

/// Where identify is wrong, and why.
struct Disagreement {
  std::string_view file, why;
};
constexpr Disagreement known[] = {
    {"hopper_16bit_qtables.jpg", "its luma steps go beyond 255; identify knows the capped tables only, and "
                                 "gives 92 where it cannot tell"},
};

bool is_known(const std::filesystem::path &file) {
  return std::any_of(std::begin(known), std::end(known),
                     [&](const Disagreement &one) { return file.filename() == one.file; });
}

} // namespace

TEST_CASE("where the tables are standard ones, identify gives the same quality") {
  const auto jpegs = sample_jpegs();
  std::vector<std::filesystem::path> files;
  for (const auto &[file, facts] : jpegs) files.push_back(file);
  const auto theirs = identified(files);
  int compared = 0;
  std::string differences;
  for (const auto &[file, facts] : jpegs) {
    const auto ours = jpeg_quality(facts);
    const auto said = theirs.find(file);
    if (!ours || !ours->exact || said == theirs.end() || said->second.quality == 0) continue;
    ++compared;
    if (ours->quality != said->second.quality && !is_known(file))
      differences +=
          fmt::format("{}: {} here, {} there\n", file.string(), ours->quality, said->second.quality);
  }
  CHECK(compared > 50);
  CHECK(differences == "");
}

TEST_CASE("subsampling agrees with the factors that identify reads") {
  const auto jpegs = sample_jpegs();
  std::vector<std::filesystem::path> files;
  for (const auto &[file, facts] : jpegs) files.push_back(file);
  const auto theirs = identified(files);
  int compared = 0;
  std::string differences;
  for (const auto &[file, facts] : jpegs) {
    const auto said = theirs.find(file);
    const Ratio ours = ratio_of_name(facts.subsampling);
    if (ours == Ratio{} || said == theirs.end() || said->second.sampling.empty()) continue;
    ++compared;
    if (ours != ratio_of_factors(said->second.sampling))
      differences +=
          fmt::format("{}: {} here, {} there\n", file.string(), facts.subsampling, said->second.sampling);
  }
  CHECK(compared > 50);
  CHECK(differences == "");
}
