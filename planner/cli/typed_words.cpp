#include "planner/cli/typed_words.hpp"

#include "climate/base/nearest_name.hpp"
#include "climate/base/problem.hpp"
#include "planner/cli/command_options.hpp"
#include "planner/cli/typed_values.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

namespace nightsow::planner {

namespace {

using Words = std::vector<std::string>;

constexpr std::string_view about =
    "When to sow the seed of winter-growing plants, from your own nights.\n"
    "A garden is a folder with garden.json, packets.csv and readings/; `nightsow start` makes one.";

/// The command that was typed: the innermost one, or the program itself.
CLI::App& typed_command(CLI::App& app) {
  CLI::App* command = &app;
  while (!command->get_subcommands().empty()) {
    command = command->get_subcommands().front();
  }
  return *command;
}

std::string full_name(const CLI::App& command) {
  return command.get_parent() == nullptr
             ? command.get_name()
             : full_name(*command.get_parent()) + " " + command.get_name();
}

Words commands_of(CLI::App& app) {
  Words names;
  for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
    names.push_back(command->get_name());
  }
  return names;
}

void add_option_names(const CLI::App& command, Words& names) {
  for (const CLI::Option* known : command.get_options()) {
    for (const std::string& name : known->get_lnames()) {
      names.push_back("--" + name);
    }
  }
}

std::string help_remedy(const CLI::App& command) {
  return full_name(command) + " --help lists what there is";
}

[[noreturn]] void refuse_option(CLI::App& app, const std::string& word) {
  const CLI::App& command = typed_command(app);
  const std::string name = word.substr(0, word.find('='));
  if (command.get_option_no_throw(name) != nullptr) {
    wrong_use(name, "stands before its command", "", "write it behind " + full_name(command));
  }
  std::string remedy = help_remedy(command);
  Words names;
  add_option_names(command, names);
  add_option_names(app, names);
  if (const auto nearest = nearest_name(name, names)) {
    remedy = fmt::format("did you mean {}?", nearest->name);
  }
  for (const CLI::App* other : app.get_subcommands([](const CLI::App*) { return true; })) {
    if (other->get_option_no_throw(name) != nullptr) {
      remedy = fmt::format("it is one of nightsow {}", other->get_name());
    }
  }
  wrong_use("", fmt::format("{} is no option of {}", shown(name), full_name(command)), "", remedy);
}

[[noreturn]] void refuse_word(CLI::App& app, const std::string& word) {
  CLI::App& command = typed_command(app);
  const Words names = commands_of(command);
  if (names.empty()) {
    wrong_use("",
              fmt::format("{} has no use for {}", full_name(command), shown(word)),
              "",
              help_remedy(command));
  }
  const auto nearest = nearest_name(word, names);
  wrong_use("",
            fmt::format("{} is no command of {}", shown(word), full_name(command)),
            listed(names),
            nearest ? fmt::format("did you mean {}?", nearest->name) : help_remedy(command));
}

// The first word that CLI11 could not place; while there is no command, the first that could be
// one.
void refuse_left_over(CLI::App& app) {
  const Words left = app.remaining(true);
  const auto is_option = [](const std::string& word) { return word.size() > 1 && word[0] == '-'; };
  if (left.empty()) {
    return;
  }
  const auto plain = std::find_if_not(left.begin(), left.end(), is_option);
  if (plain != left.end() && !commands_of(typed_command(app)).empty()) {
    refuse_word(app, *plain);
  }
  if (is_option(left.front())) {
    refuse_option(app, left.front());
  }
  refuse_word(app, left.front());
}

// CLI11 begins its message with the option: "--today: 1 required DATE missing", "json was given …".
[[noreturn]] void refuse_count(const CLI::App& command, std::string_view message) {
  const std::string option{message.substr(0, message.find_first_of(": "))};
  if (message.ends_with("flag override")) {
    wrong_use("--" + option, "is a switch and takes no value");
  }
  wrong_use(option, "stands there without its value, or more than once", "", help_remedy(command));
}

/// Throws CLI11's own help and version requests, and UsageError on what it cannot take.
void parse(CLI::App& app, std::span<const std::string> words) {
  try {
    // CLI11 takes a vector from its end.
    app.parse(Words(words.rbegin(), words.rend()));
  } catch (const CLI::Success&) {
    throw;
  } catch (const CLI::ArgumentMismatch& error) {
    refuse_count(typed_command(app), error.what());
  } catch (const CLI::ParseError& error) {
    wrong_use("", error.what(), "", help_remedy(typed_command(app)));
  }
}

void refuse_missing_command(CLI::App& command) {
  const Words names = commands_of(command);
  if (!names.empty()) {
    wrong_use(full_name(command), "no command is given", listed(names), help_remedy(command));
  }
}

} // namespace

TypedWords sort_words(std::span<const std::string> words) {
  TypedWords typed;
  CLI::App app{std::string(about)};
  add_commands(app, typed);
  try {
    parse(app, words);
  } catch (const CLI::CallForVersion& asked) {
    typed.show = std::string(asked.what()) + "\n";
    return typed;
  } catch (const CLI::Success&) {
    typed.show = app.help();
    return typed;
  }
  refuse_left_over(app);
  CLI::App& command = typed_command(app);
  refuse_missing_command(command);
  typed.command = full_name(command).substr(full_name(app).size() + 1);
  return typed;
}

} // namespace nightsow::planner
