#pragma once

#include "planner/cli/typed_words.hpp"

namespace CLI {
class App;
}

namespace nightsow::planner {

/// Names every command with its options, help and example; what is typed will stand in `typed`,
/// which must outlive the app.
void add_commands(CLI::App& app, TypedWords& typed);

} // namespace nightsow::planner
