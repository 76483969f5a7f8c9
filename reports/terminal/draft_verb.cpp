// From a finished PDF to a description. The only way in is run_draft; tested in tests/reports/terminal.
#include "reports/terminal/draft_verb.h"

#include "engine/import/draft.h"
#include "engine/import/pdf_file.h"
#include "reports/files/file_fault.h"
#include "reports/files/replace_file.h"
#include "reports/files/temporary_folder.h"
#include "reports/terminal/console.h"
#include "reports/terminal/outputs.h"

#include <fmt/format.h>

namespace stoneproof::terminal {

namespace {

/// "album pictures" beside album.xml.
std::filesystem::path pictures_beside(const std::filesystem::path &description) {
  return description.parent_path() / (description.stem().string() + " pictures");
}

} // namespace

ExitStatus run_draft(const DraftCommand &command) {
  if (!std::filesystem::exists(command.pdf) || !finished::is_pdf(command.pdf))
    return refuse({std::filesystem::exists(command.pdf) ? "the file is not a PDF" : "there is no such file",
                   command.pdf.string(), "Name the finished PDF of a book."},
                  ExitStatus::unreadable_input);
  const std::filesystem::path description = output_of(command.pdf, ".xml", command.out);
  const std::vector<Output> outputs = {{description, "the description"}};
  if (const auto fault = clash(outputs, {{command.pdf, "the finished PDF"}}))
    return refuse(*fault, ExitStatus::wrong_command);
  if (const auto faults = obstacles(outputs); !faults.empty())
    return refuse(faults, ExitStatus::unwritable_output);
  const std::filesystem::path pictures = pictures_beside(description);
  if (std::filesystem::exists(pictures))
    return refuse({"the folder for the pictures is there already", pictures.string(),
                   "Move it away, or give the description another name with --out."},
                  ExitStatus::unwritable_output);
  auto folder = TemporaryFolder::make(folder_of(description));
  if (!folder) return refuse(folder.fault(), ExitStatus::unwritable_output);
  const auto text = finished::draft_book({command.pdf, command.options.password, folder.value().path(),
                                          command.options.binding, pictures.filename().string() + "/"},
                                         finished::bounds_for(command.pdf));
  if (!text) return refuse(text.fault(), ExitStatus::unreadable_input);
  Outcome<Done> written = folder.value().keep_as(pictures);
  if (written) written = replace_file(description, text.value());
  if (!written) return refuse(written.fault(), ExitStatus::unwritable_output);
  return print_result(
      fmt::format("The description  {}\nIts pictures     {}\n", description.string(), pictures.string()),
      ExitStatus::clear);
}

} // namespace stoneproof::terminal
