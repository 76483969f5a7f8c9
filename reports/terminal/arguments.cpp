// The option table and its reading: the one file that includes CLI11. The only way in is parse_arguments;
// tested in tests/reports/terminal. All messages are worded here, so that they do not change with the version
// of CLI11.
#include "reports/terminal/arguments.h"

#include "engine/xml/characters.h"
#include "engine/xml/did_you_mean.h"
#include "reports/terminal/help.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace stoneproof::terminal {

namespace {

constexpr std::int64_t most_jobs = 256;
constexpr std::int64_t most_pixels =
    1'000'000'000'000; // a square of a million: beyond every picture format here
constexpr std::int64_t most_megabytes = 1'000'000;
constexpr std::int64_t megabyte = 1'000'000;
constexpr std::int64_t most_ratio = 1'000'000'000, most_seconds = 100'000;
constexpr std::int64_t usual_memory_together = 1000 * megabyte;

/// The options as written; numbers are read afterwards.
struct Written {
  std::string book, rule;
  std::vector<std::string> pictures, records;

  std::string password;
  std::optional<std::string> out, record, since, marks, cover_marks, annotate, originals, binding, folder,
      csv, press, jobs;
  std::optional<std::string> most_pixels, most_memory, memory_together, most_expansion, most_seconds;
  bool json = false, quick = false;
};

void add_text(CLI::App &verb, const char *name, std::optional<std::string> &value, const char *kind,
              std::string says) {
  verb.add_option(name, value, std::move(says))->type_name(kind)->take_last();
}

void add_press(CLI::App &verb, Written &written) {
  add_text(verb, "--press", written.press, "SHEET",
           "the printer's requirements (else the built-in press sheet)");
}

/// Whose requirements, and how pictures are read.
void add_measuring(CLI::App &verb, Written &written) {
  add_press(verb, written);
  if (verb.get_name() != "letters")
    verb.add_flag("--json", written.json,
                  fmt::format("print {}", verb.get_name() == "proof" ? "the record instead of the summary"
                                                                     : "the figures as JSON"));
  verb.add_flag("--quick", written.quick, "do not measure tones and inks: faster");
  add_text(verb, "--jobs", written.jobs, "N",
           fmt::format("threads, 1 to {} (else one for each processor)", most_jobs));
}

/// What a picture may ask of the machine.
void add_limits(CLI::App &verb, Written &written) {
  const PictureLimits limits;
  add_text(verb, "--most-pixels", written.most_pixels, "N",
           fmt::format("refuse pictures with more pixels than this (else {})", limits.most_pixels));
  add_text(verb, "--most-memory", written.most_memory, "MB",
           fmt::format("refuse pictures that take more memory to decode (else {})",
                       limits.most_memory / megabyte));
  add_text(verb, "--memory-together", written.memory_together, "MB",
           fmt::format("hold pictures back while others use this much (else {})",
                       usual_memory_together / megabyte));
  add_text(verb, "--most-expansion", written.most_expansion, "N",
           fmt::format("refuse what packs over 256 MB of pixels tighter than N to 1 (else {})",
                       limits.most_expansion));
  add_text(verb, "--most-seconds", written.most_seconds, "N",
           fmt::format("refuse pictures that take longer to decode (else {})", limits.most_time.count()));
}

void add_pdf_options(CLI::App &verb, Written &written) {
  verb.add_option("--password", written.password, "of a finished PDF that asks for one")
      ->type_name("WORD")
      ->take_last();
  add_text(verb, "--binding", written.binding, "KIND",
           "of a finished PDF: saddle, perfect, case, spiral or layflat (else perfect)");
}

void add_proof(CLI::App &app, Written &written) {
  CLI::App *verb = app.add_subcommand("proof");
  verb->add_option("BOOK", written.book);
  add_text(*verb, "--out", written.out, "FILE", "where the proof goes (else BOOK.proof.pdf, beside BOOK)");
  add_text(*verb, "--record", written.record, "FILE",
           "where the record goes (else BOOK.record.json, beside BOOK)");
  add_text(*verb, "--since", written.since, "RECORD",
           "the last round's record: tells what is new and mended");
  add_text(*verb, "--marks", written.marks, "FILE",
           "writes the findings as XFDF, to lay on the finished PDF of the pages");
  add_text(*verb, "--cover-marks", written.cover_marks, "FILE",
           "the same for the finished PDF of the cover (else --marks notes what concerns it on page 1)");
  add_text(*verb, "--pictures", written.originals, "FOLDER",
           "looks there for the files that the pictures of a finished PDF were made from");
  add_text(*verb, "--annotate", written.annotate, "FILE",
           "writes a copy of the finished PDF that has the findings as notes");
  add_pdf_options(*verb, written);
  add_measuring(*verb, written);
  add_limits(*verb, written);
}

void add_letters(CLI::App &app, Written &written) {
  CLI::App *verb = app.add_subcommand("letters");
  verb->add_option("BOOK", written.book);
  add_text(*verb, "--dir", written.folder, "FOLDER", "where the letters go (else BOOK.letters, beside BOOK)");
  add_text(*verb, "--csv", written.csv, "FILE", "writes what the letters ask for as a table");
  add_measuring(*verb, written);
  add_limits(*verb, written);
}

void add_plan(CLI::App &app, Written &written) {
  CLI::App *verb = app.add_subcommand("plan");
  verb->add_option("BOOK", written.book);
  add_text(*verb, "--out", written.out, "FILE", "where the plan goes (else BOOK.plan.pdf, beside BOOK)");
  add_text(*verb, "--csv", written.csv, "FILE", "where its table goes (else BOOK.plan.csv, beside BOOK)");
  add_press(*verb, written);
}

void add_draft(CLI::App &app, Written &written) {
  CLI::App *verb = app.add_subcommand("draft");
  verb->add_option("PDF", written.book);
  add_text(*verb, "--out", written.out, "FILE", "where the description goes (else PDF.xml, beside PDF)");
  add_text(*verb, "--pictures", written.originals, "FOLDER",
           "the files the pictures were made from take their place");
  add_pdf_options(*verb, written);
}

void add_measure(CLI::App &app, Written &written) {
  CLI::App *verb = app.add_subcommand("measure");
  verb->add_option("PICTURE", written.pictures);
  add_measuring(*verb, written);
  add_limits(*verb, written);
}

/// The verbs in the order in which help shows them.
void add_verbs(CLI::App &app, Written &written) {
  app.set_help_flag("--help,-h", "show this help");
  app.set_version_flag("--version", STONEPROOF_VERSION, "show the version");
  add_proof(app, written);
  add_letters(app, written);
  add_plan(app, written);
  add_draft(app, written);
  add_measure(app, written);
  app.add_subcommand("compare")->add_option("RECORD", written.records);
  app.add_subcommand("press");
  app.add_subcommand("explain")->add_option("RULE", written.rule);
}

std::string option_name(const CLI::Option &option) { return "--" + option.get_lnames().front(); }

std::vector<const CLI::Option *> named_options(const CLI::App &verb) {
  std::vector<const CLI::Option *> named;
  for (const CLI::Option *option : verb.get_options())
    if (!option->get_lnames().empty()) named.push_back(option);
  return named;
}

const CLI::App &verb_of(const CLI::App &app) {
  const auto parsed = app.get_subcommands();
  return parsed.empty() ? app : *parsed.front();
}

ShowCommand help_of(const CLI::App &verb) {
  std::vector<HelpRow> rows;
  for (const CLI::Option *option : named_options(verb)) {
    const bool takes_value = option->get_expected_min() > 0;
    rows.push_back({option_name(*option) + (takes_value ? " " + option->get_type_name() : std::string()),
                    option->get_description()});
  }
  return {help_text(verb.get_name(), rows)};
}

Fault no_verb(const std::string &word) {
  return command_fault("there is no verb " + in_quotes(word) + suggestion(word, verb_names()), "");
}

/// What nothing on the command line was meant for.
Fault unexpected(const CLI::App &app) {
  std::vector<std::string> words = app.remaining(true);
  words.erase(std::remove(words.begin(), words.end(), "--"), words.end());
  const std::string word = words.empty() ? std::string() : words.front();
  const CLI::App &verb = verb_of(app);
  if (word.size() > 1 && word.front() == '-') {
    const std::string name = word.substr(0, word.find('='));
    std::vector<std::string> names;
    for (const CLI::Option *option : named_options(verb)) names.push_back(option_name(*option));
    return command_fault("there is no option " + in_quotes(name) +
                             suggestion(name, std::vector<std::string_view>(names.begin(), names.end())),
                         verb.get_name());
  }
  if (&verb == &app) return no_verb(word);
  return command_fault("nothing is expected at " + in_quotes(word), verb.get_name());
}

Fault value_missing(const CLI::App &verb, const CLI::Option &option) {
  return command_fault(fmt::format("{} wants a value: {}", option_name(option), option.get_type_name()),
                       verb.get_name());
}

/// An option at the end of the line that lacks its value, or anything else that CLI11 refuses.
Fault refused(const CLI::App &app, const std::vector<std::string> &arguments, const CLI::ParseError &error) {
  const CLI::App &verb = verb_of(app);
  const std::string last = arguments.empty() ? std::string() : arguments.back();
  for (const CLI::Option *option : named_options(verb))
    if (last == option_name(*option) || last == option_name(*option) + "=")
      return value_missing(verb, *option);
  return command_fault(printable(error.what()), verb.get_name());
}

/// An option in the place of another's value is a value forgotten, hardly a file of that name.
std::optional<Fault> forgotten_value(const CLI::App &verb) {
  const auto options = named_options(verb);
  for (const CLI::Option *option : options) {
    if (option->get_expected_min() == 0 || option->count() == 0) continue;
    const std::string value = option->results().back();
    const bool swallowed = std::any_of(options.begin(), options.end(), [&](const CLI::Option *other) {
      return value == option_name(*other);
    });
    if (value.empty() || swallowed) return value_missing(verb, *option);
  }
  return std::nullopt;
}

/// Sets `number` where the option was given; a Fault where it is no whole number from 1 to `most`.
template <class Number>
std::optional<Fault> read_number(const std::string &verb, std::string_view name,
                                 const std::optional<std::string> &text, std::int64_t most, Number &number,
                                 std::int64_t unit = 1) {
  if (!text) return std::nullopt;
  std::int64_t value = 0;
  const char *end = text->data() + text->size();
  const auto [stopped, error] = std::from_chars(text->data(), end, value);
  if (error != std::errc() || stopped != end || value < 1 || value > most)
    return command_fault(
        fmt::format("{} wants a whole number from 1 to {}, not {}", name, most, in_quotes(*text)), verb);
  number = static_cast<Number>(value * unit);
  return std::nullopt;
}

/// How pictures are read, for the verbs that read them.
std::optional<Fault> read_measuring(const std::string &verb, const Written &written,
                                    MeasureOptions &options) {
  PictureLimits &limits = options.limits;
  std::int64_t together = usual_memory_together, seconds = limits.most_time.count();
  for (auto fault :
       {read_number(verb, "--jobs", written.jobs, most_jobs, options.jobs),
        read_number(verb, "--most-pixels", written.most_pixels, most_pixels, limits.most_pixels),
        read_number(verb, "--most-memory", written.most_memory, most_megabytes, limits.most_memory, megabyte),
        read_number(verb, "--memory-together", written.memory_together, most_megabytes, together, megabyte),
        read_number(verb, "--most-expansion", written.most_expansion, most_ratio, limits.most_expansion),
        read_number(verb, "--most-seconds", written.most_seconds, most_seconds, seconds)})
    if (fault) return fault;
  limits.most_time = std::chrono::seconds(seconds);
  limits.budget = std::make_shared<MemoryBudget>(static_cast<std::uint64_t>(together));
  options.press = written.press;
  options.quick = written.quick;
  options.json = written.json;
  return std::nullopt;
}

std::optional<Fault> read_binding(const std::string &verb, const Written &written, PdfOptions &pdf) {
  if (!written.binding) return std::nullopt;
  for (const auto &[kind, word] : binding_words)
    if (word == *written.binding) {
      pdf.binding = kind;
      pdf.binding_named = true;
      return std::nullopt;
    }
  return command_fault(fmt::format("--binding wants saddle, perfect, case, spiral or layflat, not {}",
                                   in_quotes(*written.binding)),
                       verb);
}

Outcome<Command> proof_command(const Written &written) {
  if (written.book.empty()) return command_fault("the BOOK to check is missing", "proof");
  ProofCommand command;
  command.book = written.book;
  command.out = written.out;
  command.record = written.record;
  command.since = written.since;
  command.marks = written.marks;
  command.cover_marks = written.cover_marks;
  command.annotate = written.annotate;
  command.pictures = written.originals;
  command.pdf.password = written.password;
  if (const auto fault = read_binding("proof", written, command.pdf)) return *fault;
  if (const auto fault = read_measuring("proof", written, command.options)) return *fault;
  return Command(command);
}

Outcome<Command> letters_command(const Written &written) {
  if (written.book.empty()) return command_fault("the BOOK to write letters for is missing", "letters");
  LettersCommand command;
  command.book = written.book;
  command.folder = written.folder;
  command.csv = written.csv;
  if (const auto fault = read_measuring("letters", written, command.options)) return *fault;
  return Command(command);
}

Outcome<Command> plan_command(const Written &written) {
  if (written.book.empty()) return command_fault("the BOOK to plan for is missing", "plan");
  return Command(PlanCommand{written.book, written.out, written.csv, written.press});
}

Outcome<Command> draft_command(const Written &written) {
  if (written.book.empty()) return command_fault("the PDF to describe is missing", "draft");
  DraftCommand command{written.book, written.out, written.originals, {written.password}};
  if (const auto fault = read_binding("draft", written, command.options)) return *fault;
  return Command(command);
}

Outcome<Command> measure_command(const Written &written) {
  const auto &pictures = written.pictures;
  if (pictures.empty() || std::find(pictures.begin(), pictures.end(), "") != pictures.end())
    return command_fault("a PICTURE to measure is missing", "measure");
  MeasureCommand command;
  command.pictures.assign(pictures.begin(), pictures.end());
  if (const auto fault = read_measuring("measure", written, command.options)) return *fault;
  return Command(command);
}

Outcome<Command> compare_command(const Written &written) {
  const auto &records = written.records;
  if (records.size() < 2 || records[0].empty() || records[1].empty())
    return command_fault("two RECORDs to compare are wanted, the earlier one first", "compare");
  if (records.size() > 2) return command_fault("nothing is expected at " + in_quotes(records[2]), "compare");
  return Command(CompareCommand{records[0], records[1]});
}

Outcome<Command> command_of(const CLI::App &app, const Written &written) {
  const CLI::App &verb = verb_of(app);
  if (const auto fault = forgotten_value(verb)) return *fault;
  if (verb.get_name() == "proof") return proof_command(written);
  if (verb.get_name() == "letters") return letters_command(written);
  if (verb.get_name() == "plan") return plan_command(written);
  if (verb.get_name() == "draft") return draft_command(written);
  if (verb.get_name() == "measure") return measure_command(written);
  if (verb.get_name() == "compare") return compare_command(written);
  if (verb.get_name() == "press") return Command(PressCommand{});
  if (verb.get_name() == "explain")
    return Command(ExplainCommand{written.rule.empty() ? std::nullopt : std::optional(written.rule)});
  return command_fault("a verb is missing", "");
}

/// "help proof" as "proof --help".
Outcome<std::vector<std::string>> with_help_as_option(std::vector<std::string> arguments) {
  if (arguments.empty() || arguments.front() != "help") return arguments;
  arguments.erase(arguments.begin());
  const auto names = verb_names();
  if (!arguments.empty() && arguments.front().rfind('-', 0) != 0 &&
      std::find(names.begin(), names.end(), arguments.front()) == names.end())
    return no_verb(arguments.front());
  arguments.push_back("--help");
  return arguments;
}

} // namespace

Fault command_fault(std::string what, std::string verb) {
  return {std::move(what), "stoneproof",
          fmt::format("Run stoneproof {}{}--help to see how it is used.", verb, verb.empty() ? "" : " ")};
}

Outcome<Command> parse_arguments(std::vector<std::string> words) {
  const auto understood = with_help_as_option(std::move(words));
  if (!understood) return understood.fault();
  const std::vector<std::string> &arguments = understood.value();
  CLI::App app;
  Written written;
  add_verbs(app, written);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
    return command_of(app, written);
  } catch (const CLI::CallForHelp &) {
    return Command(help_of(verb_of(app)));
  } catch (const CLI::CallForVersion &) {
    return Command(ShowCommand{"stoneproof " STONEPROOF_VERSION "\n"});
  } catch (const CLI::ExtrasError &) {
    return unexpected(app);
  } catch (const CLI::ParseError &error) {
    return refused(app, arguments, error);
  }
}

} // namespace stoneproof::terminal
