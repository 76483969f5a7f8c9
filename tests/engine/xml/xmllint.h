// Asks xmllint (libxml2), an independent judge, about many documents at once.
#pragma once

#include "tests/support/files.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace stoneproof::test {

struct Verdict {
  bool accepted = false;
  std::string messages; ///< what xmllint said about the document
};

/// Whether each document is well-formed, free of namespace errors and valid by the schema.
inline std::vector<Verdict> ask_xmllint(const std::string &schema,
                                        const std::vector<std::string> &documents) {
  const Folder folder;
  for (std::size_t i = 0; i < documents.size(); ++i)
    write_file(folder / (std::to_string(100000 + i) + ".xml"), documents[i]);
  const auto log = folder.path / "log";
  const std::string command =
      "cd '" + folder.path.string() + "' && xmllint --nonet --noout --schema '" + schema + "' *.xml 2> log";
  const int status = std::system(command.c_str()); // NOLINT(bugprone-command-processor): the paths are ours
  constexpr int not_found = 127;
  if (status == -1 || (status >> 8) == not_found)
    throw std::runtime_error("xmllint is needed (package libxml2-utils)");
  std::vector<Verdict> verdicts(documents.size());
  std::ifstream lines(log);
  constexpr std::size_t name_length = 10; // 100000.xml
  std::vector<bool> error(documents.size());
  for (std::string line; std::getline(lines, line);) {
    if (line.size() <= name_length || line.compare(6, 4, ".xml") != 0) continue;
    const std::size_t index = std::stoul(line.substr(0, 6)) - 100000;
    if (line.substr(name_length) == " validates") verdicts[index].accepted = true;
    if (line[name_length] == ':' && line.find(" error :") != std::string::npos) error[index] = true;
    verdicts[index].messages += line + "\n";
  }
  for (std::size_t i = 0; i < documents.size(); ++i)
    if (error[i]) verdicts[i].accepted = false;
  return verdicts;
}

} // namespace stoneproof::test
