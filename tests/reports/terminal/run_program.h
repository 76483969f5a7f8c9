// Runs the built program as a newcomer would, and gives what came of it.
#pragma once

#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <pty.h>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace stoneproof::test {

namespace fs = std::filesystem;

struct Ran {
  int status = -1; ///< 128 and more: ended by a signal
  std::string out, err;
};

using Words = std::vector<std::string>;
using Variables = std::map<std::string, std::string>;

inline int status_of(pid_t child) {
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

/// In the child: becomes the program.
[[noreturn]] inline void become_program(const fs::path &folder, Words words, const Variables &variables) {
  if (chdir(folder.c_str()) != 0) _exit(126);
  unsetenv("SOURCE_DATE_EPOCH");
  unsetenv("NO_COLOR");
  for (const auto &[name, value] : variables) setenv(name.c_str(), value.c_str(), 1);
  std::string name = "stoneproof";
  std::vector<char *> arguments = {name.data()};
  for (std::string &word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  execv(STONEPROOF_PROGRAM, arguments.data());
  _exit(127);
}

/// Runs `stoneproof WORDS...` in a folder; `out` is a file that standard output goes to instead of being
/// given back.
inline Ran run(const fs::path &folder, const Words &words, const Variables &variables = {},
               const char *out = nullptr) {
  const Folder said;
  const std::string out_file = out ? out : (said.path / "out").string(),
                    err_file = (said.path / "err").string();
  const pid_t child = fork();
  if (child == 0) {
    if (!std::freopen(out_file.c_str(), "w", stdout) || !std::freopen(err_file.c_str(), "w", stderr))
      _exit(125);
    become_program(folder, words, variables);
  }
  Ran ran;
  ran.status = status_of(child);
  if (!out) ran.out = content_of(out_file);
  ran.err = content_of(err_file);
  return ran;
}

/// The same on a terminal of 24 lines: `out` is all that was shown there.
inline Ran run_on_terminal(const fs::path &folder, const Words &words, unsigned short columns,
                           const Variables &variables = {}) {
  int master = -1;
  const winsize size = {24, columns, 0, 0};
  const pid_t child = forkpty(&master, nullptr, nullptr, &size);
  if (child == 0) become_program(folder, words, variables);
  Ran ran;
  char piece[4096];
  for (ssize_t got; (got = read(master, piece, sizeof piece)) > 0;)
    ran.out.append(piece, static_cast<std::size_t>(got));
  close(master);
  ran.status = status_of(child);
  return ran;
}

/// A file as it was, to see afterwards that nobody changed it.
struct Untouched {
  explicit Untouched(fs::path file)
      : path(std::move(file)), content(content_of(path)), time(fs::last_write_time(path)) {}
  bool still() const { return content_of(path) == content && fs::last_write_time(path) == time; }
  fs::path path;
  std::string content;
  fs::file_time_type time;
};

} // namespace stoneproof::test
