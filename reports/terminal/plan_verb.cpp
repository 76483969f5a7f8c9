// From a description to its scanning plan. The only way in is run_plan; tested in tests/reports/terminal.
#include "reports/terminal/plan_verb.h"

#include "engine/run/plan_book.h"
#include "reports/content/plan_content.h"
#include "reports/files/replace_file.h"
#include "reports/layout/plan.h"
#include "reports/pdf/write_pdf.h"
#include "reports/record/plan_csv.h"
#include "reports/terminal/book_inputs.h"
#include "reports/terminal/console.h"
#include "reports/terminal/outputs.h"
#include "reports/terminal/plan_summary.h"
#include "reports/terminal/source_date.h"

#include <utility>

namespace stoneproof::terminal {

namespace {

/// The plan first: when it cannot be written, no table tells of it.
Outcome<Done> write_outputs(const PlanFiles &files, layout::Document document, const Typesetter &typesetter,
                            const std::string &table) {
  Outcome<Done> written = write_pdf(std::move(document), typesetter, files.plan);
  return written ? replace_file(files.table, table) : written;
}

} // namespace

ExitStatus run_plan(const PlanCommand &command) {
  const Console console = look_at_console();
  const auto made_at = source_date();
  if (!made_at) return refuse(made_at.fault(), ExitStatus::wrong_command);
  const Reading<BookInputs> read = read_inputs(command.book, command.press);
  if (!read) return refuse(read.faults, ExitStatus::unreadable_input);
  const BookInputs &inputs = *read.value;

  const PlanFiles files = {output_of(command.book, ".plan.pdf", command.out),
                           output_of(command.book, ".plan.csv", command.csv)};
  const std::vector<Output> outputs = {{files.plan, "the plan"}, {files.table, "its table"}};
  if (const auto fault = clash(outputs, files_read(command.book, command.press, inputs)))
    return refuse(*fault, ExitStatus::wrong_command);
  if (const auto faults = obstacles(outputs); !faults.empty())
    return refuse(faults, ExitStatus::unwritable_output);

  const ScanPlan plan = plan_book(inputs.book, inputs.press);
  const std::string table = record::plan_csv(inputs.book, plan);
  const auto content = content::plan_content(inputs.book, inputs.press, plan);
  const std::string fingerprint = sha256_of_text(inputs.book_sha256 + content.press + table);
  auto document = layout::plan_document(content, inputs.typesetter, {fingerprint, made_at.value()});
  if (const auto written = write_outputs(files, std::move(document), inputs.typesetter, table); !written)
    return refuse(written.fault(), ExitStatus::unwritable_output);
  return print_result(plan_summary(content, files, console.width, console.bold), ExitStatus::clear);
}

} // namespace stoneproof::terminal
