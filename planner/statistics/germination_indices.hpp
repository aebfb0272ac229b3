#pragma once

#include <optional>
#include <span>

namespace nightsow::planner {

// What the counts of one germination test say. `new_a_day` holds the seeds that came on day 1, 2 …
// after the first water; looks that were left out count as none. Formulas as in the manual of the R
// package germinationmetrics.

struct GerminationTimes {
  int came = 0;
  int first_day = 0;
  int last_day = 0;
  int peak_day = 0; ///< of most seeds; the first such
  int peak = 0;
  double mean_days = 0.0;
  double variance = 0.0;   ///< of the days, by n - 1; 0 of a single seed
  double mean_error = 0.0; ///< standard error of mean_days
  double rate_a_day = 0.0; ///< 1 / mean_days
  double rate_variance = 0.0;
  double uniformity = 0.0; ///< seeds over the sum of squared days from the mean; 0 when all at once
  double entropy_bits = 0.0; ///< 0 when all come on one day
};

/// Empty where none came.
[[nodiscard]] std::optional<GerminationTimes> germination_times(std::span<const int> new_a_day);

/// Which seed is the middle one: (N + 1) / 2, Coolbear et al. (1984), or N / 2, Farooq et al.
/// (2005).
enum class MiddleSeed { coolbear, farooq };

/// Days until the middle seed that came, straight between days; empty where none came.
[[nodiscard]] std::optional<double> half_came_days(std::span<const int> new_a_day,
                                                   MiddleSeed middle = MiddleSeed::coolbear);

/// Sum of new seeds over their day (Maguire 1962).
[[nodiscard]] double germination_speed(std::span<const int> new_a_day);

/// The same of all that have come by each day.
[[nodiscard]] double accumulated_speed(std::span<const int> new_a_day);

/// Sum over the days of all that have come by each (George 1961); in percent of the seeds sown it
/// is Timson's index.
[[nodiscard]] double cumulative_sum(std::span<const int> new_a_day);

/// Sum of new seeds times the days left to the end (Shmueli and Goldberg 1971).
[[nodiscard]] double emergence_index(std::span<const int> new_a_day);

/// A Hill curve y0 + a t^b / (c^b + t^b), in shares or percent of the seeds sown.
struct HillCurve {
  double start = 0.0;     ///< y0
  double rise = 0.0;      ///< a
  double steep = 1.0;     ///< b
  double half_days = 0.0; ///< c
};

/// Days until that share of those that come at all; 0 < part < 1.
[[nodiscard]] double hill_days(const HillCurve& curve, double part);

/// Days until the curve reaches a height; empty where it never does.
[[nodiscard]] std::optional<double> hill_days_to(const HillCurve& curve, double height);

} // namespace nightsow::planner
