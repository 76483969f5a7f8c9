// Picture files without a book. The only way in is measure_files; tested in tests/engine/run.
#include "engine/run/measure_files.h"

#include "engine/run/copies.h"
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

MeasuredFile measure(const std::filesystem::path &file, const PressSheet &press, const RunOptions &options,
                     PressTables &tables, CopyTraits &traits) {
  MeasuredFile measured{file, open(file, options.limits), Use::photo, {}, {}, {}, {}};

  PictureState &state = measured.state;
  if (!state.facts) return measured;
  if (state.facts->colour == ColourModel::bilevel) measured.use = Use::line_art;
  add_prints(measured, press);

  const Density printed = press.bar(measured.use).wanted;
  Wanted wanted;
  if (options.measure_pixels) wanted.looks.push_back(whole_picture(state.facts->size, printed, press.ink));
  const PassResult result = read_whole(file, wanted, options.limits, state, tables);
  if (result.looks.empty()) return measured;
  const LookResult &look = result.looks.front();
  state.neutral = result.neutral;
  if (result.whole) {
    state.bed = result.whole->bed;
    traits = copy_traits(result, *state.facts);
  }

  measured.whole = Shown{look.tone, look.detail, look.ink, std::nullopt};
  if (look.ink) measured.whole->ink_place = on_paper(look.ink_place, printed);
  return measured;
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
  PressTables tables(press.profile);
  std::vector<CopyTraits> traits(files.size());
  Progress progress(options.progress, files.size());
  in_parallel(options.jobs, files.size(), [&](std::size_t i) {
    measured[i] = measure(files[i], press, options, tables, traits[i]);
    progress.one_done();
  });
  add_copies(measured, traits);

  return measured;
}

} // namespace stoneproof
