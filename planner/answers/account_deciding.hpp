#pragma once

#include "planner/answers/account_answer.hpp"
#include "planner/answers/account_basis.hpp"

#include <vector>

namespace nightsow::planner {

/// Which values of the rule an account hangs on: each in turn is put to either end of its range,
/// all others drawn as ever. Told are those that change the step or move a share of the seeds not
/// up by a tenth, the most deciding first. Requires: not all are up; looks not empty.
[[nodiscard]] std::vector<DecidingValue> deciding_values(const AccountBasis& basis,
                                                         const species_rules::RuleFor& rule,
                                                         const SowingSituation& situation);

} // namespace nightsow::planner
