// The engine on one screen: facts of each file, frames placed, files hashed and decoded once, rules. The only
// way in is check_book; tested in tests/engine/run.
#include "engine/run/run.h"

#include "engine/run/copy_order.h"

#include <tbb/parallel_for.h>
#include <tbb/task_arena.h>

#include <mutex>

namespace stoneproof {

namespace {

/// Calls `work(i)` for every i below `count` on so many threads.
template <class Work>
void in_parallel(int jobs, std::size_t count, Work work) {
  tbb::task_arena arena(jobs > 0 ? jobs : tbb::task_arena::automatic);
  arena.execute([&] { tbb::parallel_for(std::size_t{0}, count, work, tbb::simple_partitioner{}); });
}

PictureState inspect(const std::filesystem::path &file, const PictureLimits &limits) {
  PictureState state;
  std::error_code error;
  state.missing = std::filesystem::status(file, error).type() == std::filesystem::file_type::not_found;
  Outcome<Facts> facts = read_facts(file, limits);
  if (facts)
    state.facts = std::move(facts).value();
  else
    state.fault = facts.fault();
  return state;
}

std::vector<std::optional<PixelSize>> sizes_of(const std::vector<PictureState> &states) {
  std::vector<std::optional<PixelSize>> sizes;
  for (const PictureState &state : states)
    sizes.push_back(state.facts ? std::optional(state.facts->size) : std::nullopt);
  return sizes;
}

/// When a file was last written; nothing where that cannot be told.
std::optional<std::filesystem::file_time_type> written(const std::filesystem::path &file) {
  std::error_code error;
  const auto time = std::filesystem::last_write_time(file, error);
  return error ? std::nullopt : std::optional(time);
}

/// Reads one file whole: its hash, and its small copy where a frame shows it. The bytes are read twice in a
/// row, the second time from memory. A file that is written to meanwhile is a fault: nobody could say which
/// bytes were checked.
void read_whole(const std::filesystem::path &file, const std::optional<PreviewOrder> &order,
                const PictureLimits &limits, PictureState &state, std::optional<SmallCopy> &copy) {
  if (!state.facts) return;
  const auto before = written(file);
  Outcome<std::string> hash = sha256_of(file);
  if (hash)
    state.sha256 = std::move(hash).value();
  else
    state.fault = hash.fault();
  if (order) {
    Outcome<SmallCopy> made = read_small_copy(file, *state.facts, *order, limits);
    if (made)
      copy = std::move(made).value();
    else
      state.fault = made.fault();
  }
  if (written(file) != before)
    state.fault =
        Fault{"the file was changed while it was read", file.string(), "Run again when nobody writes to it."};
}

/// Counts finished pictures and tells the caller, one call at a time.
class Progress {
public:
  Progress(const RunOptions &options, std::size_t total) : tell_(options.progress), total_(total) {}
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

} // namespace

Checked check_book(Book book, PressSheet press, const RunOptions &options) {
  Checked checked{{std::move(book), std::move(press), {}, {}, {}}, {}, {}};
  Evidence &evidence = checked.evidence;
  const auto &pictures = evidence.book.pictures;
  evidence.pictures.resize(pictures.size());
  checked.copies.resize(pictures.size());

  in_parallel(options.jobs, pictures.size(), [&](std::size_t i) {
    evidence.pictures[i] = inspect(evidence.book.path_of(pictures[i]), options.limits);
  });
  evidence.frames = place_frames(evidence.book, sizes_of(evidence.pictures));
  for (const Page &page : evidence.book.pages)
    evidence.spaces.push_back(page_space(evidence.book, evidence.press, page));

  const auto orders = copy_orders(evidence, options.copy_density);
  Progress progress(options, pictures.size());
  in_parallel(options.jobs, pictures.size(), [&](std::size_t i) {
    read_whole(evidence.book.path_of(pictures[i]), orders[i], options.limits, evidence.pictures[i],
               checked.copies[i]);
    progress.one_done();
  });
  checked.findings = check_rules(evidence);
  return checked;
}

} // namespace stoneproof
