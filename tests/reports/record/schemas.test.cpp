// The published JSON Schemas themselves: closed, complete, described. That documents keep to them is tested
// beside each document, and on the demo album in tests/demo.
#include "engine/book/book.h"
#include "engine/measure/certainty.h"
#include "engine/picture/facts.h"
#include "engine/press/press_sheet.h"
#include "engine/rules/finding.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <nlohmann/json.hpp>

#include <set>

using namespace stoneproof;
using namespace stoneproof::test;
using nlohmann::json;

namespace {

const std::string schemas = STONEPROOF_SOURCE_DIR "/schema/";

json schema_of(const std::string &name) { return json::parse(content_of(schemas + name + ".schema.json")); }

/// Calls `look` with every part that describes objects, and its place.
void each_object(const json &part, const std::string &place, const auto &look) {
  if (part.is_object() && part.contains("properties") && part.at("properties").is_object()) look(part, place);
  if (part.is_structured())
    for (const auto &[key, inner] : part.items()) each_object(inner, place + "/" + key, look);
}

template <class Table>
std::set<std::string> words_of(const Table &table) {
  std::set<std::string> words;
  for (const auto &entry : table) words.emplace(entry.word);
  return words;
}

} // namespace

TEST_CASE("a schema takes no key that it does not name, and misses every one that is not there") {
  for (const char *name : {"record", "measure"}) {
    const json schema = schema_of(name);
    CHECK(schema.at("$schema") == "https://json-schema.org/draft/2020-12/schema");
    CHECK(schema.at("$id") == std::string("urn:stoneproof:") + name + ":1");
    std::size_t objects = 0;
    each_object(schema, name, [&](const json &part, const std::string &place) {
      INFO(place);
      ++objects;
      CHECK(part.value("additionalProperties", json(true)) == false);
      std::set<std::string> named, asked;
      for (const auto &[key, shape] : part.at("properties").items()) named.insert(key);
      for (const std::string key : part.value("required", json::array())) asked.insert(key);
      CHECK(named == asked);
    });
    CHECK(objects > 15);
  }
}

TEST_CASE("every key of a schema is described in it and in the words beside it") {
  for (const std::string name : {"record", "measure"}) {
    const std::string words = content_of(schemas + name + ".md");
    each_object(schema_of(name), name, [&](const json &part, const std::string &place) {
      for (const auto &[key, shape] : part.at("properties").items()) {
        INFO(place << "/" << key);
        CHECK((shape.contains("description") || shape.contains("$ref")));
        const bool told = words.find("`" + key + "`") != std::string::npos ||
                          words.find("\"" + key + "\"") != std::string::npos;
        CHECK(told);
      }
    });
  }
}

TEST_CASE("the schema of the record knows every word that the program has") {
  std::set<std::set<std::string>> lists;
  const auto collect = [&](const auto &again, const json &part) -> void {
    if (part.is_object() && part.contains("enum") && part.at("enum").is_array()) {
      std::set<std::string> words;
      for (const json &word : part.at("enum"))
        if (word.is_string()) words.insert(word);
      lists.insert(words);
    }
    if (part.is_structured())
      for (const auto &[key, inner] : part.items()) again(again, inner);
  };
  collect(collect, schema_of("record"));
  const auto known = [&](const std::set<std::string> &words) { return lists.count(words) > 0; };
  CHECK(known(words_of(grade_words)));
  CHECK(known(words_of(binding_words)));
  CHECK(known(words_of(side_words)));
  CHECK(known(words_of(use_words)));
  CHECK(known(words_of(original_words)));
  CHECK(known(words_of(format_words)));
  CHECK(known(words_of(colour_words)));
  CHECK(known(words_of(tag_words)));
  CHECK(known(words_of(mirror_words)));
  CHECK(known(words_of(certainty_words)));
}
