// What pictures that are decoded at the same time may hold together.
#pragma once

#include <algorithm>
#include <condition_variable>
#include <cstdint>
#include <memory>
#include <mutex>
#include <utility>

namespace stoneproof {

class MemoryBudget {
public:
  /// `total` in bytes. Who wants more than that waits until nobody else holds anything.
  explicit MemoryBudget(std::uint64_t total) : total_(total) {}

  /// A part of the budget, given back when it goes. One thread holds one at a time: two would wait for
  /// themselves.
  class Hold {
  public:
    Hold() = default;
    Hold(std::shared_ptr<MemoryBudget> budget, std::uint64_t bytes)
        : budget_(std::move(budget)), bytes_(bytes) {}
    Hold(Hold &&other) noexcept : budget_(std::move(other.budget_)), bytes_(std::exchange(other.bytes_, 0)) {}
    Hold &operator=(Hold &&other) noexcept {
      std::swap(budget_, other.budget_);
      std::swap(bytes_, other.bytes_);
      return *this;
    }
    ~Hold() {
      if (budget_) budget_->give_back(bytes_);
    }

  private:
    std::shared_ptr<MemoryBudget> budget_;
    std::uint64_t bytes_ = 0;
  };

  /// Waits until `bytes` are free. Without a budget there is nothing to wait for.
  static Hold take(const std::shared_ptr<MemoryBudget> &budget, std::uint64_t bytes) {
    if (!budget) return {};
    const std::uint64_t wanted = std::min(bytes, budget->total_);
    std::unique_lock lock(budget->mutex_);
    budget->freed_.wait(lock, [&] { return budget->held_ + wanted <= budget->total_; });
    budget->held_ += wanted;
    return {budget, wanted};
  }

private:
  void give_back(std::uint64_t bytes) {
    {
      const std::lock_guard lock(mutex_);
      held_ -= bytes;
    }
    freed_.notify_all();
  }

  std::uint64_t total_, held_ = 0;
  std::mutex mutex_;
  std::condition_variable freed_;
};

} // namespace stoneproof
