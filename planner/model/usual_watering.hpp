#pragma once

#include "climate/seed_level.hpp"
#include "planner/model/bench_climate.hpp"
#include "species-rules/drying.hpp"

namespace nightsow::planner {

/// How many days a pot usually takes to dry to the watering point (species-rules/drying.hpp) in the
/// four weeks from `from` on, in the usual year: reference evaporation as for courses of weather
/// (seed_course.hpp), the range of the day from the station, the mean from the bench. `top`: its
/// shade is the place's. At least 1, at most 28.
[[nodiscard]] int usual_watering_days(const StationClimate& station,
                                      const BenchClimate& climate,
                                      const climate::SeedPlace& place,
                                      species_rules::PotTop top,
                                      Date from);

} // namespace nightsow::planner
