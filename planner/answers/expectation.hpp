#pragma once

#include "planner/answers/line_timing.hpp"
#include "planner/model/expected_plants.hpp"
#include "planner/model/keeping.hpp"
#include "planner/model/packet_shares.hpp"

#include <deque>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace nightsow::planner {

/// Where and when a packet could be sown: a bench in a season, on the mat or off it.
struct Sown {
  std::string bench;
  climate::Season season;
  bool season_before = false; ///< days from the start of its planning year count, too
  bool on_mat = false;
};

/// What comes of one packet by its day of first water, over the courses of a season and the ranges
/// of its rule. The line's garden and rule, and the seasons, must outlive it.
class Prospects {
public:
  /// Requires: the station has phases; the season has members.
  Prospects(const LineInput& input, BenchSeasons& seasons, const Sown& sown);

  /// Days that can be asked for, both included.
  [[nodiscard]] Date first_day() const { return from_; }

  [[nodiscard]] Date last_day() const { return first_ + Days{few_.days() - 1}; }

  /// Mean share of the packet's seeds that become plants, to compare days and ways of keeping:
  /// over a few cases only, worked out for a day a week, and straight between.
  [[nodiscard]] double plants_share(Date first_water, const Keeping& keeping);

  /// The same, were all of it ripe.
  [[nodiscard]] double plants_share_if_ripe(Date first_water, const Keeping& keeping);

  /// What all cases make of that share on a day, as a factor.
  [[nodiscard]] double all_cases_factor(Date first_water, const Keeping& keeping);

  /// All that is told of one day and so many seeds. Empty when they are not counted.
  [[nodiscard]] std::optional<Expected> expected(Date first_water,
                                                 const Keeping& keeping,
                                                 std::optional<double> seeds);

private:
  /// The packet kept one way.
  struct Kept {
    Keeping keeping;
    PacketShares shares;
    std::vector<double> plants; ///< by day of the courses, over the few cases; NaN: not asked yet
  };

  [[nodiscard]] Kept& kept(const Keeping& keeping);
  [[nodiscard]] SharesOnDay shares_of(const Keeping& keeping);
  [[nodiscard]] double few_plants(int day, const Keeping& keeping);
  [[nodiscard]] ExpectedPlants& all();

  const Packet* packet_;
  const species_rules::RuleFor* rule_;
  Date today_{};
  const std::vector<SeedCourse>* courses_;
  Date first_{}; ///< of the courses
  Date from_{};
  SeasonDays season_;
  ExpectedPlants few_;
  std::optional<ExpectedPlants> all_; ///< made when first asked for
  std::deque<Kept> kept_;
};

/// The prospects of one packet, each made when first asked for and kept: a season is weighed
/// against the next before that one is planned in its turn. The same must outlive it as must
/// outlive each.
class PacketProspects {
public:
  /// Requires: always the same packet, rule, garden and seasons.
  [[nodiscard]] Prospects& of(const LineInput& input, BenchSeasons& seasons, const Sown& sown);

private:
  /// By bench, season, whether days begin a season earlier, and whether on the mat.
  std::map<std::tuple<std::string, int, bool, bool>, Prospects> known_;
};

/// Whether pots of the kind stand on a mat where the garden has one: what is expected, how places
/// are counted and what is to be done all follow it. Those that gain by a mat, but no cool
/// starters: it would take from them the nights they wait for.
[[nodiscard]] bool uses_mat(const species_rules::Rule& rule);

/// Whether pots of the packet are planned on a mat.
[[nodiscard]] bool on_mat(const LineInput& input);

/// The mat on the packet's bench, else the garden's first.
[[nodiscard]] std::optional<HeatMat> mat_for(const Garden& garden, const std::string& bench);

} // namespace nightsow::planner
