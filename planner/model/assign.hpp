#pragma once

#include <optional>
#include <vector>

namespace nightsow::planner {

// Laying sowings on the days a grower has, within what a day, a bench and a mat hold.

/// A day on which a sowing may be made, and what it is worth then (plants expected). Days are
/// counted from any one day; those on the mat are included at both ends.
struct DayChoice {
  int day = 0;
  double value = 0.0; ///< above 0
  int mat_from = 0;
  int mat_until = -1; ///< before `mat_from`: it takes no place on a mat
};

struct SowingToLay {
  std::vector<DayChoice> choices; ///< each day once
  int pots = 0;
  std::optional<int> bench; ///< index of the bench it takes its places on
  std::optional<int> mat;   ///< index of the mat
};

/// No value: no limit.
struct LayingLimits {
  std::optional<int> pots_a_day; ///< a sowing of more fills a day of its own
  std::vector<std::optional<int>> bench_places;
  std::vector<std::optional<int>> mat_places;
};

/// What would have to give so that nothing is left over: so many pots more are enough, and few in
/// all. Days count as in `DayChoice`.
struct MissingPlaces {
  enum class Limit { pots_a_day, bench, mat };

  Limit limit = Limit::pots_a_day;
  int which = 0; ///< the day, or the index of bench or mat
  int pots = 0;
};

struct Laid {
  std::vector<std::optional<int>> days; ///< of each sowing; empty: left over
  double value = 0.0;
  double bound = 0.0;                 ///< no laying is worth more
  double gap = 0.0;                   ///< (bound - value) / bound
  std::vector<MissingPlaces> missing; ///< empty: nothing with a choice is left over
};

/// When to stop looking for something better.
inline constexpr double good_enough_gap = 0.005;
inline constexpr double most_seconds = 3.0;

/// The laying of most value, as far as it is looked for: by hand first (lay_by_hand.hpp), then by
/// an integer program where what is laid falls short of the bound by more than `good_enough_gap`;
/// that stops at this gap or after `most_seconds`, and what was laid by hand stands where it finds
/// nothing better. The same input gives the same laying, short of that time. Requires: indices are
/// within the limits' lists; limits are positive.
[[nodiscard]] Laid lay(const std::vector<SowingToLay>& sowings, const LayingLimits& limits);

} // namespace nightsow::planner
