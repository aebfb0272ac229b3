#include "planner/answers/backtest.hpp"

#include "climate/backtest.hpp"
#include "planner/answers/figures.hpp"
#include "planner/answers/make_heads.hpp"
#include "planner/garden/drawn_station.hpp"
#include "planner/model/bench_climate.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::planner {

namespace {

// Scores to a hundredth of a day.
double rounded_score(double days) {
  return std::round(100.0 * days) / 100.0;
}

std::optional<double> skill(double score, double reference) {
  return reference > 0.0 ? std::optional{rounded_share(1.0 - score / reference)} : std::nullopt;
}

BacktestLead lead_of(const climate::LeadScores& scores) {
  BacktestLead lead;
  lead.lead_days = scores.lead_days;
  lead.cases = scores.cases;
  lead.crps_outlook = rounded_score(scores.crps_outlook);
  lead.crps_past = rounded_score(scores.crps_past);
  lead.crps_possible = rounded_score(scores.crps_possible);
  lead.skill = skill(scores.crps_outlook, scores.crps_possible);
  lead.coverage_80 = rounded_share(scores.coverage_80);
  std::transform(scores.pit.begin(), scores.pit.end(), lead.pit.begin(), rounded_share);
  if (scores.crps_forecast) {
    lead.crps_forecast = rounded_score(*scores.crps_forecast);
    lead.skill_forecast = skill(*scores.crps_forecast, scores.crps_possible);
  }
  return lead;
}

BacktestEvent event_of(const climate::EventScores& scores) {
  BacktestEvent event;
  event.event = scores.event == climate::NightEvent::stirs ? "stirs" : "holds";
  for (const climate::LeadScores& lead : scores.leads) {
    if (lead.cases > 0) {
      event.leads.push_back(lead_of(lead));
    }
  }
  event.relapse_cases = scores.relapse.cases;
  if (scores.relapse.cases > 0) {
    event.relapse_share = rounded_share(scores.relapse.share);
    event.relapse_brier = rounded_share(scores.relapse.brier);
    event.relapse_brier_climate = rounded_share(scores.relapse.brier_climate);
  }
  return event;
}

std::string station_file(const LoadedGarden& garden) {
  const auto found =
      std::find_if(garden.files.begin(), garden.files.end(), [](const ReadingsFile& file) {
        return file.bench.empty() && !file.forecast;
      });
  return found == garden.files.end() ? std::string{} : found->file;
}

} // namespace

BacktestAnswer backtest(const LoadedGarden& garden) {
  const StationClimate station = station_climate(garden);
  const int usable = usable_seasons(station, std::nullopt);
  BacktestAnswer answer;
  answer.garden = garden_head(garden.garden);
  answer.today = garden.today;
  answer.station = station_file(garden);
  answer.readings = readings_head(garden, usable);
  answer.seasons_before = climate::backtest_least_seasons;
  answer.gates_c.assign(climate::backtest_gates_c.begin(), climate::backtest_gates_c.end());
  answer.warnings = warnings_of(garden, station, usable);
  if (!station.turning.phases) {
    return answer;
  }
  answer.forecast_days = static_cast<int>(garden.forecast.size());
  const climate::Backtest tested =
      knows_normals_only(garden.garden)
          ? climate::Backtest{}
          : climate::backtest(garden.station, *station.turning.phases, answer.forecast_days);
  answer.seasons = tested.seasons;
  answer.gates_tried_c = tested.gates_c;
  if (tested.seasons == 0) {
    answer.warnings.push_back({ReasonCode::backtest_too_short,
                               {{"seasons", knows_normals_only(garden.garden) ? 0 : usable},
                                {"needed", climate::backtest_least_seasons + 1}}});
    return answer;
  }
  std::transform(
      tested.events.begin(), tested.events.end(), std::back_inserter(answer.events), event_of);
  return answer;
}

} // namespace nightsow::planner
