// Files and programs as the tests use them: a folder that goes away, whole contents, what a command prints.
#pragma once

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace stoneproof::test {

/// A folder of its own under the system's temporary folder, removed afterwards.
class Folder {
public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "stoneproof-test-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
    path = name;
  }
  ~Folder() {
    std::error_code ignored;
    std::filesystem::permissions(path, std::filesystem::perms::owner_all, ignored);
    std::filesystem::remove_all(path, ignored);
  }
  Folder(const Folder &) = delete;
  Folder &operator=(const Folder &) = delete;

  std::filesystem::path operator/(const std::string &name) const { return path / name; }
  std::string file(const std::string &name) const { return (path / name).string(); }
  std::vector<std::string> names() const {
    std::vector<std::string> found;
    for (const auto &entry : std::filesystem::directory_iterator(path))
      found.push_back(entry.path().filename().string());
    return found;
  }

  std::filesystem::path path;
};

/// Permissions do not bind root: the test then runs as nobody (user 65534 on Linux).
struct WithoutRoot {
  WithoutRoot() { changed = geteuid() == 0 && seteuid(65534) == 0; }
  ~WithoutRoot() {
    if (changed) (void)!seteuid(0);
  }
  bool changed = false;
};

/// All bytes of a file; empty where it cannot be read.
inline std::string content_of(const std::filesystem::path &path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream content;
  content << file.rdbuf();
  return content.str();
}

/// Writes a file whole, making its folder where there is none; gives its path.
inline std::filesystem::path write_file(const std::filesystem::path &path, std::string_view text) {
  if (path.has_parent_path()) std::filesystem::create_directories(path.parent_path());
  std::ofstream(path, std::ios::binary).write(text.data(), static_cast<std::streamsize>(text.size()));
  return path;
}

struct Printed {
  int status = -1; ///< the command's exit status
  std::string out;
};

/// What a shell command prints to standard output.
inline Printed print_of(const std::string &command) {
  FILE *pipe = popen(command.c_str(), "r"); // NOLINT(bugprone-command-processor): the commands are ours
  if (!pipe) throw std::runtime_error("cannot run " + command);
  Printed printed;
  char piece[4096];
  while (const std::size_t got = std::fread(piece, 1, sizeof piece, pipe)) printed.out.append(piece, got);
  const int status = pclose(pipe);
  printed.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return printed;
}

} // namespace stoneproof::test
