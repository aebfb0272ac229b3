#pragma once

#include "planner/model/seed_course.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// Where pots stand, told once more apart from the product's own types.
struct PlainBench {
  double latitude = 0.0;
  double elevation_m = 0.0;
  double sun = 1.0;
  double shade = 0.5;
  double night_loss_k = 2.0;
  double k_per_w = 0.014; ///< what a watt of sun on a square metre adds
  bool under_glass = false;
  double night_offset_k = 0.0; ///< of the bench against the air outside
  double day_offset_k = 0.0;
  bool fleece = true;
  bool carried_in = false;
  std::optional<double> mat_rise_k;
  double mat_thermostat_c = 100.0;
};

/// The air of a bench, a night and a day each date.
struct PlainAir {
  Date first{};
  std::vector<double> night_c;
  std::vector<double> day_c;
};

/// The same days as seed_courses makes of this air, reckoned hour by hour from the written model
/// and from nothing of the product: sun, air, seed, evaporation, growth and rest. What the course
/// holds only to be quick (`felt`) is left empty.
[[nodiscard]] SeedCourse plain_course(const PlainAir& air, const PlainBench& bench);

} // namespace nightsow::planner
