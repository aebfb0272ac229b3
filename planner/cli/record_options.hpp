#pragma once

#include "planner/cli/typed_words.hpp"

namespace CLI {
class App;
}

namespace nightsow::planner {

/// Adds the commands that keep the record. `typed` must outlive the app.
void add_record_commands(CLI::App& app, TypedWords& typed);

} // namespace nightsow::planner
