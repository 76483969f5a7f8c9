// The engine on one screen: facts of each file, frames placed, files hashed and decoded once, rules. The only
// way in is check_book; tested in tests/engine/run.
#include "engine/run/run.h"

#include "engine/run/copies.h"
#include "engine/run/copy_order.h"
#include "engine/run/glass_search.h"

#include "engine/run/look_order.h"
#include "engine/run/masters.h"
#include "engine/run/parallel.h"
#include "engine/run/picture_file.h"

namespace stoneproof {

namespace {

std::vector<std::optional<PixelSize>> sizes_of(const std::vector<PictureState> &states) {
  std::vector<std::optional<PixelSize>> sizes;
  for (const PictureState &state : states)
    sizes.push_back(state.facts ? std::optional(state.facts->size) : std::nullopt);
  return sizes;
}

/// Gives what was measured of a picture to the frames that show it.
void share_out(std::vector<LookResult> results, const PictureLooks &looks, Evidence &evidence) {
  for (std::size_t look = 0; look < results.size(); ++look)
    for (const std::size_t frame : looks.frames[look]) {
      const LookResult &result = results[look];
      Shown shown{result.tone, result.detail, result.ink, std::nullopt};
      const PlacedFrame &placed = evidence.frames[frame];
      if (result.ink)
        shown.ink_place = place_of(placed, result.ink_place, evidence.pictures[*placed.picture].facts->size);
      evidence.shown[frame] = std::move(shown);
    }
}

std::optional<PreviewOrder> patch_of(const std::optional<PatchOrder> &order) {
  return order ? std::optional(order->order) : std::nullopt;
}

std::vector<GlassOrigin> origins_of(const Evidence &evidence) {
  std::vector<GlassOrigin> origins;
  for (std::size_t i = 0; i < evidence.pictures.size(); ++i) {
    const auto &facts = evidence.pictures[i].facts;
    origins.push_back({facts ? &*facts : nullptr, evidence.book.pictures[i].contributor});
  }
  return origins;
}

} // namespace

Checked check_book(Book book, PressSheet press, const RunOptions &options) {
  Checked checked{{std::move(book), std::move(press)}, {}, {}, {}};
  Evidence &evidence = checked.evidence;
  const auto &pictures = evidence.book.pictures;
  evidence.pictures.resize(pictures.size());
  checked.copies.resize(pictures.size());
  checked.patches.resize(pictures.size());

  std::vector<std::vector<std::uint8_t>> profiles(pictures.size());
  in_parallel(options.jobs, pictures.size(), [&](std::size_t i) {
    evidence.pictures[i] = inspect(evidence.book.path_of(pictures[i]), options.limits);
    if (!pictures[i].profile.empty())
      profiles[i] = lend_profile(evidence.book.path_of(pictures[i].profile), evidence.pictures[i]);
  });
  evidence.frames = place_frames(evidence.book, sizes_of(evidence.pictures));
  evidence.bound = bind(evidence.book, evidence.press);
  evidence.spaces = page_spaces(evidence.book, evidence.press);

  evidence.shown.resize(evidence.frames.size());
  evidence.pixels_measured = options.measure_pixels;

  const auto orders = copy_orders(evidence, options.copy_density);
  const auto patches = patch_orders(evidence, options.patch);
  const auto looks =
      options.measure_pixels ? picture_looks(evidence) : std::vector<PictureLooks>(pictures.size());
  PressTables tables(evidence.press.profile);
  std::vector<CopyTraits> traits(pictures.size());
  GlassSearch glass(options.measure_pixels ? origins_of(evidence) : std::vector<GlassOrigin>(pictures.size()),
                    GlassScope::compared);

  const bool masters_wanted = !options.masters.empty() && options.measure_pixels;
  Progress progress(options.progress,
                    pictures.size() + (masters_wanted ? options.masters.size() + pictures.size() : 0));
  in_parallel(options.jobs, pictures.size(), [&](std::size_t i) {
    PictureState &state = evidence.pictures[i];
    PassResult result =
        read_whole(evidence.book.path_of(pictures[i]),
                   {orders[i], patch_of(patches[i]), looks[i].looks, profiles[i], glass.wants(i)},
                   options.limits, state, tables);
    if (!result.looks.empty()) state.neutral = result.neutral;
    if (glass.wants(i)) glass.add(i, std::move(result.glass));
    if (result.whole) {
      state.bed = result.whole->bed;
      traits[i] = copy_traits(result, *state.facts);
    }
    checked.copies[i] = std::move(result.copy);
    if (result.patch) checked.patches[i] = Patch{std::move(*result.patch), patches[i]->frame};

    share_out(std::move(result.looks), looks[i], evidence);
    progress.one_done();
  });
  evidence.copies = copies_among(traits);
  if (masters_wanted) {
    FoundMasters found = find_masters(traits, evidence.pictures, options, tables, progress);
    evidence.masters = std::move(found.masters);
    evidence.files_searched = options.masters.size();
    evidence.files_unread = found.unread;
  }
  evidence.glasses = glass.take();

  checked.findings = check_rules(evidence);
  return checked;
}

} // namespace stoneproof
