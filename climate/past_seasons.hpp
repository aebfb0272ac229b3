#pragma once

#include "climate/bench.hpp"
#include "climate/night_words.hpp"
#include "climate/phases.hpp"
#include "climate/seasons.hpp"

#include <span>
#include <vector>

namespace nightsow::climate {

/// Share of the searched nights that may be missing in a usable past season.
inline constexpr double most_missing = 0.05;

/// A season whose searched nights lie wholly within the readings.
struct SearchedSeason {
  Season season;
  std::vector<float> night_c; ///< `nights_searched` of them, from the hottest on
  int missing = 0;

  [[nodiscard]] bool few_missing() const { return missing <= most_missing * nights_searched; }
};

/// All of them, oldest first.
[[nodiscard]] std::vector<SearchedSeason> searched_seasons(const BenchAir& bench,
                                                           const Phases& phases);

/// One past season's words, as they were observed.
struct PastSeason {
  Season season;
  int missing = 0;     ///< of the searched nights
  bool usable = false; ///< few enough missing, and no unknown window before the one that met
  NightWords words;
};

/// Every season of which at least half of the searched nights are there, oldest first. Holes of up
/// to three nights are filled; the trend is not removed.
[[nodiscard]] std::vector<PastSeason> past_seasons(const BenchAir& bench,
                                                   const Phases& phases,
                                                   const NightLimit& limit);

/// Whether nights decide at this place: `holds` falls more than three days after its first allowed
/// day (or never) in more than half of the usable seasons. False without a usable season.
struct Binding {
  bool binds = false;
  int seasons = 0; ///< usable ones
  int late = 0;    ///< those in which `holds` came more than three days after, or never
  int never = 0;   ///< those in which it never came
};

[[nodiscard]] Binding binding(std::span<const PastSeason> seasons);

/// For places without phases: years of 365 days from a recurring day on, with few nights missing,
/// and those of them in which no 14 days were cool enough in the sense of `holds`.
struct YearsNeverCool {
  int years = 0;
  int never = 0;
};

[[nodiscard]] YearsNeverCool years_never_cool(const BenchAir& bench,
                                              date::month_day from,
                                              const NightLimit& limit);

} // namespace nightsow::climate
