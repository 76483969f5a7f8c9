#include "reports/files/replace_file.h"
#include "reports/files/descriptor_buffer.h"
#include "reports/files/file_fault.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::test;
namespace fs = std::filesystem;

namespace {

/// No file larger than so many bytes can be written; the signal that would end the program is ignored.
struct FileSizeLimit {
  explicit FileSizeLimit(rlim_t bytes) {
    previous_handler = std::signal(SIGXFSZ, SIG_IGN);
    getrlimit(RLIMIT_FSIZE, &previous);
    const rlimit now{bytes, previous.rlim_max};
    setrlimit(RLIMIT_FSIZE, &now);
  }
  ~FileSizeLimit() {
    setrlimit(RLIMIT_FSIZE, &previous);
    std::signal(SIGXFSZ, previous_handler);
  }
  rlimit previous{};
  void (*previous_handler)(int) = SIG_DFL;
};

} // namespace

TEST_CASE("the content is written and nothing else is left in the folder") {
  const Folder folder;
  const fs::path target = folder.path / "out.txt";
  REQUIRE(replace_file(target, "first"));
  REQUIRE(content_of(target) == "first");
  REQUIRE(replace_file(target, ""));
  REQUIRE(content_of(target).empty());
  const std::string large(1'000'003, 'x');
  REQUIRE(replace_file(target, [&](std::ostream &stream) -> Outcome<Done> {
    for (std::size_t i = 0; i < large.size(); i += 7) stream << large.substr(i, 7);
    stream.put('!');
    return Done{};
  }));
  REQUIRE(content_of(target) == large + "!");
  REQUIRE(folder.names() == std::vector<std::string>{"out.txt"});
}

TEST_CASE("the mode of the file is what the umask gives") {
  const Folder folder;
  for (const mode_t mask : {0022u, 0077u, 0002u}) {
    const mode_t previous = umask(mask);
    const auto outcome = replace_file(folder.path / "out", "x");
    umask(previous);
    REQUIRE(outcome);
    struct stat found;
    REQUIRE(stat((folder.path / "out").c_str(), &found) == 0);
    CHECK((found.st_mode & 0777) == (0666 & ~mask));
  }
}

TEST_CASE("a symbolic link is replaced and the file it led to stays") {
  const Folder folder;
  REQUIRE(replace_file(folder.path / "input", "input"));
  fs::create_symlink("input", folder.path / "out");
  REQUIRE(replace_file(folder.path / "out", "output"));
  CHECK(content_of(folder.path / "input") == "input");
  CHECK(content_of(folder.path / "out") == "output");
}

TEST_CASE("a bare name is written to the working folder") {
  const Folder folder;
  const fs::path before = fs::current_path();
  fs::current_path(folder.path);
  const auto outcome = replace_file("bare", "x");
  fs::current_path(before);
  REQUIRE(outcome);
  REQUIRE(content_of(folder.path / "bare") == "x");
}

TEST_CASE("what is in the way of an output is told") {
  const Folder folder;
  const std::string in = folder.path.string();
  REQUIRE(replace_file(folder.path / "file", "x"));
  fs::create_directory(folder.path / "sub");
  REQUIRE(mkfifo((folder.path / "fifo").c_str(), 0600) == 0);
  const std::string long_name(300, 'n');
  struct Case {
    std::string target;
    Fault fault;
  };
  for (const Case &c : std::vector<Case>{
           {in + "/none/out",
            {"the folder does not exist", in + "/none", "Create it, or write somewhere else."}},
           {in + "/file/out", {"this is not a folder", in + "/file", "Write to a folder."}},
           {in + "/sub",
            {"a folder of this name is in the way", in + "/sub", "Give the output another name."}},
           {in + "/fifo",
            {"this is a device or a pipe, not a plain file", in + "/fifo", "Give the output another name."}},
           {"/dev/null",
            {"this is a device or a pipe, not a plain file", "/dev/null", "Give the output another name."}},
           {in + "/" + long_name,
            {"the file name is too long", in + "/" + long_name, "Give the output a shorter name."}},
           {"", {"the output has no name", "", "Give the output a name."}},
       }) {
    INFO(c.target);
    const auto outcome = replace_file(c.target, "x");
    REQUIRE_FALSE(outcome);
    CHECK(outcome.fault().what == c.fault.what);
    CHECK(outcome.fault().where == c.fault.where);
    CHECK(outcome.fault().remedy == c.fault.remedy);
  }
  CHECK(content_of(folder.path / "file") == "x");
  CHECK(folder.names().size() == 3);
}

TEST_CASE("a folder that may not be written to is told") {
  const Folder folder;
  REQUIRE(chmod(folder.path.c_str(), 0555) == 0);
  const WithoutRoot user;
  const auto outcome = replace_file(folder.path / "out", "x");
  REQUIRE_FALSE(outcome);
  CHECK(outcome.fault() == Fault{"the folder may not be written to", folder.path.string(),
                                 "Change its permissions, or write somewhere else."});
}

TEST_CASE("an output that cannot be finished leaves the old file and no other") {
  const Folder folder;
  const fs::path target = folder.path / "out";
  REQUIRE(replace_file(target, "old"));
  SECTION("the file grows too large") {
    const FileSizeLimit limit(100'000);
    const auto outcome = replace_file(target, std::string(300'000, 'x'));
    REQUIRE_FALSE(outcome);
    CHECK(outcome.fault() == Fault{"the file grew larger than the system allows", target.string(),
                                   "Raise the limit on file size (ulimit -f), or write to another disk."});
  }
  SECTION("the content cannot be made") {
    const Fault fault{"no content", "here", "Make some."};
    const auto outcome = replace_file(target, [&](std::ostream &stream) -> Outcome<Done> {
      stream << "half";
      return fault;
    });
    REQUIRE_FALSE(outcome);
    CHECK(outcome.fault() == fault);
  }
  SECTION("the stream is asked for what a file cannot do") {
    const auto outcome = replace_file(target, [](std::ostream &stream) -> Outcome<Done> {
      stream.seekp(-1);
      stream << "lost";
      return Done{};
    });
    REQUIRE_FALSE(outcome);
    CHECK(outcome.fault() ==
          Fault{"the file cannot be written (Input/output error)", target.string(), "Write somewhere else."});
  }
  SECTION("the content's maker throws") {
    CHECK_THROWS_AS(
        replace_file(target, [](std::ostream &) -> Outcome<Done> { throw std::runtime_error("no content"); }),
        std::runtime_error);
  }
  CHECK(content_of(target) == "old");
  CHECK(folder.names() == std::vector<std::string>{"out"});
}

TEST_CASE("a writer may go back over what it wrote") {
  const Folder folder;
  REQUIRE(replace_file(folder.path / "out", [](std::ostream &stream) -> Outcome<Done> {
    stream << "0123456789";
    stream.seekp(4);
    stream << "ab" << stream.tellp();
    return Done{};
  }));
  CHECK(content_of(folder.path / "out") == "0123ab6789");
}

TEST_CASE("a full disk is noticed, whether early or at the end") {
  const int full = open("/dev/full", O_WRONLY);
  REQUIRE(full >= 0);
  for (const std::size_t size : {std::size_t{1}, std::size_t{200'000}}) {
    DescriptorBuffer buffer(full);
    std::ostream stream(&buffer);
    stream << std::string(size, 'x');
    CHECK(buffer.pubsync() == -1);
    CHECK(file_fault(buffer.error(), "out/proof.pdf") ==
          Fault{"the disk is full", "out/proof.pdf", "Make room, or write to another disk."});
  }
  close(full);
}
