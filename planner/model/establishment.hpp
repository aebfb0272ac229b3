#pragma once

#include "planner/model/seed_course.hpp"
#include "planner/model/seedling_fates.hpp"
#include "species-rules/seed_parameters.hpp"
#include "species-rules/wet_losses.hpp"

#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// How a kind is sown and kept, as far as it decides what lives.
struct PotCare {
  double seed_depth_mm = 0.0;
  bool grit = true;
  bool bag_until_up = false;
  species_rules::MixHygiene mix = species_rules::MixHygiene::clean_mineral;
  double watering_point_mm = 2.0; ///< watered at the end of the day on which so much has gone
  double kept_through_rest = 0.85;
};

/// What the packet brings on the day of first water, shares 0..1.
struct SeedShares {
  double alive = 1.0; ///< of the seeds sown; the rest is dead, or never comes up
  double ripe = 1.0;  ///< of those
};

/// What becomes of the seeds sown, shares of 1; they and the plants sum to 1.
struct Losses {
  double dead = 0.0; ///< before sowing
  double not_ripe = 0.0;
  double nights_too_warm = 0.0; ///< sound, waiting for cool nights when the season ended
  double deferred = 0.0;
  double lost_wet = 0.0;
  double dried = 0.0;
  double heat = 0.0;
  double frost = 0.0;
  double too_late = 0.0; ///< not up before the first rest, or too small for it
  double rest = 0.0;
};

struct Establishment {
  Losses losses;
  double seedlings = 0.0; ///< up before the first rest
  double plants = 0.0;    ///< alive after it
  std::vector<double> up; ///< a day of the course, share of the seeds that came up on it
};

/// Where the seeds sown are at the end of one day, shares of 1: those here, and `up` to that day,
/// sum to 1. Seed that will dry before it is up, or as it comes up, counts as to come until then.
struct SeedsOnDay {
  double dead = 0.0; ///< before sowing
  double not_ripe = 0.0;
  double nights_too_warm = 0.0; ///< sound, not yet released
  double to_come = 0.0;         ///< released, sound, not yet up
  double deferred = 0.0;
  double too_late = 0.0; ///< released, sound, and not to be up before the first rest
  double heat = 0.0;
  double lost_wet = 0.0;
  double dried = 0.0;
  double up_so_far = 0.0;
  std::vector<double> up; ///< a day of the whole course, as in Establishment
};

/// A kind of seed in one course of a season: what comes of it, by the day of first water. Made
/// once, asked for many days: sums over the course are made beforehand, what becomes of seed
/// released on a day is worked out when first needed, and kept. Release by
/// cool, thermal time, losses and the first rest are those of species-rules; what is assumed beyond
/// them:
/// - seed released together comes up in five equal classes of its thermal time;
/// - on a day, losses come before release and emergence; what several hazards take of one seed is
///   shared among them by their cumulative hazards;
/// - evaporation runs on through the course, so that it does not restart with the first water.
/// The course and the season must fit each other; the course must outlive this.
class SeedSeason {
public:
  SeedSeason(const SeedCourse& course,
             const species_rules::SeedParameters& seed,
             const PotCare& care,
             const SeasonDays& season);
  SeedSeason(SeedCourse&&,
             const species_rules::SeedParameters&,
             const PotCare&,
             const SeasonDays&) = delete;

  /// First water on this day of the course. Requires: 0 <= day < course.days(); shares 0..1.
  [[nodiscard]] Establishment watered_on(int day, const SeedShares& shares);

  /// The same sowing at the end of a day. Requires: 0 <= day <= today < course.days(); shares 0..1.
  [[nodiscard]] SeedsOnDay on_day(int water, const SeedShares& shares, int today);

  /// The day of the course on which the first rest begins; the end of the season where the climate
  /// brings none.
  [[nodiscard]] int rest_begins() const { return rest_.day; }

  /// Whether the climate brings a rest at all.
  [[nodiscard]] bool rests() const { return rest_.reached; }

private:
  /// Seed released on one day, share of the seeds that were waiting on the day of first water.
  struct Release {
    int day = 0;
    double share = 0.0;
  };

  /// What a part of the seed released on one day goes through.
  struct Passage {
    double part = 0.0;
    std::optional<int> emerged; ///< empty: the season ends before
    double damping = 0.0;       ///< hazards from release to then
    double drying = 0.0;
  };

  void sum_hazards();
  void sum_progress();
  void find_windows();
  [[nodiscard]] std::vector<Release> releases(int water) const;
  [[nodiscard]] std::optional<double> deciding_c(int water, int day) const;
  [[nodiscard]] double released(double deciding_c) const;
  [[nodiscard]] std::optional<int> emerges(int released, double thermal_time_c_d) const;
  [[nodiscard]] double driest_mm(int from, int emerged) const;
  [[nodiscard]] std::vector<Passage> passages_of(int released) const;
  [[nodiscard]] Passage passage(int released, double part, double needed, double undone) const;
  void follow_to(int water, const Release& release, double share, int today, SeedsOnDay& result);
  void follow(int water, const Release& release, double share, Establishment& result);

  const SeedCourse* course_;
  species_rules::SeedParameters seed_;
  PotCare care_;
  RestDay rest_;
  SeedlingFates fates_;
  // Sums up to and with each day; hazards are -ln(1 - loss).
  std::vector<double> waiting_;
  std::vector<double> damping_;
  std::vector<double> heat_;
  std::vector<double> progress_;
  std::vector<double> evaporated_under_mm_; ///< since the last water, with the bag on
  std::vector<double> evaporated_up_mm_;    ///< the same without
  std::vector<double> window_c_;            ///< deciding night of the window that ends on the day
  std::vector<std::vector<Passage>> passages_; ///< by day of release; empty: not needed yet
};

} // namespace nightsow::planner
