#pragma once

#include "planner/model/range_maximum.hpp"
#include "planner/model/seed_course.hpp"
#include "planner/model/seedling_fates.hpp"
#include "planner/model/sowing_outcome.hpp"
#include "species-rules/seed_parameters.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// A kind of seed in one course of a season: what comes of it, by the day of first water. Made
/// once, asked for many days: sums over the course and the nights that release are made beforehand;
/// what becomes of seed released on a day is the same for every first water before it, so it is
/// worked out when first needed, and kept. Release by
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

  /// The plants alone, of seed that is all alive and ripe: quicker, for many days.
  [[nodiscard]] double plants_of_sound_seed(int day);

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
    double heat = 0.0;
    double drying = 0.0;
    double alive = 0.0; ///< share of the released that lives to then
  };

  /// What becomes of seed released on one day, shares of it; its passages stand together.
  struct Outcome {
    std::size_t first_passage = 0;
    std::size_t passages = 0;
    Losses losses;
    double seedlings = 0.0;
    double plants = 0.0;
  };

  SeedSeason(const SeedCourse& course,
             const FeltDays& own,
             const species_rules::SeedParameters& seed,
             const PotCare& care,
             const SeasonDays& season);
  void sum_hazards(const FeltDays& felt);
  void sum_progress(const FeltDays& felt);
  void find_windows();
  void find_driest();
  [[nodiscard]] const std::vector<Release>& releases(int water);
  [[nodiscard]] double released(double coolness) const;
  [[nodiscard]] std::optional<int> emerges(int released,
                                           double thermal_time_c_d,
                                           int not_before) const;
  [[nodiscard]] double dry_on(int day,
                              const RangeMaximum& since_water,
                              std::vector<double>& kept) const;
  [[nodiscard]] double drying(int root_out, int emerged);
  [[nodiscard]] const Outcome& outcome_of(int released);
  [[nodiscard]] std::span<const Passage> passages_of(int released);
  void add_passages(int released);
  void add_passage(int released, double part, double needed, double undone, int root_not_before);
  void add_to_outcome(const Passage& passage, Outcome& outcome);
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
  /// Coolness is the night's temperature, of hot starters less than nought: the lower, the sooner
  /// seed is released.
  std::vector<double> coolness_;
  std::vector<double> window_;     ///< that of the deciding night of the window that ends then
  std::vector<int> next_better_;   ///< the next day with a better window
  std::vector<double> released_;   ///< share released by that window; NaN: not needed yet
  std::vector<double> needed_c_d_; ///< thermal time of each class of emergence
  RangeMaximum driest_under_;      ///< evaporation since the last water, mm, with the bag on
  RangeMaximum driest_up_;         ///< the same without
  std::vector<double> dry_under_;  ///< share dried where that day is the driest; NaN: not yet
  std::vector<double> dry_up_;
  std::vector<std::optional<Outcome>> outcomes_; ///< by day of release
  std::vector<Passage> passages_;
  std::vector<Release> releases_; ///< of the day last asked for
  std::vector<double> first_nights_;
};

} // namespace nightsow::planner
