#pragma once

#include "climate/base/date.hpp"
#include "planner/answers/heads.hpp"
#include "planner/answers/reason.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::planner {

/// How good the outlook would have been so many days before. Scores are fair CRPS in days: smaller
/// is better. Shares and skills are of 1.
struct BacktestLead {
  int lead_days = 0;
  int cases = 0;
  double crps_outlook = 0.0;
  double crps_past = 0.0;
  double crps_possible = 0.0;
  /// By what share the outlook missed less than the dates still possible; empty: those missed by 0.
  std::optional<double> skill;
  double coverage_80 = 0.0;
  std::array<double, 10> pit{};
  std::optional<double> crps_forecast;
  std::optional<double> skill_forecast;
};

struct BacktestEvent {
  std::string event;               ///< "stirs", "holds"
  std::vector<BacktestLead> leads; ///< those with cases
  int relapse_cases = 0;
  std::optional<double> relapse_share; ///< these three are empty without a case
  std::optional<double> relapse_brier;
  std::optional<double> relapse_brier_climate;
};

struct BacktestAnswer {
  GardenHead garden;
  Date today{};
  std::string station; ///< the first file of the station; empty: none
  ReadingsHead readings;
  int seasons = 0;        ///< tested
  int seasons_before = 0; ///< that a tested season needs before it
  std::vector<double> gates_c;
  std::vector<double> gates_tried_c;
  int forecast_days = 0; ///< of the forecast that was stood in for; 0: none
  std::vector<BacktestEvent> events;
  std::vector<Reason> warnings;
};

} // namespace nightsow::planner
