// Validates JSON documents by the program's own schemas, and spoils them.
#pragma once

#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <cstdlib>
#include <string>
#include <sys/wait.h>
#include <vector>

namespace stoneproof::test {

/// How many documents a schema of the folder schema refuses. Python is Debian's own, with its package
/// python3-jsonschema.
inline int refused_by(const std::string &schema, const std::vector<std::string> &documents) {
  const Folder folder;
  std::string command = "/usr/bin/python3 '" STONEPROOF_SOURCE_DIR
                        "/tests/reports/record/validate.py' '" STONEPROOF_SOURCE_DIR "/schema/" +
                        schema + "'";
  for (std::size_t i = 0; i < documents.size(); ++i) {
    const std::filesystem::path file = folder.path / (std::to_string(i) + ".json");
    write_file(file, documents[i]);
    command += " '" + file.string() + "'";
  }
  const std::filesystem::path said = folder.path / "said";
  const int status = std::system((command + " > '" + said.string() + "' 2>&1").c_str());
  UNSCOPED_INFO(content_of(said));
  REQUIRE(content_of(said).find("Traceback") == std::string::npos);
  REQUIRE(WIFEXITED(status));
  return WEXITSTATUS(status);
}

/// With the first `from` replaced, which must be there.
inline std::string replaced(std::string text, const std::string &from, const std::string &to) {
  const auto at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

} // namespace stoneproof::test
