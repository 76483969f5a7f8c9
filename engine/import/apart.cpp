// A child process whose answer comes through a pipe. The only way in is run_apart; tested in
// tests/engine/import/apart.test.cpp.
#include "engine/import/apart.h"

#include <fmt/format.h>

#include <poll.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <csignal>
#include <exception>
#include <fstream>
#include <new>
#include <optional>

namespace stoneproof::finished {

namespace {

using Clock = std::chrono::steady_clock;

constexpr char value_mark = 'V', fault_mark = 'F', end_mark = '\n';
constexpr int out_of_memory = 3, other_end = 4; ///< exit statuses of the child

[[maybe_unused]] std::uint64_t memory_held() {
  std::ifstream statm("/proc/self/statm");
  std::uint64_t pages = 0;
  statm >> pages;
  return pages * static_cast<std::uint64_t>(sysconf(_SC_PAGESIZE));
}

void bound([[maybe_unused]] const Bounds &bounds) {
#if !defined(__SANITIZE_ADDRESS__)
  const rlim_t memory = memory_held() + bounds.memory;
  const rlimit limit{memory, memory};
  setrlimit(RLIMIT_AS, &limit);
#endif
  const rlimit no_core{0, 0};
  setrlimit(RLIMIT_CORE, &no_core);
  // How it crashes is for the parent to tell, not for handlers that this process came with.
  for (const int crash : {SIGSEGV, SIGBUS, SIGABRT, SIGFPE, SIGILL}) std::signal(crash, SIG_DFL);
}

void send(int pipe, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = write(pipe, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) _exit(other_end);
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
}

[[noreturn]] void answer(int pipe, const std::function<Outcome<std::string>()> &work) {
  try {
    const Outcome<std::string> outcome = work();
    if (outcome)
      send(pipe, value_mark + outcome.value() + end_mark);
    else
      send(pipe, fmt::format("{}{}{}{}{}{}{}", fault_mark, outcome.fault().what, '\0', outcome.fault().where,
                             '\0', outcome.fault().remedy, end_mark));
    _exit(0);
  } catch (const std::bad_alloc &) {
    _exit(out_of_memory);
  } catch (const std::exception &) {
    _exit(other_end);
  }
}

/// All that comes through the pipe; nothing where it takes longer than until `deadline`.
std::optional<std::string> receive(int pipe, Clock::time_point deadline) {
  std::string bytes;
  char part[1 << 16];
  while (true) {
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(deadline - Clock::now()).count();
    pollfd wait{pipe, POLLIN, 0};
    if (left <= 0) return std::nullopt;
    const int ready = poll(&wait, 1, static_cast<int>(std::min<long>(left, 1'000'000)));
    if (ready <= 0) continue;
    const ssize_t got = read(pipe, part, sizeof part);
    if (got < 0 && errno == EINTR) continue;
    if (got <= 0) return bytes;
    bytes.append(part, static_cast<std::size_t>(got));
  }
}

Fault fault_of(std::string_view sent) {
  const std::size_t first = sent.find('\0'), second = sent.find('\0', first + 1);
  return {std::string(sent.substr(0, first)), std::string(sent.substr(first + 1, second - first - 1)),
          std::string(sent.substr(second + 1))};
}

Fault ended(int status, const std::string &file) {
  const bool memory = WIFEXITED(status) && WEXITSTATUS(status) == out_of_memory;
  return {memory ? "the PDF asks for more memory than is allowed"
                 : "the PDF is damaged in a way that stops its reader",
          file, "Export it anew from the layout program."};
}

} // namespace

Outcome<std::string> run_apart(const std::function<Outcome<std::string>()> &work, const Bounds &bounds,
                               const std::string &file) {
  const Fault no_process{"no process could be started to read the PDF", file,
                         "Close other programs and run again."};
  int ends[2];
  if (pipe(ends) != 0) return no_process;
  const pid_t child = fork();
  if (child < 0) {
    close(ends[0]);
    close(ends[1]);
    return no_process;
  }
  if (child == 0) {
    close(ends[0]);
    bound(bounds);
    answer(ends[1], work);
  }
  close(ends[1]);
  const auto sent = receive(ends[0], Clock::now() + bounds.time);
  close(ends[0]);
  if (!sent) kill(child, SIGKILL);
  int status = 0;
  while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
  if (!sent)
    return Fault{fmt::format("the PDF could not be read within {:.0f} seconds",
                             std::chrono::duration<double>(bounds.time).count()),
                 file, "Export it anew from the layout program."};
  const bool whole = sent->size() >= 2 && sent->back() == end_mark;
  if (!whole) return ended(status, file);
  const std::string_view inside = std::string_view(*sent).substr(1, sent->size() - 2);
  if (sent->front() == fault_mark) return fault_of(inside);
  return std::string(inside);
}

} // namespace stoneproof::finished
