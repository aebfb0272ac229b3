#pragma once

#include "climate/seasons.hpp"
#include "planner/model/seed_course.hpp"
#include "species-rules/seed_parameters.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace nightsow::planner {

/// Where a season's turning points lie in a course, in days from its first. They may lie outside.
struct SeasonDays {
  int hottest = 0;
  int limb_begins = 0;
  int coldest = 0;
  int ends = 0; ///< the day after the last
};

[[nodiscard]] SeasonDays season_days(const climate::Season& season, Date first);

/// The day of a course on which seedlings go to their first rest; of evergreens the day on which
/// their season is judged.
struct RestDay {
  int day = 0;
  bool reached = false; ///< false: the climate brings none, and `day` is the season's end
};

/// Winter growers: what warmth and long days add from the coldest night on reaches the rule's sum.
/// Summer growers: the mean of seven days falls to cool_rest_c after the hottest night. Evergreens
/// (first_rest none) have no rest: the season's end, at the next hottest night, is not `reached`.
[[nodiscard]] RestDay rest_day(const SeedCourse& course,
                               const species_rules::SeedParameters& seed,
                               const SeasonDays& season);

/// The chances of a seedling from its emergence on; they sum to 1, but for one that is up on the
/// day of the rest or later, which has none.
struct Fate {
  double lost_wet = 0.0;
  double heat = 0.0;
  double frost = 0.0;
  /// For the rest; of evergreens for the next hot season, of annuals to flower.
  double too_small = 0.0;
  double rest = 0.0;
  double plants = 0.0; ///< alive after the rest; evergreens at the season's end; annuals in flower
};

/// The fates of one kind's seedlings in one course, by the day on which they came up. A cool
/// starter that is up before the cooling limb meets the end of the hot season first, and rests then
/// with the growth it has, should that be warm and long enough; evergreens do not. Nothing is lost
/// in a rest that a kind does not have (first_rest none or dies). Each fate is worked out when
/// first asked for. The course and what is felt of it must outlive this.
class SeedlingFates {
public:
  /// `damping_off` is the hazard, on each day to the rest, of a seedling that is just up;
  /// `kept_through_rest` the share of large enough ones that live through a rest.
  SeedlingFates(const SeedCourse& course,
                const FeltDays& felt,
                const species_rules::SeedParameters& seed,
                const SeasonDays& season,
                const RestDay& rest,
                std::vector<double> damping_off,
                double kept_through_rest);

  /// Requires: 0 <= emerged < course.days().
  [[nodiscard]] const Fate& of(int emerged);

  /// The chance of being a plant alone: quicker, since which hazard takes what is not asked.
  /// Requires: the same.
  [[nodiscard]] double plants(int emerged);

private:
  [[nodiscard]] int rest_of(int emerged) const;
  [[nodiscard]] double large_enough(int emerged, int rest) const;
  [[nodiscard]] double damping(int emerged, int rest) const;
  [[nodiscard]] double living_through_frost(int emerged, int rest) const;
  [[nodiscard]] double living_through_heat(int emerged, int rest) const;
  [[nodiscard]] double plants_of(int emerged) const;
  [[nodiscard]] Fate fate_of(int emerged);
  [[nodiscard]] Fate raised(int emerged, int rest, double& alive);
  [[nodiscard]] double frost_on(int day, std::size_t older);
  [[nodiscard]] double heat_on(int day, std::size_t hardened, double hardened_k);

  const SeedCourse* course_;
  species_rules::SeedParameters seed_;
  SeasonDays season_;
  int rest_ = 0;
  double kept_through_rest_ = 0.0;
  std::vector<double> damping_off_;
  std::vector<double> damping_sums_;
  const FeltDays* felt_;
  const std::vector<double>* growth_sums_;
  std::array<double, 2> frost_limits_c_; ///< young, older
  std::vector<double> plants_;           ///< NaN: not yet
  std::vector<std::optional<Fate>> fates_;
  // Hazards of a day by age, worked out when first met: many ages meet the same day.
  std::array<std::vector<double>, 2> frost_; ///< young, older
  std::array<std::vector<double>, 3> heat_;  ///< not hardened, half, all
};

} // namespace nightsow::planner
