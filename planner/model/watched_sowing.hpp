#pragma once

#include "planner/garden/what_came.hpp"
#include "planner/model/learned_limit.hpp"
#include "planner/model/seed_course.hpp"
#include "species-rules/seed_parameters.hpp"

#include <optional>

namespace nightsow::planner {

/// A sowing beside the weather of its first season, as learned_limit wants it: the looks within the
/// course, the deciding night of the wet nights so far, and what progress a released seed makes.
/// `season` is left to the caller. Empty where first water does not fall into the course.
/// Requires: first water is known.
[[nodiscard]] std::optional<WatchedSowing> watched_sowing(
    const WhatCame& told, const SeedCourse& course, const species_rules::SeedParameters& seed);

} // namespace nightsow::planner
