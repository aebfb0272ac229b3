#pragma once

#include "planner/answers/account_answer.hpp"
#include "planner/model/account_advice.hpp"
#include "species-rules/seed_parameters.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// The cause that most of the seeds not up went by. Requires: causes not empty.
[[nodiscard]] Reason likely_reason(const std::vector<MissingShare>& causes, int missing);

/// What to do. `until` is the day to wait for, or, of a pot that is kept, to water it again; it
/// must be there then. A day up to today is the time to do so. `rests_dry`: how the pot rests.
[[nodiscard]] Reason step_reason(NextStep step,
                                 const Account& result,
                                 const species_rules::SeedParameters& seed,
                                 bool rests_dry,
                                 const std::optional<Date>& until,
                                 Date today);

[[nodiscard]] Reason too_early_reason(const std::optional<Date>& until);

/// How sure the step is; never sure where the counts hardly fit the rule.
[[nodiscard]] Reason sure_reason(double how_sure, bool fits);

} // namespace nightsow::planner
