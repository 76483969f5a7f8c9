// Writing to the terminal. The only ways in are the functions of console.h; tested in tests/reports/terminal.
#include "reports/terminal/console.h"

#include "engine/xml/characters.h"
#include "reports/terminal/wrap.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <sys/ioctl.h>
#include <system_error>
#include <unistd.h>

namespace stoneproof::terminal {

namespace {

constexpr int narrowest = 40, widest = 100; // longer lines are hard to read

int columns_of(int descriptor) {
  winsize size{};
  if (ioctl(descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return usual_width;
  return std::clamp<int>(size.ws_col, narrowest, widest);
}

/// A file name may hold control characters; no terminal shall obey them.
std::string without_control(std::string_view text) {
  std::string safe;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    safe += printable(text.substr(0, end)) + "\n";
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return safe;
}

} // namespace

Console look_at_console() {
  const char *no_color = std::getenv("NO_COLOR");
  Console console;
  console.progress = isatty(STDERR_FILENO) == 1;
  if (isatty(STDOUT_FILENO) == 1) {
    console.bold = !no_color || *no_color == '\0';
    console.width = columns_of(STDOUT_FILENO);
  }
  return console;
}

ExitStatus print_result(std::string_view text, ExitStatus status) {
  const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
  if (written && std::fflush(stdout) == 0) return status;
  const std::string why = std::generic_category().message(errno);
  return refuse(
      {"the results cannot be printed (" + why + ")", "standard output", "Send them somewhere else."},
      ExitStatus::unwritable_output);
}

ExitStatus refuse(const std::vector<SourceFault> &faults, ExitStatus status) {
  for (const SourceFault &fault : faults) std::fputs(without_control(with_caret(fault)).c_str(), stderr);
  return status;
}

ExitStatus refuse(const std::vector<Fault> &faults, ExitStatus status) {
  std::vector<SourceFault> without_line;
  for (const Fault &fault : faults) without_line.push_back({fault, {}, 0});
  return refuse(without_line, status);
}

ExitStatus refuse(const Fault &fault, ExitStatus status) { return refuse(std::vector{fault}, status); }

void remark(const Fault &fault) { static_cast<void>(refuse(fault, ExitStatus::clear)); }

} // namespace stoneproof::terminal
