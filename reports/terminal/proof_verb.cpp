// From a description to its proof and its record. The only way in is run_proof; tested in
// tests/reports/terminal.
#include "reports/terminal/proof_verb.h"

#include "engine/book/read.h"
#include "engine/press/read.h"
#include "engine/run/run.h"
#include "reports/content/proof_content.h"
#include "reports/files/replace_file.h"
#include "reports/layout/proof.h"
#include "reports/pdf/write_pdf.h"
#include "reports/record/record.h"
#include "reports/terminal/console.h"
#include "reports/terminal/outputs.h"
#include "reports/terminal/progress.h"
#include "reports/terminal/source_date.h"
#include "reports/terminal/summary.h"

#include <utility>

namespace stoneproof::terminal {

namespace {

/// All that is read before the pictures.
struct Inputs {
  Book book;
  std::string book_sha256;
  PressSheet press;
  Typesetter typesetter;
};

Reading<PressSheet> press_sheet(const std::optional<std::filesystem::path> &file) {
  return file ? read_press_sheet(*file) : Reading<PressSheet>{built_in_press_sheet(), {}};
}

/// The inputs, or every fault of the description and of the press sheet together.
Reading<Inputs> read_inputs(const ProofCommand &command) {
  Reading<Book> book = read_book(command.book);
  Reading<PressSheet> press = press_sheet(command.options.press);
  Reading<Inputs> inputs;
  inputs.faults = std::move(book.faults);
  inputs.faults.insert(inputs.faults.end(), press.faults.begin(), press.faults.end());
  if (!inputs.faults.empty()) return inputs;

  auto sha256 = sha256_of(command.book);
  auto typesetter = Typesetter::load();
  if (!sha256) inputs.faults.push_back({sha256.fault(), {}, 0});
  if (!typesetter) inputs.faults.push_back({typesetter.fault(), {}, 0});
  if (inputs.faults.empty())
    inputs.value = Inputs{std::move(*book.value), std::move(sha256).value(), std::move(*press.value),
                          std::move(typesetter).value()};
  return inputs;
}

std::vector<Input> files_read(const ProofCommand &command, const Book &book, const PressSheet &press) {
  std::vector<Input> files = {{command.book, "the description of the book"}};
  if (command.options.press) files.push_back({*command.options.press, "the press sheet"});
  if (command.options.press && press.profile)
    files.push_back(
        {command.options.press->parent_path() / press.profile->file, "the press's colour profile"});
  for (const Picture &picture : book.pictures)
    files.push_back({book.path_of(picture), "a picture of the book"});
  return files;
}

Checked check(const ProofCommand &command, Inputs &inputs, bool show_progress) {
  ProgressBar bar;
  RunOptions options;
  options.limits = command.options.limits;
  options.measure_pixels = !command.options.quick;
  options.jobs = command.options.jobs;
  options.copy_density = layout::copy_density(inputs.book);
  if (show_progress) options.progress = [&](std::size_t done, std::size_t total) { bar.show(done, total); };
  return check_book(std::move(inputs.book), std::move(inputs.press), options);
}

/// The proof first: when it cannot be written, the record does not tell of it.
Outcome<Done> write_outputs(const Outputs &outputs, const layout::Document &document,
                            const Typesetter &typesetter, const std::string &record) {
  Outcome<Done> written = write_pdf(document, typesetter, outputs.proof);
  return written ? replace_file(outputs.record, record) : written;
}

} // namespace

ExitStatus run_proof(const ProofCommand &command) {
  const Console console = look_at_console();
  const auto made_at = source_date();
  if (!made_at) return refuse(made_at.fault(), ExitStatus::wrong_command);
  Reading<Inputs> read = read_inputs(command);
  if (!read) return refuse(read.faults, ExitStatus::unreadable_input);
  Inputs &inputs = *read.value;

  const Outputs outputs = outputs_of(command.book, command.out, command.record);
  if (const auto fault = clash(outputs, files_read(command, inputs.book, inputs.press)))
    return refuse(*fault, ExitStatus::wrong_command);
  if (const auto faults = obstacles(outputs); !faults.empty())
    return refuse(faults, ExitStatus::unwritable_output);

  Checked checked = check(command, inputs, console.progress);
  const std::string record = record::record_text(checked.evidence, checked.findings,
                                                 {STONEPROOF_VERSION, inputs.book_sha256, made_at.value()});
  const auto content = content::proof_content(checked.evidence, checked.findings);
  const auto document = layout::proof_document(content, std::move(checked), inputs.typesetter,
                                               {sha256_of_text(record), made_at.value()});
  if (const auto written = write_outputs(outputs, document, inputs.typesetter, record); !written)
    return refuse(written.fault(), ExitStatus::unwritable_output);

  const ExitStatus verdict = content.clear ? ExitStatus::clear : ExitStatus::held;
  return print_result(command.options.json ? record : summary(content, outputs, console.width, console.bold),
                      verdict);
}

} // namespace stoneproof::terminal
