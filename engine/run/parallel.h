// Many pictures at a time, and how far that has come. Used in this folder only.
#pragma once

#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>

#include <cstddef>
#include <functional>
#include <mutex>

namespace stoneproof {

/// Calls `work(i)` for every i below `count` on so many threads; 0: one for each processor.
template <class Work>
void in_parallel(int jobs, std::size_t count, Work work) {
  tbb::task_arena arena(jobs > 0 ? jobs : tbb::task_arena::automatic);
  arena.execute([&] { tbb::parallel_for(std::size_t{0}, count, work, tbb::simple_partitioner{}); });
}

/// Counts finished pictures and tells the caller, one call at a time. `tell` must outlive this.
class Progress {
public:
  Progress(const std::function<void(std::size_t, std::size_t)> &tell, std::size_t total)
      : tell_(tell), total_(total) {}
  void one_done() {
    if (!tell_) return;
    const std::lock_guard lock(mutex_);
    tell_(++done_, total_);
  }

private:
  const std::function<void(std::size_t, std::size_t)> &tell_;
  std::mutex mutex_;
  std::size_t done_ = 0, total_;
};

/// Counts one when it goes out of scope.
class ProgressStep {
public:
  explicit ProgressStep(Progress &progress) : progress_(progress) {}
  ~ProgressStep() { progress_.one_done(); }
  ProgressStep(const ProgressStep &) = delete;
  ProgressStep &operator=(const ProgressStep &) = delete;

private:
  Progress &progress_;
};

} // namespace stoneproof
