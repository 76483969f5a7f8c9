// What the command line can ask for.
#pragma once

#include "engine/book/book.h"
#include "engine/picture/facts.h"

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace stoneproof::terminal {

/// How pictures are read, and by whose requirements.
struct MeasureOptions {
  std::optional<std::filesystem::path> press; ///< none: the built-in press sheet
  int jobs = 0;                               ///< threads; 0: one for each processor
  PictureLimits limits;
  bool quick = false; ///< no pixels are measured
  bool json = false;  ///< JSON instead of words on standard output: the record, or the figures of `measure`
};

/// What a finished PDF does not tell of itself.
struct PdfOptions {
  std::string password; ///< empty: none
  BindingKind binding = BindingKind::perfect;
  bool binding_named = false; ///< else that is a guess
};

/// Check a book, write its proof and its record.
struct ProofCommand {
  std::filesystem::path book;                       ///< the description, or the finished PDF
  std::optional<std::filesystem::path> out, record; ///< none: beside the description, named after it
  std::optional<std::filesystem::path> since;       ///< the record of the last round
  /// Marks for the finished PDF of the block, and of the cover; none: not written.
  std::optional<std::filesystem::path> marks, cover_marks;
  std::optional<std::filesystem::path> pictures; ///< folder of the files that the PDF was made from
  std::optional<std::filesystem::path> annotate; ///< a copy of the finished PDF with the findings in it
  PdfOptions pdf;
  MeasureOptions options;
};

/// Plan the scans of a book, write the plan and its table.
struct PlanCommand {
  std::filesystem::path book;                    ///< the description
  std::optional<std::filesystem::path> out, csv; ///< none: beside the description, named after it
  std::optional<std::filesystem::path> press;    ///< none: the built-in press sheet
};

/// Check a book, write a letter for each contributor who has something to do.
struct LettersCommand {
  std::filesystem::path book;                  ///< the description
  std::optional<std::filesystem::path> folder; ///< none: beside the description, named after it
  std::optional<std::filesystem::path> csv;    ///< the list of what is asked for; none: not written
  MeasureOptions options;                      ///< without `json`
};

/// Describe a finished PDF, write its pictures out.
struct DraftCommand {
  std::filesystem::path pdf;
  std::optional<std::filesystem::path> out;      ///< the description; none: beside the PDF, named after it
  std::optional<std::filesystem::path> pictures; ///< folder of the files that the PDF was made from
  PdfOptions options;
};

/// Tell what picture files are good for.
struct MeasureCommand {
  std::vector<std::filesystem::path> pictures; ///< at least one
  MeasureOptions options;
};

/// Set two rounds side by side.
struct CompareCommand {
  std::filesystem::path before, now; ///< their records
};

/// Print the built-in press sheet.
struct PressCommand {};

/// Print one rule's explanation, or the list of rules.
struct ExplainCommand {
  std::optional<std::string> rule;
};

/// Print a text: help or the version.
struct ShowCommand {
  std::string text;
};

using Command = std::variant<ProofCommand, LettersCommand, PlanCommand, DraftCommand, MeasureCommand,
                             CompareCommand, PressCommand, ExplainCommand, ShowCommand>;

} // namespace stoneproof::terminal
