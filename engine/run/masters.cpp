// Fingerprints of files on disk, set beside those of the pictures; then the pictures as crops of the files.
// The only way in is find_masters; tested in tests/engine/run/masters.test.cpp.
#include "engine/run/masters.h"

#include "engine/measure/crop_search.h"
#include "engine/measure/near_copy.h"
#include "engine/picture/orientation.h"
#include "engine/run/parallel.h"
#include "engine/run/picture_file.h"

#include <algorithm>
#include <utility>

namespace stoneproof {

namespace {

/// As likely, but for what saving changes.
constexpr double same_likeness = 0.005;

PixelSize stored_size(const PictureState &state) {
  return Orientation(state.facts->orientation).stored(state.facts->size);
}

/// What a pair says of a master, from which the picture is `picture`; both sizes as stored.
Master master_of(const NearCopy &pair, bool master_is_whole, PixelSize master, PixelSize picture) {
  const double share_x = pair.part.right - pair.part.left, share_y = pair.part.bottom - pair.part.top;
  Master made;
  made.size = master;
  made.likeness = pair.likeness;
  made.turned = master_is_whole ? pair.orientation : Orientation(pair.orientation).undone();
  if (master_is_whole) {
    const auto width = static_cast<double>(master.width), height = static_cast<double>(master.height);
    made.part = {pair.part.left * width, pair.part.top * height, share_x * width, share_y * height};
  } else { // the picture shows more than the master, which is turned to stand as the picture does
    const PixelSize turned = Orientation(pair.orientation).seen(master);
    const double width = static_cast<double>(turned.width) / share_x,
                 height = static_cast<double>(turned.height) / share_y;
    made.part = Orientation(pair.orientation)
                    .stored_part({-pair.part.left * width, -pair.part.top * height, width, height}, master);
  }
  const PixelSize seen = Orientation(made.turned).seen(picture); // as the master lies
  made.finer = std::min(made.part.width / static_cast<double>(seen.width),
                        made.part.height / static_cast<double>(seen.height));
  return made;
}

bool better(const Master &one, const std::optional<Master> &other) {
  if (!other) return true;
  if (one.sure != other->sure) return one.sure;
  if (one.likeness > other->likeness + same_likeness) return true;
  return one.likeness > other->likeness - same_likeness && one.finer > other->finer;
}

/// The files on disk as they are read, each with what it looks like.
struct Shelf {
  std::vector<PictureState> states;
  std::vector<CopyFingerprint> prints; ///< blank where a file is no picture
  std::vector<CropGround> grounds;     ///< empty likewise
};

Shelf read_shelf(const RunOptions &options, PressTables &tables, Progress &progress) {
  const auto &files = options.masters;
  Shelf shelf{std::vector<PictureState>(files.size()), std::vector<CopyFingerprint>(files.size()),
              std::vector<CropGround>(files.size())};
  in_parallel(options.jobs, files.size(), [&](std::size_t i) {
    const ProgressStep step(progress);
    shelf.states[i] = inspect(files[i], options.limits);
    if (!shelf.states[i].facts) return;
    Wanted wanted;
    const PixelSize size = shelf.states[i].facts->size;
    wanted.looks.push_back({{0, 0, static_cast<double>(size.width), static_cast<double>(size.height)}});
    const PassResult result = read_whole(files[i], wanted, options.limits, shelf.states[i], tables);
    if (!result.whole) return;
    shelf.prints[i] = result.whole->print;
    shelf.grounds[i] = crop_ground(result.whole->small);
  });
  return shelf;
}

class Search {
public:
  Search(const std::vector<CopyTraits> &traits, const std::vector<PictureState> &pictures,
         const RunOptions &options, const Shelf &shelf)
      : traits_(traits), pictures_(pictures), options_(options), shelf_(shelf), masters_(traits.size()) {}

  void among_copies() {
    std::vector<CopyFingerprint> prints;
    for (const CopyTraits &of_picture : traits_) prints.push_back(of_picture.print);
    prints.insert(prints.end(), shelf_.prints.begin(), shelf_.prints.end());
    for (const NearCopy &pair : near_copies(prints)) {
      const bool master_is_whole = pair.whole >= traits_.size();
      const std::size_t picture = master_is_whole ? pair.other : pair.whole;
      const std::size_t file = master_is_whole ? pair.whole : pair.other;
      if (picture >= traits_.size() || file < traits_.size()) continue; // two pictures, or two files
      take(picture, file - traits_.size(), pair, master_is_whole, pair.likeness >= sure_likeness);
    }
  }

  /// What a layout program cuts to its frame is less of the file than two copies differ by.
  void among_crops(Progress &progress) {
    in_parallel(options_.jobs, masters_.size(), [&](std::size_t picture) {
      const ProgressStep step(progress);
      if (masters_[picture] && masters_[picture]->sure) return;
      const CropSought sought(traits_[picture].print);
      for (const FoundCrop &found : find_crops(shelf_.grounds, sought))
        take(picture, found.ground, {0, 0, found.part, found.orientation, found.likeness, found.detail}, true,
             found.sure());
    });
  }

  std::vector<std::optional<Master>> found() { return std::move(masters_); }

private:
  void take(std::size_t picture, std::size_t file, const NearCopy &pair, bool master_is_whole, bool sure) {
    Master master =
        master_of(pair, master_is_whole, stored_size(shelf_.states[file]), stored_size(pictures_[picture]));
    master.file = options_.masters[file].string();
    master.sure = sure;
    master.orientation = shelf_.states[file].facts->orientation;
    if (better(master, masters_[picture])) masters_[picture] = std::move(master);
  }

  const std::vector<CopyTraits> &traits_;
  const std::vector<PictureState> &pictures_;
  const RunOptions &options_;
  const Shelf &shelf_;
  std::vector<std::optional<Master>> masters_;
};

} // namespace

FoundMasters find_masters(const std::vector<CopyTraits> &traits, const std::vector<PictureState> &pictures,
                          const RunOptions &options, PressTables &tables, Progress &progress) {
  const Shelf shelf = read_shelf(options, tables, progress);
  Search search(traits, pictures, options, shelf);
  search.among_copies();
  search.among_crops(progress);
  const auto unread =
      std::ranges::count_if(shelf.grounds, [](const CropGround &ground) { return ground.gray.empty(); });
  return {search.found(), static_cast<std::size_t>(unread)};
}

} // namespace stoneproof
