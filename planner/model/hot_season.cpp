#include "planner/model/hot_season.hpp"

#include "climate/seed_level.hpp"

#include <algorithm>

namespace nightsow::planner {

namespace {

// With too short a season the window stays open so long: sow early and carry the growth on.
constexpr int short_season_days = 21;

double night_for_seed_c(double night_c, const HotNeeds& needs, const std::optional<HeatMat>& mat) {
  return mat && needs.uses_mat ? night_on_mat_c(night_c, *mat) : night_c;
}

// The first day from `from` to the hottest night on which nights are warm enough, if there is one.
std::optional<Date> first_warm_night(const BenchClimate& climate,
                                     Date from,
                                     Date to,
                                     const HotNeeds& needs,
                                     const std::optional<HeatMat>& mat) {
  for (Date day = from; day <= to; day += Days{1}) {
    const double night_c = night_for_seed_c(climate.smooth.night.value_c(day), needs, mat);
    if (at_or_over(night_c, needs.warm_night_c)) {
      return day;
    }
  }
  return std::nullopt;
}

} // namespace

double night_on_mat_c(double night_c, const HeatMat& mat) {
  return climate::on_mat_c(night_c, mat.rise, mat.thermostat);
}

HotWindow hot_window(const BenchClimate& climate,
                     const climate::Season& season,
                     const HotNeeds& needs,
                     const std::optional<HeatMat>& mat) {
  const climate::Phases& phases = *climate.turning.phases;
  const Date hot_begins = climate::last_on_or_before(season.hottest, phases.hot_season_begins);
  const Date hot_ends = season.limb_begins - Days{1};

  HotWindow window;
  window.night_c = climate.smooth.night.value_c(season.hottest);
  window.warm_without_mat = at_or_over(window.night_c, needs.warm_night_c);
  if (mat) {
    window.mat_night_c = night_on_mat_c(window.night_c, *mat);
    window.warm_with_mat = at_or_over(*window.mat_night_c, needs.warm_night_c);
  }
  const std::optional<Date> warm =
      first_warm_night(climate, season.planning_begins, season.hottest, needs, mat);
  window.opens = warm.value_or(hot_begins);
  if (needs.grows == GrowingSeason::winter) {
    window.opens = std::max(window.opens, hot_begins);
  }
  window.rest = growth_ends(climate, season, needs.grows, needs.rest_sum, needs.first_rest);
  const std::optional<Date> latest = latest_first_water(climate,
                                                        needs.grows,
                                                        window.rest,
                                                        needs.growth_needed_days,
                                                        needs.emergence_days,
                                                        window.opens);
  window.season_too_short = !latest;
  window.closes = latest ? std::min(*latest, hot_ends) : window.opens + Days{short_season_days};
  window.closes = std::max(window.closes, window.opens);
  return window;
}

} // namespace nightsow::planner
