#pragma once

#include "species-rules/seed_parameters.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::planner {

/// What the nights of one course release of waiting seed of one kind, whatever the day of first
/// water. From day to day only a better window of nights releases more; while fewer nights than a
/// window's are wet, a smaller number of them decides. Seed without a limit is released by water.
class NightRelease {
public:
  /// Seed released on one day, share of the seeds that were waiting on the day of first water.
  struct Step {
    int day = 0;
    double share = 0.0;
  };

  /// Steps so far, and the share that they release together.
  struct Steps {
    std::vector<Step> steps;
    double share = 0.0;
  };

  /// One night a day of the course, °C; at least one.
  NightRelease(std::span<const double> night_c, const species_rules::SeedParameters& seed);

  /// All of them, that of first water first. Requires of all days: 0 <= day < days. What is
  /// returned holds until the next call.
  [[nodiscard]] const Steps& all(int water);

  /// Those of first water and of the nights that do not fill a window yet. From `first_window` on
  /// only windows release, and theirs are the same for every first water before.
  [[nodiscard]] const Steps& before_windows(int water);

  [[nodiscard]] int first_window(int water) const { return water + of_ - 1; }

  /// The first day from `from` on whose window releases more than that share. Requires:
  /// from >= first_window(0).
  [[nodiscard]] std::optional<int> next(int from, double share);

  /// The share released by the window that ends on that day. Requires: day >= first_window(0).
  [[nodiscard]] double by_window(int day);

private:
  void find_windows(int nights);
  [[nodiscard]] double by_night(int day);

  std::optional<species_rules::ReleaseLimit> limit_; ///< empty: released by water
  bool warmth_ = false;                              ///< releases, not cool
  int of_ = 1;
  int days_ = 0;
  /// Coolness is the night's temperature, of hot starters less than nought: the lower, the sooner
  /// seed is released.
  std::vector<double> coolness_;
  std::vector<double> by_night_;   ///< share released where that night decides; NaN: not yet
  std::vector<int> deciding_;      ///< the night that decides the window that ends on a day
  std::vector<int> next_better_;   ///< the next day with a better window
  std::vector<std::size_t> ranks_; ///< of the night that decides while so many are wet; 0: none
  std::vector<double> best_first_; ///< shares of the nights since first water, largest first
  Steps steps_;
};

} // namespace nightsow::planner
