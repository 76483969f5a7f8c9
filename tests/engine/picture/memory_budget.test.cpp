// A budget among threads: who waits, for whom, and that the sum never passes the total.
#include "engine/picture/memory_budget.h"

#include "tests/engine/picture/make_pictures.h"
#include "tests/support/catch.h"
#include "tests/support/files.h"

#include "engine/picture/rows.h"

#include <atomic>
#include <optional>
#include <random>
#include <string>
#include <thread>
#include <vector>

using namespace stoneproof;

namespace {

/// Takes `bytes` on another thread while somebody holds `held` of 100, which is given back later. Gives the
/// order in which the two things happened.
std::vector<std::string> order_of(std::uint64_t held, std::uint64_t bytes) {
  const auto budget = std::make_shared<MemoryBudget>(100);
  std::optional hold(MemoryBudget::take(budget, held));
  std::vector<std::string> order;
  std::mutex mutex;
  const auto note = [&](const char *what) {
    const std::lock_guard lock(mutex);
    order.emplace_back(what);
  };
  std::atomic<bool> asks = false;
  std::thread other([&] {
    asks = true;
    const auto second = MemoryBudget::take(budget, bytes);
    note("taken");
  });
  while (!asks) std::this_thread::yield();
  // Time for a taker who does not wait to be seen; one who waits does so however long this is.
  std::this_thread::sleep_for(std::chrono::milliseconds(50));
  note("given back");
  hold.reset();
  other.join();
  return order;
}

} // namespace

TEST_CASE("who wants more than is free waits until it is given back") {
  const std::vector<std::string> waits = {"given back", "taken"};
  CHECK(order_of(60, 41) == waits);
  CHECK(order_of(100, 1) == waits);
  CHECK(order_of(1, 100) == waits);
}

TEST_CASE("who wants more than there is waits until nobody else holds anything, and then gets in") {
  const std::vector<std::string> waits = {"given back", "taken"};
  CHECK(order_of(1, 5000) == waits);
  CHECK(order_of(5000, 1) == waits); // and keeps the others out
  CHECK(order_of(5000, 5000) == waits);
}

TEST_CASE("what is free is taken without waiting") {
  const auto budget = std::make_shared<MemoryBudget>(100);
  const auto first = MemoryBudget::take(budget, 60), second = MemoryBudget::take(budget, 40),
             third = MemoryBudget::take(budget, 0);
  const MemoryBudget::Hold none = MemoryBudget::take(nullptr, 1'000'000);
}

TEST_CASE("a hold that moves gives back once") {
  const auto budget = std::make_shared<MemoryBudget>(100);
  {
    MemoryBudget::Hold first = MemoryBudget::take(budget, 70);
    MemoryBudget::Hold second(std::move(first));
    first = std::move(second);
    first = MemoryBudget::Hold(); // given back here
    second = MemoryBudget::take(budget, 100);
  }
  // Were more given back than taken, this would pass the total and wait for ever.
  const auto all = MemoryBudget::take(budget, 100);
}

TEST_CASE("many threads together never hold more than the total, and all get their turn") {
  const auto budget = std::make_shared<MemoryBudget>(100);
  std::atomic<std::uint64_t> held = 0, most = 0;
  std::atomic<int> turns = 0;
  std::vector<std::thread> threads;
  for (unsigned seed = 0; seed < 6; ++seed)
    threads.emplace_back([&, seed] {
      std::mt19937 random(seed);
      for (int i = 0; i < 300; ++i) {
        const std::uint64_t bytes = random() % 130;
        const auto hold = MemoryBudget::take(budget, bytes);
        const std::uint64_t now = held += std::min<std::uint64_t>(bytes, 100);
        for (std::uint64_t seen = most; seen < now && !most.compare_exchange_weak(seen, now);) {
        }
        std::this_thread::yield();
        held -= std::min<std::uint64_t>(bytes, 100);
        ++turns;
      }
    });
  for (std::thread &thread : threads) thread.join();
  CHECK(turns == 6 * 300);
  CHECK(most <= 100);
  CHECK(most > 50);
}
