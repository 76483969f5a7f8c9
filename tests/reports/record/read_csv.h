// Tables read back by Python's csv module, which is not ours.
#pragma once

#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <nlohmann/json.hpp>

#include <map>
#include <string>

namespace stoneproof::test {

/// The lines as Python reads them: a list of lists of fields.
inline nlohmann::json read_back(const std::string &csv) {
  const Folder folder;
  write_file(folder / "table.csv", csv);
  const Printed printed = print_of("/usr/bin/python3 -c '"
                                   "import csv, json, sys\n"
                                   "with open(sys.argv[1], encoding=\"utf-8\", newline=\"\") as file:\n"
                                   "    print(json.dumps(list(csv.reader(file, strict=True))))' '" +
                                   folder.file("table.csv") + "'");
  REQUIRE(printed.status == 0);
  return nlohmann::json::parse(printed.out);
}

/// The fields of the one line whose column holds that value, by their columns.
inline std::map<std::string, std::string> line_of(const nlohmann::json &table, const std::string &column,
                                                  const std::string &value) {
  for (const auto &line : table) {
    std::map<std::string, std::string> fields;
    for (std::size_t i = 0; i < line.size(); ++i) fields[table.at(0).at(i)] = line.at(i);
    if (fields[column] == value && &line != &table.at(0)) return fields;
  }
  FAIL("no line of " << value);
  return {};
}

/// Every column once, each described in a document of the folder schema.
inline void check_columns(const nlohmann::json &table, const std::string &document) {
  const std::string described = content_of(STONEPROOF_SOURCE_DIR "/schema/" + document);
  std::map<std::string, int> seen;
  for (const std::string column : table.at(0)) {
    CAPTURE(column);
    CHECK(described.find("`" + column + "`") != std::string::npos);
    CHECK(++seen[column] == 1);
  }
  for (const auto &line : table) CHECK(line.size() == table.at(0).size());
}

} // namespace stoneproof::test
