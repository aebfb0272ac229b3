#pragma once

#include "planner/model/hazards.hpp"
#include "planner/model/night_release.hpp"
#include "planner/model/pot_dryness.hpp"
#include "planner/model/seed_course.hpp"
#include "planner/model/seedling_fates.hpp"
#include "planner/model/sowing_outcome.hpp"
#include "species-rules/seed_parameters.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
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
  /// What a part of the seed released on one day goes through.
  struct Passage {
    double part = 0.0;
    std::optional<int> emerged; ///< empty: the season ends before
    double dried = 0.0;         ///< share of those that dry as they come up
    double alive = 0.0;         ///< share of the released that lives to then
  };

  /// What becomes of seed released on one day, shares of it; its passages stand together.
  struct Outcome {
    std::size_t first_passage = 0;
    std::size_t passages = 0;
    Losses losses;
    double seedlings = 0.0;
    double plants = 0.0;
  };

  /// By day of release: when something is done; the day of the rest: not before it.
  using DaysByRelease = std::vector<std::int16_t>;

  /// Seed released together comes up in classes of its thermal time.
  static constexpr std::size_t emergence_classes = 5;

  void sum_progress();
  void find_emergence();
  [[nodiscard]] DaysByRelease days_after_release(double thermal_time_c_d) const;
  [[nodiscard]] int day_of_progress(int not_before, double wanted_c_d) const;

  [[nodiscard]] PotDryness& before_up() { return under_bag_ ? *under_bag_ : open_; }

  [[nodiscard]] double drying(int root_out, int emerged);
  [[nodiscard]] Passage passage(int released, double part, int root_out, int emerged);
  template <class Take> void each_passage(int released, Take take);
  [[nodiscard]] const Outcome& outcome_of(int released);
  [[nodiscard]] std::span<const Passage> passages_of(int released);
  void add_to_outcome(int released, const Passage& passage, Outcome& outcome);
  [[nodiscard]] double plants_of_released(int released);
  [[nodiscard]] double plants_released_later(int day);
  [[nodiscard]] double plants_by_windows(int water, int from, double released);
  void follow_to(
      int water, const NightRelease::Step& release, double share, int today, SeedsOnDay& result);
  void follow(int water, const NightRelease::Step& release, double share, Establishment& result);

  const SeedCourse* course_;
  std::shared_ptr<const FeltDays> felt_;
  species_rules::SeedParameters seed_;
  PotCare care_;
  RestDay rest_;
  SeedlingFates fates_;
  NightRelease nights_;
  // Sums up to and with each day; hazards are -ln(1 - loss).
  std::vector<double> waiting_;
  std::vector<double> damping_;
  Survival waits_;               ///< waiting and heat
  Survival grows_;               ///< damping off and heat, of released seed
  std::vector<double> progress_; ///< without end from the rest on
  std::array<DaysByRelease, emergence_classes> root_out_; ///< of each class
  std::array<DaysByRelease, emergence_classes> up_;
  std::array<double, emergence_classes> needed_c_d_{}; ///< thermal time of each class
  std::optional<PotDryness> under_bag_;                ///< until they are up, where there is one
  PotDryness open_;
  std::vector<double> plants_;       ///< of seed released on a day; NaN: not yet
  std::vector<double> plants_later_; ///< of seed that waits still when a day's window has released
  std::vector<std::optional<Outcome>> outcomes_; ///< by day of release
  std::vector<Passage> passages_;
};

} // namespace nightsow::planner
