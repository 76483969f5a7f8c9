// Help, examples first. The only ways in are the functions of help.h; tested in tests/reports/terminal.
#include "reports/terminal/help.h"

#include "reports/terminal/wrap.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace stoneproof::terminal {

namespace {

struct Example {
  std::string_view command, does;
};

struct VerbHelp {
  std::string_view verb, usage, does;
  std::vector<Example> examples;
  std::string_view more; ///< a paragraph, already wrapped, or empty
};

constexpr std::string_view proof_more =
    "The summary goes to standard output, or with --json the record. The same inputs give the same bytes; "
    "SOURCE_DATE_EPOCH, in seconds since 1970, puts a date into proof and record. Inputs are never changed: "
    "an "
    "output that would replace one is refused. Exit status: 0 the book is clear, 1 it has a hold, 2 the "
    "command "
    "line is wrong, 3 the description or the press sheet could not be read, 4 an output could not be "
    "written.";

constexpr std::string_view letters_more =
    "Each contributor gets a PDF with the pictures that need something, and for each the one thing to do, in "
    "their language (English and German). Who has nothing to do gets none. What is for the book maker to "
    "mend "
    "stands in no letter: see the proof. The folder is made if need be. Exit status: 0 the letters are "
    "written, or none was needed, 2 the command line is wrong, 3 the description or the press sheet could "
    "not "
    "be read, 4 a letter could not be written.";

constexpr std::string_view plan_more =
    "Needs no scans: the setting for each original comes from its size and from its frames. Picture files "
    "that are there already are looked at, never changed: what has pixels enough need not be scanned. The "
    "plan is a PDF to work through, pile by pile; its table is CSV in UTF-8. Exit status: 0 the plan is "
    "written, also where it tells of originals that no scan makes good enough, 2 the command line is wrong, "
    "3 the description or the press sheet could not be read, 4 an output could not be written.";

constexpr std::string_view draft_more =
    "The description holds every picture with its place, crop, turn and mirror, every text with its size, "
    "and what the "
    "PDF tells of itself. No PDF tells how it will be bound: without --binding it is taken for perfect "
    "bound; correct that in the description if it is another. Add contributors, originals and safe margin, "
    "then check it with "
    "stoneproof proof. With --pictures the files that the pictures were surely made from take their place, "
    "each with the crop that the PDF shows, and the folders in FOLDER become contributors. JPEG pictures "
    "are written as the PDF holds them, others as TIFF. The PDF is never "
    "changed. Exit "
    "status: 0 both are written, 2 the command line is wrong, 3 the PDF could not be read, 4 an output could "
    "not "
    "be written.";

constexpr std::string_view measure_more =
    "Tells of each file how it is stored, its tones and inks, and how large it prints well: at the wanted "
    "and "
    "at the least density of the press sheet, and filling the usual papers. Name files, not folders; they "
    "are never changed. Exit status: 0 all were measured, 2 the command line is wrong, 3 a picture or the "
    "press sheet could not be read (the other pictures are still told of).";

constexpr std::string_view compare_more =
    "The earlier record first. A finding stands where the same rule speaks of the same frame, picture or "
    "words, "
    "though pages were renumbered and frames moved. Exit status: 0 the later record is clear, 1 it has a "
    "hold, 2 "
    "the command line is wrong, 3 a record could not be read, or they are of two books.";

const std::array<VerbHelp, 8> &verbs() {
  static const std::array<VerbHelp, 8> table = {{
      {"proof",
       "stoneproof proof BOOK [options]",
       "checks a book, writes its proof and its record",
       {{"stoneproof proof album.xml", "writes album.proof.pdf and album.record.json"},
        {"stoneproof proof album.pdf", "the same for the finished PDF, without a description"},
        {"stoneproof proof album.xml --press printer.xml", "checks against the printer's own requirements"},
        {"stoneproof proof album.xml --since round1.json", "tells what changed since that round"},
        {"stoneproof proof album.xml --marks album.xfdf", "writes the findings for the finished PDF too"},
        {"stoneproof proof album.xml --out /tmp/proof.pdf --json", "writes there, prints the record"}},
       proof_more},
      {"letters",
       "stoneproof letters BOOK [options]",
       "writes each contributor what to do for which picture",
       {{"stoneproof letters album.xml", "writes into album.letters, one PDF a contributor"},
        {"stoneproof letters album.xml --dir /tmp/post", "writes there"},
        {"stoneproof letters album.xml --csv rescans.csv", "writes the whole list as a table too"},
        {"stoneproof letters album.xml --press printer.xml", "by the printer's own requirements"}},
       letters_more},
      {"plan",
       "stoneproof plan BOOK [options]",
       "tells how to scan each original, before any scan exists",
       {{"stoneproof plan album.xml", "writes album.plan.pdf and album.plan.csv"},
        {"stoneproof plan album.xml --press printer.xml", "for the printer's own requirements"},
        {"stoneproof plan album.xml --out /tmp/plan.pdf --csv /tmp/plan.csv", "writes there"}},
       plan_more},
      {"draft",
       "stoneproof draft PDF [options]",
       "describes a finished PDF, writes its pictures out",
       {{"stoneproof draft album.pdf", "writes album.xml and the folder “album pictures”"},
        {"stoneproof draft album.pdf --pictures scans",
         "the same with the files in scans, a folder for each contributor"},
        {"stoneproof draft album.pdf --out /tmp/album.xml", "writes there"}},
       draft_more},
      {"measure",
       "stoneproof measure PICTURE... [options]",
       "tells what picture files are good for, without a book",
       {{"stoneproof measure scans/*.tif", "tells how large each can be printed"},
        {"stoneproof measure wedding.jpg --press printer.xml", "by the printer's own requirements"},
        {"stoneproof measure scans/*.tif --json > scans.json", "every figure, for a program"}},
       measure_more},
      {"compare",
       "stoneproof compare EARLIER LATER",
       "tells what is new, standing and mended between two rounds",
       {{"stoneproof compare round1.record.json album.record.json", "what came of the rescans"}},
       compare_more},
      {"press",
       "stoneproof press",
       "prints the built-in press sheet, commented, ready to edit",
       {{"stoneproof press > printer.xml", "a press sheet to put the printer's values into"}},
       ""},
      {"explain",
       "stoneproof explain [RULE]",
       "says why a rule exists, what it measures, how to mend it",
       {{"stoneproof explain", "lists the rules"}, {"stoneproof explain too-few-pixels", "explains one"}},
       ""},
  }};
  return table;
}

std::string examples_text(const std::vector<Example> &examples) {
  std::string text = "Examples\n";
  for (const Example &example : examples)
    text += fmt::format("  {}\n      {}\n", example.command, example.does);
  return text;
}

/// What an option does stands beside it, or below it where its name is long.
std::string options_text(const std::vector<HelpRow> &options) {
  constexpr int name_width = 17, beside = 2 + name_width + 1;
  std::string text = "Options\n";
  for (const HelpRow &row : options) {
    std::string before = fmt::format("  {:<{}} ", row.option, name_width);
    if (before.size() > beside) {
      text += fmt::format("  {}\n", row.option);
      before.assign(beside, ' ');
    }
    for (const std::string &line : wrapped(row.does, usual_width - beside)) {
      text += before + line + "\n";
      before.assign(beside, ' ');
    }
  }
  return text;
}

std::string program_help(const std::vector<HelpRow> &options) {
  std::vector<Example> examples;
  for (const VerbHelp &verb : verbs()) examples.push_back(verb.examples.front());
  std::string text = "stoneproof VERB [options]\n\n" + examples_text(examples) + "\nVerbs\n";
  for (const VerbHelp &verb : verbs()) text += fmt::format("  {:<17} {}\n", verb.verb, verb.does);
  text += "\n" + options_text(options) + "\nstoneproof VERB --help tells more.\n";
  return text;
}

} // namespace

std::string help_text(std::string_view name, const std::vector<HelpRow> &options) {
  const auto found =
      std::find_if(verbs().begin(), verbs().end(), [&](const VerbHelp &verb) { return verb.verb == name; });
  if (found == verbs().end()) return program_help(options);
  std::string text = fmt::format("{}\n  {}\n\n", found->usage, found->does);
  text += examples_text(found->examples) + "\n" + options_text(options);
  if (!found->more.empty()) text += "\n" + wrapped_text(found->more, usual_width);
  return text;
}

std::vector<std::string_view> verb_names() {
  std::vector<std::string_view> names;
  for (const VerbHelp &verb : verbs()) names.push_back(verb.verb);
  return names;
}

} // namespace stoneproof::terminal
