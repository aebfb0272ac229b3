#pragma once

#include "planner/answers/account_answer.hpp"
#include "planner/answers/pot_weather.hpp"
#include "planner/garden/load_garden.hpp"
#include "species-rules/seed_parameters.hpp"

#include <optional>

namespace nightsow::planner {

/// The nights read since a pot was watered in its present season, against those that its seed
/// waits for. Empty for seed that waits for none, and before the first night.
[[nodiscard]] std::optional<NightsSoFar> nights_so_far(const LoadedGarden& garden,
                                                       const PotWeather& weather,
                                                       const species_rules::SeedParameters& seed);

[[nodiscard]] Reason nights_reason(const NightsSoFar& nights);

} // namespace nightsow::planner
