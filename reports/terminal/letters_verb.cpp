// From a description to its letters. The only way in is run_letters; tested in tests/reports/terminal.
#include "reports/terminal/letters_verb.h"

#include "reports/content/letter_asks.h"
#include "reports/content/letter_content.h"
#include "reports/files/file_fault.h"
#include "reports/files/replace_file.h"
#include "reports/layout/letter.h"
#include "reports/pdf/write_pdf.h"
#include "reports/record/rescans_csv.h"
#include "reports/terminal/book_inputs.h"
#include "reports/terminal/checking.h"
#include "reports/terminal/console.h"
#include "reports/terminal/letter_files.h"
#include "reports/terminal/letters_summary.h"
#include "reports/terminal/outputs.h"
#include "reports/terminal/source_date.h"

#include <cerrno>
#include <system_error>
#include <utility>

namespace stoneproof::terminal {

namespace fs = std::filesystem;

namespace {

/// Makes the last folder of the path; the one that it lies in must be there.
std::optional<Fault> make_folder(const fs::path &folder) {
  std::error_code error;
  if (fs::is_directory(folder, error)) return std::nullopt;
  if (fs::exists(folder, error)) return file_fault(ENOTDIR, folder / "letter");
  if (fs::create_directory(folder, error) || !error) return std::nullopt;
  return file_fault(error.value(), folder);
}

/// Every letter that could be written has a place to go: looked at before the long work begins.
std::vector<LetterLine> places(const Book &book, const fs::path &folder) {
  std::vector<std::string> people;
  for (const Contributor &contributor : book.contributors) people.push_back(contributor.name);
  const std::vector<std::string> names = letter_names(people);
  std::vector<LetterLine> lines;
  for (std::size_t i = 0; i < people.size(); ++i)
    lines.push_back({people[i], 0, folder / names[i], false, false});
  return lines;
}

std::vector<Output> outputs_of(const std::vector<LetterLine> &lines, const std::optional<fs::path> &csv) {
  std::vector<Output> outputs;
  if (csv) outputs.push_back({*csv, "the table"});
  for (const LetterLine &line : lines) outputs.push_back({line.file, "a letter"});
  return outputs;
}

/// Writes the letters one after another; stops at the first that cannot be written.
Outcome<Done> write_letters(const Checked &checked, const content::Asks &asks, const BookInputs &inputs,
                            const std::optional<std::int64_t> &made_at, std::vector<LetterLine> &lines) {
  for (const content::ContributorAsks &person : asks.people) {
    LetterLine &line = lines[*person.contributor];
    line.pictures = person.pictures.size();
    std::error_code unknown;
    if (person.nothing()) {
      line.old = fs::exists(line.file, unknown);
      continue;
    }
    const auto content = content::letter_content(checked.evidence.book, person);
    std::string fingerprint = inputs.book_sha256 + line.file.filename().string();
    for (const auto &ask : person.pictures) fingerprint += checked.evidence.pictures[ask.picture].sha256;
    for (const auto &picture : content.pictures) fingerprint += picture.instruction;
    auto document = layout::letter_document(content, checked.copies, inputs.typesetter,
                                            {sha256_of_text(fingerprint), made_at});
    if (auto written = write_pdf(std::move(document), inputs.typesetter, line.file); !written) return written;
    line.written = true;
  }
  return Done{};
}

} // namespace

ExitStatus run_letters(const LettersCommand &command) {
  const Console console = look_at_console();
  const auto made_at = source_date();
  if (!made_at) return refuse(made_at.fault(), ExitStatus::wrong_command);
  Reading<BookInputs> read = read_inputs(command.book, command.options.press);
  if (!read) return refuse(read.faults, ExitStatus::unreadable_input);
  BookInputs &inputs = *read.value;

  LettersTold told;
  told.title = inputs.book.title;
  told.folder = output_of(command.book, ".letters", command.folder);
  told.lines = places(inputs.book, told.folder);
  const std::vector<Output> outputs = outputs_of(told.lines, command.csv);
  if (const auto fault = clash(outputs, files_read(command.book, command.options.press, inputs)))
    return refuse(*fault, ExitStatus::wrong_command);
  if (const auto fault = make_folder(told.folder)) return refuse(*fault, ExitStatus::unwritable_output);
  if (const auto faults = obstacles(outputs); !faults.empty())
    return refuse(faults, ExitStatus::unwritable_output);

  const Checked checked =
      check_inputs(inputs, command.options, {layout::letter_copy_density}, console.progress);
  const content::Asks asks = content::letter_asks(checked.evidence, checked.findings);
  told.csv = command.csv;
  told.nobodys = asks.nobody.pictures.size();
  if (const auto written = write_letters(checked, asks, inputs, made_at.value(), told.lines); !written)
    return refuse(written.fault(), ExitStatus::unwritable_output);
  if (command.csv)
    if (const auto written = replace_file(*command.csv, record::rescans_csv(checked.evidence.book, asks));
        !written)
      return refuse(written.fault(), ExitStatus::unwritable_output);
  return print_result(letters_summary(told, console.width, console.bold), ExitStatus::clear);
}

} // namespace stoneproof::terminal
