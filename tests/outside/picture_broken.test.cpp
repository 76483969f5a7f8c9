// Damaged, hostile and odd files that others have collected for their own readers: each ends in a value or a
// whole Fault, within 5 s of processor time and 500 MB of memory. Every small file of the samples is tried,
// whatever it is, since none of them may do worse. A file has a process of its own, which the system ends
// beyond these limits. Under the sanitizers all are read in one process instead, so that leaks are seen, and
// with ten times the time.
#include "engine/picture/preview.h"
#include "tests/outside/samples.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <csignal>
#include <cstring>
#include <fmt/format.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace stoneproof;

namespace {

#if defined(__SANITIZE_ADDRESS__)
constexpr bool sanitized = true;
#elif defined(__has_feature)
constexpr bool sanitized = __has_feature(address_sanitizer);
#else
constexpr bool sanitized = false;
#endif

constexpr rlim_t most_seconds = 5, most_bytes = 500'000'000;

// Decoding may hold half of what the process may have; the rest is for the program, the libraries and what
// they hold beside it.
const PictureLimits limits{.most_memory = most_bytes / 2};

enum class End { value, fault, neither };

bool is_whole(const Fault &fault, const std::filesystem::path &file) {
  return !fault.what.empty() && fault.where == file.string() && !fault.remedy.empty();
}

End read(const std::filesystem::path &file) {
  const auto facts = read_facts(file, limits);
  if (!facts) return is_whole(facts.fault(), file) ? End::fault : End::neither;
  const auto width = static_cast<double>(facts.value().size.width);
  const auto height = static_cast<double>(facts.value().size.height);
  End end = End::value;
  for (const PixelRect &part :
       {PixelRect{0, 0, width, height}, PixelRect{width / 3, height / 3, width / 2, height / 2}}) {
    const auto preview = read_preview(file, facts.value(), {part, 64, 64}, limits);
    if (preview) continue;
    if (!is_whole(preview.fault(), file)) return End::neither;
    end = End::fault;
  }
  return end;
}

void limit_own(__rlimit_resource resource, rlim_t most) {
  const rlimit limit{most, most};
  if (setrlimit(resource, &limit) != 0) _exit(99);
}

// What came of one file; a text where it broke a limit.
std::string end_of(const std::filesystem::path &file, End &end) {
  const pid_t child = fork();
  if (child < 0) return "no process could be started";
  if (child == 0) {
    limit_own(RLIMIT_CPU, most_seconds);
    limit_own(RLIMIT_AS, most_bytes);
    limit_own(RLIMIT_CORE, 0);
    alarm(20 * most_seconds); // for what waits without working
    for (const int number : {SIGABRT, SIGSEGV, SIGFPE, SIGILL, SIGBUS}) std::signal(number, SIG_DFL);
    _exit(static_cast<int>(read(file)));
  }
  int status = 0;
  if (waitpid(child, &status, 0) != child) return "its process was lost";
  if (WIFSIGNALED(status)) return fmt::format("ended by signal {}", strsignal(WTERMSIG(status)));
  end = static_cast<End>(WEXITSTATUS(status));
  return end == End::value || end == End::fault ? "" : "a fault without its parts";
}

const char *being_read = "";
void on_alarm(int) {
  for (const char *text : {"too slow: ", being_read, "\n"})
    (void)!write(STDERR_FILENO, text, std::strlen(text));
  _exit(1);
}

std::string end_in_this_process(const std::filesystem::path &file, End &end) {
  being_read = file.c_str();
  std::signal(SIGALRM, on_alarm);
  alarm(10 * most_seconds);
  end = read(file);
  alarm(0);
  return end == End::neither ? "a fault without its parts" : "";
}

bool is_small(const std::filesystem::directory_entry &entry) {
  return entry.is_regular_file() && entry.file_size() > 0 && entry.file_size() < 300'000;
}

} // namespace

TEST_CASE("small files of every kind end in a value or a fault, in bounded time and memory") {
  const std::filesystem::path folder = test::samples_folder();
  REQUIRE(std::filesystem::is_directory(folder));
  int values = 0, faults = 0, damaged = 0;
  std::string bad;
  for (const auto &entry : std::filesystem::recursive_directory_iterator(folder)) {
    if (!is_small(entry)) continue;
    End end = End::neither;
    const std::string what = sanitized ? end_in_this_process(entry.path(), end) : end_of(entry.path(), end);
    if (!what.empty()) bad += fmt::format("{}: {}\n", entry.path().string(), what);
    ++(end == End::value ? values : faults);
    // The sets of damaged files that are known to be there.
    const std::string name = entry.path().filename().string();
    damaged += end == End::fault &&
               (name.starts_with("crash") || name.find("bad") != std::string::npos || name.starts_with("x"));
  }
  CHECK(bad == "");
  CHECK(values > 600);
  CHECK(faults > 100);
  CHECK(damaged > 20);
}
