#pragma once

#include <optional>
#include <span>

namespace nightsow::planner {

enum class NightsWanted { cool, warm };

/// The nights that came nearest to what seed waits for.
struct BestWindow {
  int met = 0;                      ///< most nights of a window at the limit or beyond
  std::optional<double> deciding_c; ///< where it was coolest (warmest), the N-th coolest of M;
                                    ///< empty: there are not M nights yet
  std::optional<int> day;           ///< last of the first window in which N of M met the limit
};

/// Windows of `of` nights that lie wholly among `nights_c`, one a day; of fewer nights one window.
/// Nights at or under the limit meet it, of NightsWanted::warm those at or above. Requires:
/// 1 <= needed <= of.
[[nodiscard]] BestWindow best_window(
    std::span<const double> nights_c, int needed, int of, double limit_c, NightsWanted wanted);

} // namespace nightsow::planner
