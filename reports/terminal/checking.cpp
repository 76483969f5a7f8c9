// Options of the command line -> a run of the engine. The only ways in are the functions of checking.h;
// tested in tests/reports/terminal.
#include "reports/terminal/checking.h"

#include <utility>

namespace stoneproof::terminal {

RunOptions run_options(const MeasureOptions &options, ProgressBar *bar) {
  RunOptions run;
  run.limits = options.limits;
  run.measure_pixels = !options.quick;
  run.jobs = options.jobs;
  if (bar) run.progress = [bar](std::size_t done, std::size_t total) { bar->show(done, total); };
  return run;
}

Checked check_inputs(BookInputs &inputs, const MeasureOptions &options, const Copies &copies,
                     bool show_progress) {
  ProgressBar bar;
  RunOptions run = run_options(options, show_progress ? &bar : nullptr);
  run.copy_density = copies.density;
  run.patch = copies.patch;
  run.masters = copies.masters;
  Checked checked = check_book(std::move(inputs.book), std::move(inputs.press), run);
  for (std::optional<Master> &master : checked.evidence.masters)
    if (master)
      master->file = std::filesystem::path(master->file).lexically_relative(copies.masters_in).string();
  return checked;
}

} // namespace stoneproof::terminal
