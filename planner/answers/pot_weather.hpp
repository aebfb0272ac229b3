#pragma once

#include "planner/answers/reason.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/model/bench_seasons.hpp"
#include "planner/model/pot_seasons.hpp"
#include "planner/model/sowing_facts.hpp"

#include <deque>
#include <optional>
#include <vector>

namespace nightsow::planner {

/// The weather that one pot had, and may still have, season by season.
struct PotWeather {
  Date first{};                            ///< day 0 of the first season's courses
  std::vector<PotSeason> seasons;          ///< in which it was wet, the last up to today
  std::deque<std::vector<SeedCourse>> own; ///< of a pot that was moved or left dry
  Date wet_since{};                        ///< in the last of them
  int nights_unread = 0;                   ///< since first water, up to yesterday
  std::vector<Reason> notes;               ///< what was taken for granted
};

/// Of a pot first watered by `today`, which may be earlier than the garden's: what is told of a
/// closed sowing ends there. Empty where the readings hold no whole season before its first.
/// A pot of several seasons is taken as watered again on the first watering of the season, else as
/// its nights begin to cool. Of a season that was read to its end there is one course. Requires:
/// the station has phases. `seasons` must outlive what comes back.
[[nodiscard]] std::optional<PotWeather> pot_weather(const LoadedGarden& garden,
                                                    BenchSeasons& seasons,
                                                    const SowingFacts& facts,
                                                    Date first_water,
                                                    Date today);

/// The same seasons as they stood at the end of a day. Requires: `looked` is the day of first water
/// or later.
[[nodiscard]] std::vector<PotSeason> seasons_until(const PotWeather& weather, Date looked);

/// The day of a season's courses, counted from the pot's first.
[[nodiscard]] int day_of_pot(const PotWeather& weather, const PotSeason& season, int day);

} // namespace nightsow::planner
