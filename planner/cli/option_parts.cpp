#include "planner/cli/option_parts.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace nightsow::planner {

std::string example(std::string_view words) {
  return fmt::format("Example:\n  nightsow {}\n", words);
}

std::string command_footer(std::string_view words) {
  return example(words) +
         "\nOptions for every command (nightsow --help says what they do):\n"
         "  --garden DIR --today DATE --season YEAR --json --quiet --strict --fahrenheit";
}

CLI::Option* option(CLI::App& app,
                    const char* name,
                    TypedWords::MaybeText& value,
                    const char* type,
                    const char* what) {
  return app.add_option(name, value, what)->type_name(type);
}

void flag(CLI::App& app, const char* name, bool& value, const char* what) {
  app.add_flag(name, value, what)->disable_flag_override();
}

CLI::App& command(CLI::App& parent, const char* name, const char* what) {
  return *parent.add_subcommand(name, what)->group("Commands");
}

} // namespace nightsow::planner
