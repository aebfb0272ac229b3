#pragma once

#include "planner/model/establishment.hpp"

#include <functional>
#include <map>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// What the packet brings on a day of the courses, should the seed be as these numbers say.
using SharesOnDay = std::function<SeedShares(const species_rules::SeedParameters&, int day)>;

/// What first water on one day leads to, over all that is not known: the weather to come and the
/// numbers of the rule together.
struct Expectation {
  int day = 0;            ///< of the courses, of first water
  double seedlings = 0.0; ///< mean share of the seeds sown
  double plants = 0.0;
  Losses losses;                       ///< mean shares
  std::vector<double> seedling_shares; ///< one a case
  std::vector<double> plant_shares;
  std::optional<int> first_up; ///< middle over cases: the day by which a tenth of those that come
                               ///< up is up; empty: in most cases nothing comes up
  std::optional<int> half_up;  ///< the same of the half
};

/// One case for each of `seeds`: it meets the courses in turn. Cases are equally likely.
/// Requires: courses of one bench and season, both lists not empty; the courses outlive this.
class ExpectedPlants {
public:
  ExpectedPlants(std::span<const SeedCourse* const> courses,
                 std::span<const species_rules::SeedParameters> seeds,
                 const PotCare& care,
                 const SeasonDays& season);

  [[nodiscard]] Expectation watered_on(int day, const SharesOnDay& shares);

  /// Mean share of the seeds sown that become plants. For many days and packets that are kept
  /// otherwise: what living, ripe seed comes to is kept from call to call.
  [[nodiscard]] double plants_on(int day, const SharesOnDay& shares);

  /// Days of the courses.
  [[nodiscard]] int days() const { return days_; }

  /// Where the seeds are at the end of `today`, one a case: what an account of a sowing weighs.
  [[nodiscard]] std::vector<SeedsOnDay> on_day(int first_water,
                                               const SharesOnDay& shares,
                                               int today);

  /// The middle over cases of the day on which the first rest begins.
  [[nodiscard]] int rest_begins() const;

private:
  std::vector<species_rules::SeedParameters> seeds_;
  std::vector<SeedSeason> cases_;
  int days_ = 0;
  std::map<int, std::vector<double>> plants_of_sound_seed_; ///< one a case, by day
};

} // namespace nightsow::planner
