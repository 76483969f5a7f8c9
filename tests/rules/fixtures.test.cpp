// Every rule has its explanation, a fixture that fires and one that stays silent: fires.xml and silent.xml in
// a folder named by its id, each with what is known of the picture files (.pictures) and every finding of all
// rules (.expect).
#include "tests/rules/fixture.h"

#include "tests/support/catch.h"

#include <algorithm>
#include <cctype>
#include <set>

using namespace stoneproof;
using namespace stoneproof::test;

namespace {

const std::filesystem::path folder = STONEPROOF_SOURCE_DIR "/tests/rules";

bool is_kebab(std::string_view id) {
  const auto small = [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; };
  return !id.empty() && std::all_of(id.begin(), id.end(), small) && id.front() != '-' && id.back() != '-' &&
         id.find("--") == std::string_view::npos;
}

bool begins_well(std::string_view text) {
  return !text.empty() && (std::isupper(static_cast<unsigned char>(text.front())) != 0 ||
                           std::isdigit(static_cast<unsigned char>(text.front())) != 0);
}

bool is_sentences(std::string_view text) {
  return begins_well(text) && text.size() > 20 && text.back() == '.';
}

bool is_title(std::string_view text) { return begins_well(text) && text.size() < 60 && text.back() != '.'; }

/// What a rule lacks of its explanation; empty when it lacks nothing.
std::string lacking(const Rule &rule) {
  std::string lacks;
  if (!is_kebab(rule.id)) lacks += "id ";
  if (!is_title(rule.title)) lacks += "title ";
  if (!is_sentences(rule.why)) lacks += "why ";
  if (!is_sentences(rule.measure)) lacks += "measure ";
  if (!is_sentences(rule.remedy)) lacks += "remedy ";
  if (!rule.check) lacks += "check ";
  return lacks;
}

std::vector<Finding> findings_of(const Scene &scene) { return check_rules(scene.evidence()); }

} // namespace

TEST_CASE("the check of explanations finds what is missing") {
  const Rule sound = *all_rules().front();
  CHECK(lacking(sound).empty());
  const auto broken = [&](auto change) {
    Rule rule = sound;
    change(rule);
    return lacking(rule);
  };
  CHECK(broken([](Rule &rule) { rule.id = "Missing Picture"; }) == "id ");
  CHECK(broken([](Rule &rule) { rule.id = ""; }) == "id ");
  CHECK(broken([](Rule &rule) { rule.title = ""; }) == "title ");
  CHECK(broken([](Rule &rule) { rule.why = "because"; }) == "why ");
  CHECK(broken([](Rule &rule) { rule.measure = "Measured by eye, with no full stop"; }) == "measure ");
  CHECK(broken([](Rule &rule) { rule.remedy = {}; }) == "remedy ");
  CHECK(broken([](Rule &rule) { rule.check = nullptr; }) == "check ");
}

TEST_CASE("every rule explains itself, and no id is used twice") {
  std::set<std::string_view> ids;
  for (const Rule *rule : all_rules()) {
    CAPTURE(rule->id);
    CHECK(lacking(*rule).empty());
    CHECK(ids.insert(rule->id).second);
    CHECK(find_rule(rule->id) == rule);
  }
  CHECK(find_rule("no-such-rule") == nullptr);
}

TEST_CASE("every rule has fixtures, and every fixture folder its rule") {
  for (const Rule *rule : all_rules())
    for (const char *stem : {"fires", "silent"})
      for (const char *suffix : {".xml", ".pictures", ".expect"}) {
        const auto file = folder / rule->id / (std::string(stem) + suffix);
        INFO(file);
        CHECK(std::filesystem::is_regular_file(file));
      }
  for (const auto &entry : std::filesystem::directory_iterator(folder))
    if (entry.is_directory()) {
      INFO(entry.path());
      CHECK(find_rule(entry.path().filename().string()) != nullptr);
    }
}

TEST_CASE("every fixture gives exactly the findings written beside it") {
  for (const Rule *rule : all_rules())
    for (const char *stem : {"fires", "silent"}) {
      const auto path = folder / rule->id / stem;
      CAPTURE(path);
      const Scene scene = read_scene(path);
      CHECK(listed(scene, findings_of(scene)) == text_of(path.string() + ".expect"));
    }
}

TEST_CASE("a rule fires on its own fixture as gravely as it says, and all are silent on the other") {
  for (const Rule *rule : all_rules()) {
    CAPTURE(rule->id);
    const Scene fires = read_scene(folder / rule->id / "fires");
    std::optional<Grade> gravest;
    for (const Finding &finding : findings_of(fires))
      if (finding.rule == rule->id && (!gravest || finding.grade < *gravest)) gravest = finding.grade;
    CHECK(gravest == rule->grade);
    const Scene silent = read_scene(folder / rule->id / "silent");
    CHECK(findings_of(silent).empty());
  }
}
