// From a finished PDF to a description. The only way in is run_draft; tested in tests/reports/terminal.
#include "reports/terminal/draft_verb.h"

#include "engine/book/read.h"
#include "engine/book/write.h"
#include "engine/import/draft.h"
#include "engine/import/pdf_file.h"
#include "engine/press/read.h"
#include "engine/run/with_masters.h"
#include "reports/files/file_fault.h"
#include "reports/files/replace_file.h"
#include "reports/files/temporary_folder.h"
#include "reports/terminal/book_inputs.h"
#include "reports/terminal/checking.h"
#include "reports/terminal/console.h"
#include "reports/terminal/outputs.h"

#include <fmt/format.h>

#include <set>
#include <utility>

namespace stoneproof::terminal {

namespace {

/// "album pictures" beside album.xml.
std::filesystem::path pictures_beside(const std::filesystem::path &description) {
  return description.parent_path() / (description.stem().string() + " pictures");
}

/// What was made of the finished PDF.
struct Drafted {
  Book book;
  std::string found = {}; ///< what the summary tells of the files behind the pictures
};

/// The book as the PDF shows it, its pictures in `folder`.
Outcome<Book> drafted(const DraftCommand &command, const std::filesystem::path &folder) {
  const auto text =
      finished::draft_book({command.pdf, command.options.password, folder, command.options.binding},
                           finished::bounds_for(command.pdf));
  if (!text) return text.fault();
  Reading<Book> book = parse_book(SourceText(command.pdf.string(), text.value()));
  if (!book) return book.faults.front().fault;
  book.value->pictures_in = folder;
  return std::move(*book.value);
}

/// Names the pictures of a draft as its description will.
void name_pictures(Book &book, const std::string &prefix) {
  for (Picture &picture : book.pictures) {
    picture.file = prefix + picture.file;
    if (!picture.profile.empty()) picture.profile = prefix + picture.profile;
  }
}

/// The files that pictures were made from take their place.
Drafted with_files(const DraftCommand &command, Book book, const std::string &prefix,
                   std::vector<std::filesystem::path> files, const std::filesystem::path &beside) {
  ProgressBar bar;
  RunOptions run = run_options({}, look_at_console().progress ? &bar : nullptr);
  run.masters = std::move(files);
  Checked checked = check_book(std::move(book), built_in_press_sheet(), run);
  name_pictures(checked.evidence.book, prefix);
  BookOfMasters made = with_masters(checked.evidence, *command.pictures, beside);
  return {std::move(made.book), fmt::format("Files behind     {} of {} pictures found in {}\n", made.found,
                                            made.pictures, command.pictures->string())};
}

/// Removes what no picture of the book names; whether something is left.
bool keep_named(const std::filesystem::path &folder, const Book &book, const std::string &prefix) {
  std::set<std::string> named;
  for (const Picture &picture : book.pictures) named.insert({picture.file, picture.profile});
  std::vector<std::filesystem::path> others;
  bool left = false;
  std::error_code ignored;
  for (auto entry = std::filesystem::directory_iterator(folder, ignored);
       entry != std::filesystem::directory_iterator(); entry.increment(ignored))
    if (named.contains(prefix + entry->path().filename().string()))
      left = true;
    else
      others.push_back(entry->path());
  for (const auto &file : others) std::filesystem::remove(file, ignored);
  return left;
}

/// What is wrong with the PDF's name, if something is.
std::optional<Fault> wrong_pdf(const std::filesystem::path &pdf) {
  if (finished::is_pdf(pdf)) return std::nullopt;
  std::error_code ignored;
  if (!std::filesystem::exists(pdf, ignored))
    return Fault{"there is no such file", pdf.string(), "Name the finished PDF of a book."};
  if (auto fault = neither_book(pdf)) return fault;
  return Fault{"the file is not a PDF", pdf.string(), "Name the finished PDF of a book."};
}

/// An output that would replace something.
std::optional<Fault> wrong_output(const DraftCommand &command, const std::vector<Output> &outputs,
                                  const std::vector<std::filesystem::path> &files) {
  std::vector<Input> inputs = named_as(outputs, files);
  inputs.push_back({command.pdf, "the finished PDF"});
  return clash(outputs, inputs);
}

} // namespace

ExitStatus run_draft(const DraftCommand &command) {
  if (const auto fault = wrong_pdf(command.pdf)) return refuse(*fault, ExitStatus::unreadable_input);
  // Before anything is written, or the copies would be found behind themselves.
  auto files = command.pictures ? files_in(*command.pictures) : std::vector<std::filesystem::path>();
  if (!files) return refuse(files.fault(), ExitStatus::unreadable_input);
  const std::filesystem::path description = output_of(command.pdf, ".xml", command.out);
  const std::vector<Output> outputs = {{description, "the description"}};
  if (const auto fault = wrong_output(command, outputs, files.value()))
    return refuse(*fault, ExitStatus::wrong_command);
  if (const auto faults = obstacles(outputs); !faults.empty())
    return refuse(faults, ExitStatus::unwritable_output);
  const std::filesystem::path pictures = pictures_beside(description);
  std::error_code ignored;
  if (std::filesystem::exists(pictures, ignored))
    return refuse({"the folder for the pictures is there already", pictures.string(),
                   "Move it away, or give the description another name with --out."},
                  ExitStatus::unwritable_output);
  auto folder = TemporaryFolder::make(folder_of(description));
  if (!folder) return refuse(folder.fault(), ExitStatus::unwritable_output);

  auto book = drafted(command, folder.value().path());
  if (!book) return refuse(book.fault(), ExitStatus::unreadable_input);
  const std::string prefix = pictures.filename().string() + "/";
  Drafted made{std::move(book).value()};
  if (command.pictures)
    made =
        with_files(command, std::move(made.book), prefix, std::move(files).value(), folder_of(description));
  else
    name_pictures(made.book, prefix);
  const bool some_left = keep_named(folder.value().path(), made.book, prefix);
  Outcome<Done> written = some_left ? folder.value().keep_as(pictures) : Outcome<Done>(Done{});
  if (written) written = replace_file(description, book_text(made.book));
  if (!written) return refuse(written.fault(), ExitStatus::unwritable_output);
  return print_result(fmt::format("The description  {}\n{}{}", description.string(),
                                  some_left ? fmt::format("Its pictures     {}\n", pictures.string()) : "",
                                  made.found),
                      ExitStatus::clear);
}

} // namespace stoneproof::terminal
