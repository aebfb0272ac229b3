#pragma once

#include "planner/model/bench_climate.hpp"
#include "planner/model/cool_season.hpp"
#include "planner/model/readings_guard.hpp"
#include "planner/model/seed_course.hpp"

#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace nightsow::planner {

/// Which courses at the seed's level are wanted.
struct CoursesWanted {
  std::string bench;
  climate::Season season;
  bool season_before = false; ///< they begin a season earlier
  std::optional<HeatMat> mat; ///< the pots stand on it, day and night
};

/// So many courses of weather stand for all that may come.
inline constexpr int courses_wanted = 40;

/// Works out each bench, season and night limit of a garden once, when first asked for: many
/// packets share them. Threads may ask at the same time: one works, the others wait for it.
/// References stay valid while the object lives. The garden must outlive it.
class BenchSeasons {
public:
  /// Throws InputError when the nights do not show a year.
  explicit BenchSeasons(const LoadedGarden& garden);

  [[nodiscard]] const StationClimate& station() const { return station_; }

  [[nodiscard]] const BenchClimate& climate(const std::string& bench);
  [[nodiscard]] const ReadingsGuard& guard(const std::string& bench);
  /// Requires: the station has phases; the same of gate.
  [[nodiscard]] const BenchSeason& season(const std::string& bench, const climate::Season& season);
  [[nodiscard]] const GateOutlook& gate(const std::string& bench,
                                        const climate::Season& season,
                                        const climate::NightLimit& limit);

  /// Requires: the station has phases.
  [[nodiscard]] const std::vector<SeedCourse>& courses(const CoursesWanted& wanted);

private:
  const LoadedGarden& garden_;
  StationClimate station_;
  std::recursive_mutex mutex_; ///< of all maps; a course asks for its seasons, they for a climate
  std::map<std::string, BenchClimate> climates_;
  std::map<std::string, ReadingsGuard> guards_;
  std::map<std::pair<std::string, int>, BenchSeason> seasons_;
  std::map<std::tuple<std::string, int, climate::NightLimit>, GateOutlook> gates_;
  /// By bench, season, whether they begin a season earlier, and the mat's name.
  std::map<std::tuple<std::string, int, bool, std::string>, std::vector<SeedCourse>> courses_;
};

} // namespace nightsow::planner
