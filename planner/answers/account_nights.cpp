#include "planner/answers/account_nights.hpp"

#include "planner/answers/figures.hpp"
#include "planner/model/coolest_window.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>

namespace nightsow::planner {

std::optional<NightsSoFar> nights_so_far(const LoadedGarden& garden,
                                         const PotWeather& weather,
                                         const species_rules::SeedParameters& seed) {
  if (!seed.release) {
    return std::nullopt;
  }
  const PotSeason& season = weather.seasons.back();
  const SeedCourse& course = *season.courses.front();
  const int read = days_between(course.first, garden.station.last());
  const int nights = std::min(season.last, read) - season.water + 1;
  if (nights < 1) {
    return std::nullopt;
  }
  const bool warm = seed.start == species_rules::Start::hot;
  const BestWindow best = best_window(
      std::span(course.night_c)
          .subspan(static_cast<std::size_t>(season.water), static_cast<std::size_t>(nights)),
      seed.nights,
      seed.of,
      seed.release->limit_c,
      warm ? NightsWanted::warm : NightsWanted::cool);
  NightsSoFar told;
  told.warm = warm;
  told.limit_c = seed.release->limit_c;
  told.needed = seed.nights;
  told.of = seed.of;
  told.met = best.met;
  told.unread = weather.nights_unread;
  if (best.day) {
    told.came = course.first + Days{season.water + *best.day};
  } else if (best.deciding_c) {
    told.short_k = rounded_tenth(std::abs(*best.deciding_c - told.limit_c));
  }
  return told;
}

Reason nights_reason(const NightsSoFar& nights) {
  if (nights.came) {
    return {ReasonCode::nights_came,
            {{"limit_c", Celsius{rounded_tenth(nights.limit_c)}}, {"when", *nights.came}}};
  }
  Reason reason{nights.warm ? ReasonCode::warm_nights_short : ReasonCode::nights_short,
                {{"cool", nights.met},
                 {"of", nights.of},
                 {"needed", nights.needed},
                 {"limit_c", Celsius{rounded_tenth(nights.limit_c)}}}};
  if (nights.short_k) {
    reason.values.push_back({"short_k", CelsiusDelta{*nights.short_k}});
  }
  return reason;
}

} // namespace nightsow::planner
