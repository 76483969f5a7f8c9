// The program: a command line in, an exit status out.
#include "engine/press/read.h"
#include "reports/terminal/arguments.h"
#include "reports/terminal/compare_verb.h"
#include "reports/terminal/console.h"
#include "reports/terminal/draft_verb.h"
#include "reports/terminal/explain.h"
#include "reports/terminal/letters_verb.h"
#include "reports/terminal/measure_verb.h"
#include "reports/terminal/plan_verb.h"
#include "reports/terminal/proof_verb.h"

#include <exception>
#include <new>

using namespace stoneproof;
using namespace stoneproof::terminal;

namespace {

struct Run {
  ExitStatus operator()(const ProofCommand &command) const { return run_proof(command); }
  ExitStatus operator()(const LettersCommand &command) const { return run_letters(command); }
  ExitStatus operator()(const PlanCommand &command) const { return run_plan(command); }
  ExitStatus operator()(const DraftCommand &command) const { return run_draft(command); }
  ExitStatus operator()(const MeasureCommand &command) const { return run_measure(command); }
  ExitStatus operator()(const CompareCommand &command) const { return run_compare(command); }
  ExitStatus operator()(const PressCommand &) const {
    return print_result(built_in_press_sheet_text(), ExitStatus::clear);
  }
  ExitStatus operator()(const ExplainCommand &command) const {
    if (!command.rule) return print_result(rule_list(), ExitStatus::clear);
    const auto text = rule_text(*command.rule, look_at_console().width);
    return text ? print_result(text.value(), ExitStatus::clear)
                : refuse(text.fault(), ExitStatus::wrong_command);
  }
  ExitStatus operator()(const ShowCommand &command) const {
    return print_result(command.text, ExitStatus::clear);
  }
};

ExitStatus run(int count, char **arguments) {
  const auto command = parse_arguments({arguments + (count > 0 ? 1 : 0), arguments + count});
  return command ? std::visit(Run{}, command.value()) : refuse(command.fault(), ExitStatus::wrong_command);
}

} // namespace

int main(int count, char **arguments) {
  try {
    return static_cast<int>(run(count, arguments));
  } catch (const std::bad_alloc &) {
    return static_cast<int>(
        refuse({"memory has run out", "stoneproof", "Free some memory, or use fewer --jobs."},
               ExitStatus::unreadable_input));
  } catch (const std::exception
               &stopped) { // faults of inputs and outputs are no exceptions: this is a defect of ours
    return static_cast<int>(
        refuse({stopped.what(), "stoneproof", "Please report this with the command you gave."},
               ExitStatus::unreadable_input));
  }
}
