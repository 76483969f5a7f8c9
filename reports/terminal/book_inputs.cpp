// Description, press sheet and fonts. The only ways in are the functions of book_inputs.h; tested in
// tests/reports/terminal.
#include "reports/terminal/book_inputs.h"

#include "engine/import/draft.h"
#include "engine/import/pdf_file.h"
#include "engine/picture/facts.h"

#include <algorithm>
#include <fstream>
#include <utility>

namespace stoneproof::terminal {

namespace {

/// Every word of the book that our documents may set.
std::string words_of(const Book &book) {
  std::string words = book.title;
  for (const Contributor &contributor : book.contributors) words += contributor.name + contributor.contact;
  for (const Picture &picture : book.pictures) words += picture.id + picture.file;
  for (const Page &page : book.pages) {
    for (const Frame &frame : page.frames) words += frame.id;
    for (const TextBlock &text : page.texts) words += text.text;
  }
  return words;
}

/// Of its plain letters.
std::string lower_case(std::string text) {
  std::ranges::transform(text, text.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? c + 32 : c; });
  return text;
}

Reading<Book> unread(Fault fault) { return {std::nullopt, {{std::move(fault), {}, 0}}}; }

/// A finished PDF by way of its description. Its pictures are put into `pictures`.
Reading<Book> read_pdf(const std::filesystem::path &file, const PdfOptions &pdf,
                       std::shared_ptr<TemporaryFolder> &pictures) {
  auto folder = TemporaryFolder::make(std::filesystem::temp_directory_path());
  if (!folder) return unread(folder.fault());
  pictures = std::make_shared<TemporaryFolder>(std::move(folder).value());
  auto text =
      finished::draft_book({file, pdf.password, pictures->path(), pdf.binding}, finished::bounds_for(file));
  if (!text) return unread(text.fault());
  Reading<Book> book = parse_book(SourceText(file.string(), std::move(text).value()));
  if (!book) return book;
  book.value->pictures_in = pictures->path();
  if (book.value->print_file) book.value->print_file->binding_guessed = !pdf.binding_named;
  return book;
}

/// In lower case, of the file that the name leads to.
std::string ending_of(const std::filesystem::path &file) {
  std::error_code ignored;
  return lower_case(std::filesystem::canonical(file, ignored).extension().string());
}

/// None where the file cannot be opened, which reading it tells of.
std::optional<std::string> beginning_of(const std::filesystem::path &file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) return std::nullopt;
  std::string head(1024, '\0');
  stream.read(head.data(), static_cast<std::streamsize>(head.size()));
  head.resize(static_cast<std::size_t>(stream.gcount()));
  return head;
}

/// "album pictures" beside album.xml.
bool is_of_draft(const std::filesystem::path &folder) {
  constexpr std::string_view ending = " pictures";
  const std::string name = folder.filename().string();
  if (!name.ends_with(ending)) return false;
  std::error_code ignored;
  const std::string description = name.substr(0, name.size() - ending.size()) + ".xml";
  return std::filesystem::exists(folder.parent_path() / description, ignored);
}

Reading<Book> read_any(const std::filesystem::path &file, const PdfOptions &pdf,
                       std::shared_ptr<TemporaryFolder> &pictures) {
  if (finished::is_pdf(file)) return read_pdf(file, pdf, pictures);
  if (auto fault = neither_book(file)) return unread(std::move(*fault));
  return read_book(file);
}

} // namespace

std::optional<Fault> neither_book(const std::filesystem::path &file) {
  std::error_code ignored;
  const std::string ending = ending_of(file);
  const auto fault = [&](std::string what, std::string remedy) {
    return Fault{std::move(what), file.string(), std::move(remedy)};
  };
  if (std::filesystem::is_directory(file, ignored) && ending != ".xml")
    return fault("this is a folder, not a file",
                 "Name the finished PDF, or the description of the book, inside the folder.");
  if (!std::filesystem::is_regular_file(file, ignored)) return std::nullopt;
  const auto head = beginning_of(file);
  if (!head) return std::nullopt;
  const std::string lower = lower_case(*head);
  if (head->empty() && ending == ".pdf")
    return fault("the file is empty", "Export it anew from the layout program, or copy it again.");
  if (read_facts(file))
    return fault("this is a picture, not a book",
                 "Name the finished PDF or the description of the book; stoneproof measure tells what a "
                 "picture is good for.");
  if (lower.find("<html") != std::string::npos || lower.find("<!doctype html") != std::string::npos)
    return fault("this is a web page, not a book",
                 "Download the PDF itself anew; the page, in a browser, may tell why it did not come.");
  if (head->rfind("PK\x03\x04", 0) == 0)
    return fault("this is a document of a writing or layout program, or another packed file",
                 "Export it as a PDF, and name that.");
  if (ending == ".pdf")
    return fault("the file is not a PDF, whatever its name says",
                 "Export it anew from the layout program, or copy it again.");
  return std::nullopt;
}

Reading<BookInputs> read_inputs(const std::filesystem::path &book_file,
                                const std::optional<std::filesystem::path> &press_file,
                                const PdfOptions &pdf) {
  std::shared_ptr<TemporaryFolder> pictures;
  Reading<Book> book = read_any(book_file, pdf, pictures);
  Reading<PressSheet> press =
      press_file ? read_press_sheet(*press_file) : Reading<PressSheet>{built_in_press_sheet(), {}};
  Reading<BookInputs> inputs;
  inputs.faults = std::move(book.faults);
  inputs.faults.insert(inputs.faults.end(), press.faults.begin(), press.faults.end());
  if (!inputs.faults.empty()) return inputs;

  auto sha256 = sha256_of(book_file);
  auto typesetter = Typesetter::load(words_of(*book.value) + press.value->name, book.value->language);
  if (!sha256) inputs.faults.push_back({sha256.fault(), {}, 0});
  if (!typesetter) inputs.faults.push_back({typesetter.fault(), {}, 0});
  if (inputs.faults.empty())
    inputs.value = BookInputs{std::move(*book.value), std::move(sha256).value(), std::move(*press.value),
                              std::move(typesetter).value(), std::move(pictures)};
  return inputs;
}

std::vector<Input> files_read(const std::filesystem::path &book,
                              const std::optional<std::filesystem::path> &press, const BookInputs &inputs) {
  std::vector<Input> files = {{book, "the description of the book"}};
  if (press) files.push_back({*press, "the press sheet"});
  if (press && inputs.press.profile)
    files.push_back({press->parent_path() / inputs.press.profile->file, "the press's colour profile"});
  for (const Picture &picture : inputs.book.pictures)
    files.push_back({inputs.book.path_of(picture), "a picture of the book"});
  return files;
}

std::vector<Input> named_as(const std::vector<Output> &outputs,
                            const std::vector<std::filesystem::path> &files) {
  std::vector<Input> inputs;
  for (const auto &file : files) {
    const bool same_name = std::ranges::any_of(
        outputs, [&](const Output &output) { return output.file.filename() == file.filename(); });
    if (same_name && read_facts(file)) inputs.push_back({file, "a file behind a picture"});
  }
  return inputs;
}

Outcome<std::vector<std::filesystem::path>> files_in(const std::filesystem::path &folder) {
  std::vector<std::filesystem::path> files;
  std::error_code error;
  for (auto entry = std::filesystem::recursive_directory_iterator(
           folder, std::filesystem::directory_options::skip_permission_denied, error);
       !error && entry != std::filesystem::recursive_directory_iterator(); entry.increment(error)) {
    std::error_code ignored;
    if (entry->is_regular_file(ignored)) files.push_back(entry->path());
    if (is_of_draft(entry->path())) entry.disable_recursion_pending();
  }
  if (error) return Fault{"the folder cannot be read", folder.string(), "Name a folder of pictures."};
  std::sort(files.begin(), files.end());
  return files;
}

} // namespace stoneproof::terminal
