// How the verbs that look into pictures run the engine.
#pragma once

#include "engine/run/run.h"
#include "reports/terminal/book_inputs.h"
#include "reports/terminal/commands.h"
#include "reports/terminal/progress.h"

namespace stoneproof::terminal {

/// `bar` is drawn where it is not null, and must then outlive the run.
RunOptions run_options(const MeasureOptions &options, ProgressBar *bar);

/// The copies of pictures that a document shows.
struct Copies {
  Density density;                       ///< of the small copies, per inch of the printed page
  std::optional<PatchWish> patch = {};   ///< none: it shows no true-size patches
  std::filesystem::path masters_in = {}; ///< a folder; empty: none is looked through
  std::vector<std::filesystem::path> masters =
      {}; ///< its files, among which those behind the pictures are looked for
};

/// Checks the book; book and press sheet are taken out of the inputs.
Checked check_inputs(BookInputs &inputs, const MeasureOptions &options, const Copies &copies,
                     bool show_progress);

} // namespace stoneproof::terminal
