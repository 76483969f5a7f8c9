// From a description to its proof and its record. The only way in is run_proof; tested in
// tests/reports/terminal.
#include "reports/terminal/proof_verb.h"

#include "engine/import/pdf_file.h"
#include "engine/xml/characters.h"
#include "reports/content/print_words.h"
#include "reports/content/proof_content.h"
#include "reports/files/replace_file.h"
#include "reports/layout/picture_sheets.h"
#include "reports/layout/proof.h"
#include "reports/pdf/write_pdf.h"
#include "reports/record/marks.h"
#include "reports/record/read_record.h"
#include "reports/record/record.h"
#include "reports/terminal/annotations.h"
#include "reports/terminal/book_inputs.h"
#include "reports/terminal/checking.h"
#include "reports/terminal/console.h"
#include "reports/terminal/outputs.h"
#include "reports/terminal/source_date.h"
#include "reports/terminal/summary.h"

#include <fmt/format.h>

#include <utility>

namespace stoneproof::terminal {

namespace {

/// What is written beside the proof, as text.
struct Texts {
  std::string record, marks, cover_marks;
  std::vector<pdf::UserNote> notes; ///< for the copy of the finished PDF
};

/// The proof first: when it cannot be written, the record does not tell of it.
Outcome<Done> write_outputs(const ProofCommand &command, const ProofFiles &files, layout::Document document,
                            const Typesetter &typesetter, const Texts &texts, bool is_protected) {
  const bool own_pages = document.foreign_pages;
  Outcome<Done> written = write_pdf(std::move(document), typesetter, files.proof);
  if (written && own_pages)
    if (const auto put = pdf::put_own_pages(files.proof, {command.book, command.pdf.password}); !put)
      remark({"the pages are shown by their pictures alone: " + put.fault().what, put.fault().where,
              put.fault().remedy});
  if (written) written = replace_file(files.record, texts.record);
  if (written && files.marks) written = replace_file(*files.marks, texts.marks);
  if (written && files.cover_marks) written = replace_file(*files.cover_marks, texts.cover_marks);
  if (written && files.annotated)
    written = pdf::write_annotated({command.book, command.pdf.password}, texts.notes, *files.annotated);
  if (written && files.annotated && is_protected)
    remark({"the copy with notes is not protected by a password, as the PDF is", files.annotated->string(),
            "Keep it where only those come who may read the PDF."});
  return written;
}

Texts texts_of(const Checked &checked, const content::ProofContent &content, const ProofFiles &files,
               const std::string &book_sha256, std::optional<std::int64_t> made_at) {
  using record::FinishedFile;
  const bool apart = files.cover_marks.has_value();
  const auto marks = [&](FinishedFile file) {
    return record::marks_text(checked.evidence, checked.findings, {file, apart, made_at});
  };
  Texts texts;
  texts.record =
      record::record_text(checked.evidence, checked.findings, {STONEPROOF_VERSION, book_sha256, made_at});
  if (files.marks) texts.marks = marks(FinishedFile::block);
  if (apart) texts.cover_marks = marks(FinishedFile::cover);
  if (files.annotated) texts.notes = notes_on_pdf(checked.evidence, checked.findings, content, made_at);
  return texts;
}

ProofFiles files_of(const ProofCommand &command) {
  return {output_of(command.book, ".proof.pdf", command.out),
          output_of(command.book, ".record.json", command.record), command.marks, command.cover_marks,
          command.annotate};
}

std::vector<Output> outputs_of(const ProofFiles &files) {
  std::vector<Output> outputs = {{files.proof, "the proof"}, {files.record, "the record"}};
  if (files.marks) outputs.push_back({*files.marks, "the marks"});
  if (files.annotated) outputs.push_back({*files.annotated, "the copy with notes"});
  if (files.cover_marks) outputs.push_back({*files.cover_marks, "the marks of the cover"});
  return outputs;
}

/// An output that would replace something, or that there is nothing for.
std::optional<Fault> wrong_output(const ProofCommand &command, const BookInputs &inputs,
                                  const std::vector<Output> &outputs,
                                  const std::vector<std::filesystem::path> &masters) {
  auto files = files_read(command.book, command.options.press, inputs);
  if (command.since) files.push_back({*command.since, "the last round's record"});
  for (Input &file : named_as(outputs, masters)) files.push_back(std::move(file));
  if (const auto fault = clash(outputs, files)) return fault;
  if (command.annotate && !finished::is_pdf(command.book))
    return Fault{"there is no finished PDF to copy", command.book.string(),
                 "Name the finished PDF in place of the description, or use --marks."};
  if (command.pictures && !inputs.book.print_file)
    return Fault{"a description names its picture files itself", command.book.string(),
                 "Leave --pictures out, or name the finished PDF."};
  if (command.marks && finished::is_pdf(command.book))
    return Fault{"marks as XFDF are for books that are described", command.book.string(),
                 "Use --annotate, which writes the notes into a copy of the PDF."};
  if (!command.cover_marks || inputs.book.cover) return std::nullopt;
  return Fault{"the book describes no cover", command.book.string(),
               "Leave --cover-marks out, or describe the cover."};
}

/// What changed since the last round, where one is named.
Outcome<Done> tell_round_since(const std::optional<content::RecordedRound> &last, const std::string &record,
                               content::ProofContent &content) {
  if (!last) return Done{};
  const auto now = record::parse_record(record, "the record of this round");
  if (!now) return now.fault();
  content::tell_round(content, *last, now.value());
  return Done{};
}

/// The last round's record, if one is named.
Outcome<std::optional<content::RecordedRound>> last_round(const ProofCommand &command, const Book &book) {
  if (!command.since) return std::optional<content::RecordedRound>();
  auto last = record::read_record(*command.since);
  if (!last) return last.fault();
  content::RecordedRound now{book.title, false, {}, {}};
  for (const Page &page : book.pages)
    for (const Frame &frame : page.frames) now.frames.push_back(frame.id);
  if (!content::same_book(last.value(), now))
    return Fault{fmt::format("this is the record of another book, “{}”", printable(last.value().title)),
                 command.since->string(), "Name the record of an earlier round of this book."};
  return std::optional(std::move(last).value());
}

/// Of all that the proof is made from: the record tells the files, the rest what the options and the last
/// round add.
std::string fingerprint(const std::string &record, const content::ProofContent &content) {
  std::string inputs = record + content.job + content.round;
  for (const content::Mark &mark : content.marks) inputs += mark.fresh ? '1' : '0';
  for (const content::MendedMark &mark : content.mended)
    inputs += fmt::format("\n{}\n{}\n{}\n{}", mark.grade, mark.title, mark.page, mark.message);
  return sha256_of_text(inputs);
}

} // namespace

ExitStatus run_proof(const ProofCommand &command) {
  const Console console = look_at_console();
  const auto made_at = source_date();
  if (!made_at) return refuse(made_at.fault(), ExitStatus::wrong_command);
  Reading<BookInputs> read = read_inputs(command.book, command.options.press, command.pdf);
  if (!read) return refuse(read.faults, ExitStatus::unreadable_input);
  BookInputs &inputs = *read.value;

  const ProofFiles files = files_of(command);
  const std::vector<Output> outputs = outputs_of(files);
  const auto last = last_round(command, inputs.book);
  if (!last) return refuse(last.fault(), ExitStatus::unreadable_input);
  Outcome<std::vector<std::filesystem::path>> masters =
      command.pictures ? files_in(*command.pictures) : std::vector<std::filesystem::path>();
  if (!masters) return refuse(masters.fault(), ExitStatus::unreadable_input);
  if (const auto fault = wrong_output(command, inputs, outputs, masters.value()))
    return refuse(*fault, ExitStatus::wrong_command);
  if (const auto faults = obstacles(outputs); !faults.empty())
    return refuse(faults, ExitStatus::unwritable_output);

  const bool is_finished_pdf = finished::is_pdf(command.book);
  Checked checked =
      check_inputs(inputs, command.options,
                   {layout::copy_density(inputs.book), layout::true_size_patch,
                    command.pictures.value_or(std::filesystem::path()), std::move(masters).value()},
                   console.progress);
  auto content = content::proof_content(checked.evidence, checked.findings);
  if (command.pictures) content.masters = content::masters_line(checked.evidence);
  const Texts texts = texts_of(checked, content, files, inputs.book_sha256, made_at.value());
  if (const auto told = tell_round_since(last.value(), texts.record, content); !told)
    return refuse(told.fault(), ExitStatus::unreadable_input);

  const auto &print_file = checked.evidence.book.print_file;
  const bool is_protected = print_file && print_file->encrypted;
  auto document =
      layout::proof_document(content, std::move(checked), inputs.typesetter,
                             {fingerprint(texts.record, content), made_at.value(), is_finished_pdf});
  // Under the name that it has beside the book, so that where the record goes changes no byte of the proof.
  document.attachments.push_back({output_of(command.book, ".record.json", {}).filename().string(),
                                  "The record of this proof", "application/json", texts.record});
  if (const auto written =
          write_outputs(command, files, std::move(document), inputs.typesetter, texts, is_protected);
      !written)
    return refuse(written.fault(), ExitStatus::unwritable_output);

  const ExitStatus verdict = content.clear ? ExitStatus::clear : ExitStatus::held;
  return print_result(
      command.options.json ? texts.record : summary(content, files, console.width, console.bold), verdict);
}

} // namespace stoneproof::terminal
