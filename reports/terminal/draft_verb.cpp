// From a finished PDF to a description. The only way in is run_draft; tested in tests/reports/terminal.
#include "reports/terminal/draft_verb.h"

#include "engine/book/read.h"
#include "engine/book/write.h"
#include "engine/import/draft.h"
#include "engine/import/pdf_file.h"
#include "engine/press/read.h"
#include "engine/run/run.h"
#include "engine/run/with_masters.h"
#include "reports/files/file_fault.h"
#include "reports/files/replace_file.h"
#include "reports/files/temporary_folder.h"
#include "reports/terminal/book_inputs.h"
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

/// The files that pictures were made from take their place where --pictures names some.
Outcome<Drafted> with_files(const DraftCommand &command, Book book, const std::string &prefix,
                            const std::filesystem::path &beside) {
  const auto name_from_description = [&](Book &named) {
    for (Picture &picture : named.pictures) {
      picture.file = prefix + picture.file;
      if (!picture.profile.empty()) picture.profile = prefix + picture.profile;
    }
  };
  if (!command.pictures) {
    name_from_description(book);
    return Drafted{std::move(book)};
  }
  RunOptions run;
  auto files = files_in(*command.pictures);
  if (!files) return files.fault();
  run.masters = std::move(files).value();
  Checked checked = check_book(std::move(book), built_in_press_sheet(), run);
  name_from_description(checked.evidence.book);
  BookOfMasters made = with_masters(checked.evidence, *command.pictures, beside);
  return Drafted{std::move(made.book), fmt::format("Files behind     {} of {} pictures found in {}\n",
                                                   made.found, made.pictures, command.pictures->string())};
}

/// Removes what no picture of the book names; whether something is left.
bool keep_named(const std::filesystem::path &folder, const Book &book, const std::string &prefix) {
  std::set<std::string> named;
  for (const Picture &picture : book.pictures) named.insert({picture.file, picture.profile});
  std::vector<std::filesystem::path> others;
  bool left = false;
  for (const auto &entry : std::filesystem::directory_iterator(folder))
    if (named.contains(prefix + entry.path().filename().string()))
      left = true;
    else
      others.push_back(entry.path());
  std::error_code ignored;
  for (const auto &file : others) std::filesystem::remove(file, ignored);
  return left;
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

  auto book = drafted(command, folder.value().path());
  if (!book) return refuse(book.fault(), ExitStatus::unreadable_input);
  const std::string prefix = pictures.filename().string() + "/";
  auto made = with_files(command, std::move(book).value(), prefix, folder_of(description));
  if (!made) return refuse(made.fault(), ExitStatus::unreadable_input);
  const bool some_left = keep_named(folder.value().path(), made.value().book, prefix);
  Outcome<Done> written = some_left ? folder.value().keep_as(pictures) : Outcome<Done>(Done{});
  if (written) written = replace_file(description, book_text(made.value().book));
  if (!written) return refuse(written.fault(), ExitStatus::unwritable_output);
  return print_result(fmt::format("The description  {}\n{}{}", description.string(),
                                  some_left ? fmt::format("Its pictures     {}\n", pictures.string()) : "",
                                  made.value().found),
                      ExitStatus::clear);
}

} // namespace stoneproof::terminal
