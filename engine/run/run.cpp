// The engine on one screen: facts of each file, frames placed, files hashed and decoded once, rules. The only
// way in is check_book; tested in tests/engine/run.
#include "engine/run/run.h"

#include "engine/run/copy_order.h"
#include "engine/run/look_order.h"
#include "engine/run/press_tables.h"

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

/// What is wanted of one picture's pixels.
struct Wanted {
  std::optional<PreviewOrder> copy;
  std::vector<Look> looks;
};

/// Decodes a picture as far as is wanted: to its last row where something is to be measured, else only as
/// finely as the small copy needs.
Outcome<PassResult> decode(const std::filesystem::path &file, const Facts &facts, const Wanted &wanted,
                           const PictureLimits &limits, PressTables &tables) {
  if (!wanted.looks.empty())
    return measure_pixels(file, facts,
                          {wanted.copy, wanted.looks,
                           [&](const auto &icc, ProfileSpace space) { return tables.table(icc, space); }},
                          limits);
  PassResult result;
  if (!wanted.copy) return result;
  Outcome<SmallCopy> made = read_small_copy(file, facts, *wanted.copy, limits);
  if (!made) return made.fault();
  result.copy = std::move(made).value();
  return result;
}

/// Reads one file whole: its hash, and its pixels where a frame shows it. The bytes are read twice in a row,
/// the second time from memory. A file that is written to meanwhile is a fault: nobody could say which bytes
/// were checked.
PassResult read_whole(const std::filesystem::path &file, const Wanted &wanted, const PictureLimits &limits,
                      PictureState &state, PressTables &tables) {
  if (!state.facts) return {};
  const auto before = written(file);
  Outcome<std::string> hash = sha256_of(file);
  if (hash)
    state.sha256 = std::move(hash).value();
  else
    state.fault = hash.fault();
  Outcome<PassResult> decoded = decode(file, *state.facts, wanted, limits, tables);
  if (!decoded) state.fault = decoded.fault();
  if (written(file) != before)
    state.fault =
        Fault{"the file was changed while it was read", file.string(), "Run again when nobody writes to it."};
  return decoded ? std::move(decoded).value() : PassResult{};
}

/// Gives what was measured of a picture to the frames that show it.
void share_out(std::vector<LookResult> results, const PictureLooks &looks, Evidence &evidence) {
  for (std::size_t look = 0; look < results.size(); ++look)
    for (const std::size_t frame : looks.frames[look]) {
      const LookResult &result = results[look];
      Shown shown{result.tone, result.ink, std::nullopt};
      const PlacedFrame &placed = evidence.frames[frame];
      if (result.ink)
        shown.ink_place = place_of(placed, result.ink_place, evidence.pictures[*placed.picture].facts->size);
      evidence.shown[frame] = std::move(shown);
    }
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
  Checked checked{{std::move(book), std::move(press), {}, {}, {}, {}}, {}, {}};
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

  evidence.shown.resize(evidence.frames.size());

  const auto orders = copy_orders(evidence, options.copy_density);
  const auto looks =
      options.measure_pixels ? picture_looks(evidence) : std::vector<PictureLooks>(pictures.size());
  PressTables tables(evidence.press.profile);
  Progress progress(options, pictures.size());
  in_parallel(options.jobs, pictures.size(), [&](std::size_t i) {
    PictureState &state = evidence.pictures[i];
    PassResult result = read_whole(evidence.book.path_of(pictures[i]), {orders[i], looks[i].looks},
                                   options.limits, state, tables);
    if (!result.looks.empty()) state.neutral = result.neutral;
    checked.copies[i] = std::move(result.copy);
    share_out(std::move(result.looks), looks[i], evidence);
    progress.one_done();
  });
  checked.findings = check_rules(evidence);
  return checked;
}

} // namespace stoneproof
