// Picture files without a book. The only way in is measure_files; tested in tests/engine/run.
#include "engine/run/measure_files.h"

#include "engine/run/copies.h"
#include "engine/run/glass_search.h"
#include "engine/run/parallel.h"

#include "engine/run/picture_file.h"

namespace stoneproof {

namespace {

PictureState open(const std::filesystem::path &file, const PictureLimits &limits) {
  std::error_code error;
  if (!std::filesystem::is_directory(file, error)) return inspect(file, limits);
  PictureState state;
  state.fault = Fault{"this is a folder", file.string(), "Name the pictures in it."};
  return state;
}

Sharpness sharpness_of(Density density, const DensityBar &bar, const PressSheet &press) {
  if (press.falls_short(density, bar.least)) return Sharpness::too_few;
  return press.falls_short(density, bar.wanted) ? Sharpness::usable : Sharpness::good;
}

/// The prints that its pixels are enough for.
void add_prints(MeasuredFile &measured, const PressSheet &press) {
  const PixelSize picture = measured.state.facts->size;
  for (const auto &[use, word] : use_words) {
    if (use == Use::photo && measured.use != Use::photo) continue;
    const DensityBar &bar = press.bar(use);
    measured.largest.push_back({use, printed_at(bar.wanted, picture), printed_at(bar.least, picture)});
  }
  for (const UsualPrint &print : usual_prints) {
    const Size size = turned_to_suit(print.size, picture);
    const Density density = filling(size, picture);
    measured.filled.push_back(
        {print.name, size, density, sharpness_of(density, press.bar(measured.use), press)});
  }
}

Look whole_picture(PixelSize picture, Density printed, const InkBar &ink) {
  const double side = (printed * ink.square).count;
  return {{0, 0, static_cast<double>(picture.width), static_cast<double>(picture.height)}, side, side};
}

/// A part of the picture on the paper, from the picture's top left corner.
Rect on_paper(const PixelRect &part, Density printed) {
  return {Pixels{part.x} / printed, Pixels{part.y} / printed, Pixels{part.width} / printed,
          Pixels{part.height} / printed};
}

/// What is known before the pixels are read.
MeasuredFile opened(const std::filesystem::path &file, const PressSheet &press, const RunOptions &options) {
  MeasuredFile measured;
  measured.file = file;
  measured.state = open(file, options.limits);
  if (!measured.state.facts) return measured;
  if (measured.state.facts->colour == ColourModel::bilevel) measured.use = Use::line_art;
  add_prints(measured, press);
  return measured;
}

/// What must be kept of every file until all are read.
struct Shared {
  PressTables tables;
  std::vector<CopyTraits> traits;
  GlassSearch glass;
};

void measure(MeasuredFile &measured, std::size_t i, const PressSheet &press, const RunOptions &options,
             Shared &shared) {
  PictureState &state = measured.state;
  if (!state.facts) return;
  const Density printed = press.bar(measured.use).wanted;
  Wanted wanted;
  wanted.glass = shared.glass.wants(i);
  if (options.measure_pixels) wanted.looks.push_back(whole_picture(state.facts->size, printed, press.ink));
  PassResult result = read_whole(measured.file, wanted, options.limits, state, shared.tables);
  if (wanted.glass) shared.glass.add(i, std::move(result.glass));
  if (result.looks.empty()) return;
  const LookResult &look = result.looks.front();
  state.neutral = result.neutral;
  if (result.whole) {
    state.bed = result.whole->bed;
    shared.traits[i] = copy_traits(result, *state.facts);
  }
  measured.whole = Shown{look.tone, look.detail, look.ink, std::nullopt};
  if (look.ink) measured.whole->ink_place = on_paper(look.ink_place, printed);
}

/// The files of one list count as one person's.
std::vector<GlassOrigin> origins_of(const std::vector<MeasuredFile> &files, bool measure_pixels) {
  std::vector<GlassOrigin> origins(files.size());
  for (std::size_t i = 0; measure_pixels && i < files.size(); ++i)
    if (files[i].state.facts) origins[i] = {&*files[i].state.facts, 0};
  return origins;
}

void add_dirt(std::vector<MeasuredFile> &files, const std::vector<Glass> &glasses) {
  for (const Glass &glass : glasses)
    for (const GlassSpot &spot : glass.spots)
      for (const std::size_t carrier : spot.carriers) {
        DirtOn dirt{spot, glass.place_of(spot), {}};
        for (const std::size_t other : spot.carriers)
          if (other != carrier) dirt.also.push_back(files[other].file);
        files[carrier].dirt.push_back(std::move(dirt));
      }
}

void add_copies(std::vector<MeasuredFile> &files, const std::vector<CopyTraits> &traits) {
  for (const CopyPair &pair : copies_among(traits)) {
    MeasuredFile &whole = files[pair.copy.whole], &other = files[pair.copy.other];
    const bool same = whole.state.sha256 == other.state.sha256;
    const bool whole_better = !same && pair.better == BetterCopy::whole,
               other_better = !same && pair.better == BetterCopy::other;
    whole.copies.push_back({other.file, same, other_better, whole_better});
    other.copies.push_back({whole.file, same, whole_better, other_better});
  }
}

} // namespace

std::vector<MeasuredFile> measure_files(const std::vector<std::filesystem::path> &files,
                                        const PressSheet &press, const RunOptions &options) {
  std::vector<MeasuredFile> measured(files.size());
  in_parallel(options.jobs, files.size(),
              [&](std::size_t i) { measured[i] = opened(files[i], press, options); });
  Shared shared{PressTables(press.profile), std::vector<CopyTraits>(files.size()),
                GlassSearch(origins_of(measured, options.measure_pixels), GlassScope::all_scans)};
  Progress progress(options.progress, files.size());
  in_parallel(options.jobs, files.size(), [&](std::size_t i) {
    measure(measured[i], i, press, options, shared);
    progress.one_done();
  });
  add_copies(measured, shared.traits);
  add_dirt(measured, shared.glass.take());
  return measured;
}

} // namespace stoneproof
