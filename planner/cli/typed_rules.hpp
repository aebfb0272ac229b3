#pragma once

#include "planner/cli/command_line.hpp"
#include "planner/cli/typed_words.hpp"

namespace nightsow::planner {

// The commands about rules, from what was typed. Each throws UsageError on a word that is none of
// the catalogue's, with the nearest right one.

[[nodiscard]] RulesListCommand typed_rules_list(const TypedWords& typed);
[[nodiscard]] RulesShowCommand typed_rules_show(const TypedWords& typed);
[[nodiscard]] RulesCheckCommand typed_rules_check(const TypedWords& typed);
[[nodiscard]] RulesExportCommand typed_rules_export(const TypedWords& typed);
[[nodiscard]] RulesGapsCommand typed_rules_gaps(const TypedWords& typed);

} // namespace nightsow::planner
