// Work in a process of its own: its value, its fault, and its ends of other kinds.
#include "engine/import/apart.h"

#include "tests/support/catch.h"

#include <csignal>
#include <thread>
#include <vector>

using namespace stoneproof;
using namespace stoneproof::finished;

namespace {

std::string what_of(const std::function<Outcome<std::string>()> &work, const Bounds &bounds = {}) {
  const auto outcome = run_apart(work, bounds, "a.pdf");
  REQUIRE_FALSE(outcome);
  CHECK(outcome.fault().where == "a.pdf");
  return outcome.fault().what;
}

} // namespace

TEST_CASE("values and faults come back whole, however long") {
  const std::string large(5'000'000, 'x');
  const auto value = run_apart([&] { return Outcome<std::string>(large); }, {}, "a.pdf");
  REQUIRE(value);
  CHECK(value.value() == large);
  const Fault fault{"what", "a.pdf", "remedy"};
  const auto told = run_apart([&] { return Outcome<std::string>(fault); }, {}, "a.pdf");
  REQUIRE_FALSE(told);
  CHECK(told.fault() == fault);
}

TEST_CASE("a process that crashes, never ends or takes all memory is a fault") {
  CHECK(what_of([]() -> Outcome<std::string> {
          std::raise(SIGKILL);
          return std::string();
        }) == "the PDF is damaged in a way that stops its reader");
  // Catch's own handlers do not speak for the child.
  CHECK(what_of([]() -> Outcome<std::string> {
          std::raise(SIGSEGV);
          return std::string();
        }) == "the PDF is damaged in a way that stops its reader");
  Bounds bounds;
  bounds.time = std::chrono::milliseconds(100);
  CHECK(what_of(
            []() -> Outcome<std::string> {
              std::this_thread::sleep_for(std::chrono::seconds(30));
              return std::string();
            },
            bounds) == "the PDF could not be read within 0 seconds");
#if !defined(__SANITIZE_ADDRESS__)
  bounds = {};
  bounds.memory = 50'000'000;
  CHECK(what_of(
            []() -> Outcome<std::string> {
              std::vector<std::string> held;
              while (true) held.emplace_back(1'000'000, 'x');
            },
            bounds) == "the PDF asks for more memory than is allowed");
#endif
}
