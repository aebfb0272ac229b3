#include "climate/base/problem.hpp"
#include "planner/cli/command_line.hpp"
#include "planner/cli/problem_notes.hpp"
#include "planner/cli/run_account.hpp"
#include "planner/cli/run_backtest.hpp"
#include "planner/cli/run_climate.hpp"
#include "planner/cli/run_fetch.hpp"
#include "planner/cli/run_journal.hpp"
#include "planner/cli/run_learn.hpp"
#include "planner/cli/run_nights.hpp"
#include "planner/cli/run_plan.hpp"
#include "planner/cli/run_record.hpp"
#include "planner/cli/run_rules.hpp"
#include "planner/cli/run_seed_outlook.hpp"
#include "planner/cli/run_start.hpp"
#include "planner/cli/run_today.hpp"
#include "planner/cli/run_whatif.hpp"
#include "planner/cli/streams.hpp"

#include <exception>
#include <filesystem>
#include <string>
#include <variant>
#include <vector>

namespace nightsow::planner {

namespace {

// The only place that knows exit codes. They are part of what scripts rely on.
constexpr int exit_answered = 0;
constexpr int exit_not_all_open = 1;
constexpr int exit_wrong_use = 2;
constexpr int exit_bad_input = 3;
constexpr int exit_storage_failed = 4;
constexpr int exit_own_fault = 70;

int exit_code(Ending ending) {
  switch (ending) {
  case Ending::answered:
    return exit_answered;
  case Ending::not_all_open:
    return exit_not_all_open;
  case Ending::faults_found:
  case Ending::refused:
    return exit_bad_input;
  }
  return exit_own_fault;
}

Outcome run(const ShowText& show, const CommonOptions& /*common*/, const Surroundings& /*around*/) {
  return {show.text, "", Ending::answered};
}

int run_program(const std::vector<std::string>& words) {
  const CommandLine line = read_command_line(words);
  const Surroundings around = look_around();
  const Outcome outcome = std::visit(
      [&](const auto& command) { return run(command, line.common, around); }, line.command);
  write_answer(outcome.answer);
  write_notes(outcome.notes);
  return exit_code(outcome.ending);
}

int fail(const Problem& problem, int code) {
  write_notes(problem_line(problem));
  return code;
}

int fail_by_ourselves(const std::string& what) {
  write_notes("error: nightsow itself is at fault (" + what +
              "); your files are as they were. Please report it with the command you typed.\n");
  return exit_own_fault;
}

} // namespace

} // namespace nightsow::planner

int main(int argc, char** argv) {
  using namespace nightsow;
  try {
    planner::ignore_broken_pipes();
    return planner::run_program({argv + (argc > 0 ? 1 : 0), argv + argc});
  } catch (const UsageError& error) {
    return planner::fail(error.problem(), planner::exit_wrong_use);
  } catch (const InputError& error) {
    return planner::fail(error.problem(), planner::exit_bad_input);
  } catch (const StorageError& error) {
    return planner::fail(error.problem(), planner::exit_storage_failed);
  } catch (const std::filesystem::filesystem_error& error) {
    return planner::fail({Severity::error, "", 0, 0, error.what(), "", "check the permissions"},
                         planner::exit_storage_failed);
  } catch (const std::exception& error) {
    return planner::fail_by_ourselves(error.what());
  } catch (...) {
    return planner::fail_by_ourselves("something unnamed was thrown");
  }
}
