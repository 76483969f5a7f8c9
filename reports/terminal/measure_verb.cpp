// From picture files to what they are good for. The only way in is run_measure; tested in
// tests/reports/terminal.
#include "reports/terminal/measure_verb.h"

#include "engine/press/read.h"
#include "engine/run/measure_files.h"
#include "reports/record/measure_record.h"
#include "reports/terminal/checking.h"
#include "reports/terminal/console.h"
#include "reports/terminal/measure_summary.h"

namespace stoneproof::terminal {

namespace {

std::vector<MeasuredFile> measure(const MeasureCommand &command, const PressSheet &press,
                                  bool show_progress) {
  ProgressBar bar;
  return measure_files(command.pictures, press, run_options(command.options, show_progress ? &bar : nullptr));
}

std::vector<Fault> faults_of(const std::vector<MeasuredFile> &files) {
  std::vector<Fault> faults;
  for (const MeasuredFile &file : files)
    if (file.state.fault) faults.push_back(*file.state.fault);
  return faults;
}

} // namespace

ExitStatus run_measure(const MeasureCommand &command) {
  const Console console = look_at_console();
  const Reading<PressSheet> press = command.options.press ? read_press_sheet(*command.options.press)
                                                          : Reading<PressSheet>{built_in_press_sheet(), {}};
  if (!press) return refuse(press.faults, ExitStatus::unreadable_input);
  const auto files = measure(command, *press.value, console.progress);
  const std::string text = command.options.json
                               ? record::measure_text(files, *press.value, STONEPROOF_VERSION)
                               : measure_summary(files, *press.value, console.width, console.bold);
  const ExitStatus printed = print_result(text, ExitStatus::clear);
  const std::vector<Fault> faults = faults_of(files);
  if (printed != ExitStatus::clear || faults.empty()) return printed;
  return refuse(faults, ExitStatus::unreadable_input);
}

} // namespace stoneproof::terminal
