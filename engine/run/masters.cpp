// Fingerprints of files on disk, set beside those of the pictures. The only way in is find_masters; tested in
// tests/engine/run/masters.test.cpp.
#include "engine/run/masters.h"

#include "engine/measure/near_copy.h"
#include "engine/picture/orientation.h"
#include "engine/run/parallel.h"
#include "engine/run/picture_file.h"

#include <algorithm>

namespace stoneproof {

namespace {

/// Copies that near_copies pairs are alike by 0.9 and more. What is less alike than this may be another shot
/// of the same scene: our own choice; copies by software alone come out above 0.99.
constexpr double sure_likeness = 0.97;
/// As likely, but for what saving changes.
constexpr double same_likeness = 0.005;

PixelSize stored_size(const PictureState &state) {
  return Orientation(state.facts->orientation).stored(state.facts->size);
}

/// What a pair says of a master, from which the picture is `picture`.
Master master_of(const NearCopy &pair, bool master_is_whole, PixelSize master, PixelSize picture) {
  const bool swaps = Orientation(pair.orientation).swaps();
  const PixelSize seen = swaps ? PixelSize{picture.height, picture.width} : picture; // as the master lies
  const auto number = [](std::int64_t count) { return static_cast<double>(count); };
  const double share_x = pair.part.right - pair.part.left, share_y = pair.part.bottom - pair.part.top;
  Master made;
  made.size = master;
  made.likeness = pair.likeness;
  made.sure = pair.likeness >= sure_likeness;
  if (master_is_whole) {
    made.part = {pair.part.left * number(master.width), pair.part.top * number(master.height),
                 share_x * number(master.width), share_y * number(master.height)};
    made.finer = std::min(made.part.width / number(seen.width), made.part.height / number(seen.height));
    return made;
  }
  // The picture shows more than the master does.
  const PixelSize turned = swaps ? PixelSize{master.height, master.width} : master; // as the picture lies
  made.part = {0, 0, number(master.width), number(master.height)};
  made.finer = std::min(number(turned.width) / (share_x * number(picture.width)),
                        number(turned.height) / (share_y * number(picture.height)));
  return made;
}

bool better(const Master &one, const std::optional<Master> &other) {
  if (!other) return true;
  if (one.likeness > other->likeness + same_likeness) return true;
  return one.likeness > other->likeness - same_likeness && one.finer > other->finer;
}

} // namespace

std::vector<std::optional<Master>> find_masters(const std::vector<CopyTraits> &traits,
                                                const std::vector<PictureState> &pictures,
                                                const RunOptions &options, PressTables &tables) {
  const auto &files = options.masters;
  std::vector<PictureState> states(files.size());
  std::vector<CopyFingerprint> prints;
  for (const CopyTraits &of_picture : traits) prints.push_back(of_picture.print);
  prints.resize(traits.size() + files.size());
  in_parallel(options.jobs, files.size(), [&](std::size_t i) {
    states[i] = inspect(files[i], options.limits);
    if (!states[i].facts) return;
    Wanted wanted;
    const PixelSize size = states[i].facts->size;
    wanted.looks.push_back({{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)}});
    const PassResult result = read_whole(files[i], wanted, options.limits, states[i], tables);
    if (result.whole) prints[traits.size() + i] = result.whole->print;
  });
  std::vector<std::optional<Master>> masters(traits.size());
  for (const NearCopy &pair : near_copies(prints)) {
    const bool master_is_whole = pair.whole >= traits.size();
    const std::size_t picture = master_is_whole ? pair.other : pair.whole;
    const std::size_t file = master_is_whole ? pair.whole : pair.other;
    if (picture >= traits.size() || file < traits.size()) continue; // two pictures, or two files
    const PictureState &state = states[file - traits.size()];
    Master found = master_of(pair, master_is_whole, stored_size(state), stored_size(pictures[picture]));
    found.file = files[file - traits.size()].string();
    if (better(found, masters[picture])) masters[picture] = std::move(found);
  }
  return masters;
}

} // namespace stoneproof
