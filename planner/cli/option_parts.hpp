#pragma once

#include "planner/cli/typed_words.hpp"

#include <string>
#include <string_view>

namespace CLI {
class App;
class Option;
} // namespace CLI

namespace nightsow::planner {

// What the tables of options are put together from.

/// "Example:" and the words behind the program's name.
[[nodiscard]] std::string example(std::string_view words);

/// The same, and which options go with every command.
[[nodiscard]] std::string command_footer(std::string_view words);

CLI::Option* option(CLI::App& app,
                    const char* name,
                    TypedWords::MaybeText& value,
                    const char* type,
                    const char* what);

void flag(CLI::App& app, const char* name, bool& value, const char* what);

CLI::App& command(CLI::App& parent, const char* name, const char* what);

} // namespace nightsow::planner
