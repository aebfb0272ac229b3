#pragma once

#include "planner/answers/expectation.hpp"

#include <optional>
#include <vector>

namespace nightsow::planner {

/// One way to keep a packet until its first water in one season, and what it gives.
struct KeptWay {
  Keeping keeping;
  Date first{};
  std::vector<double> shares; ///< plants of the seeds sown, one a day of first water from `first`
  double most = 0.0;          ///< of them, from the day on on which water is allowed
};

/// Dates of first water that are this near make no odds between ways of keeping.
inline constexpr Days worth_keeping{14};

/// The ways that are worth comparing, as it is kept now first: that one alone where water is
/// allowed soon. Days of first water before `allowed` are worked out, too: they show how late it
/// is.
[[nodiscard]] std::vector<KeptWay> kept_ways(const LineInput& input,
                                             Prospects& prospects,
                                             Date allowed);

/// Whether so many plants of a packet's seeds are enough more to change a plan for: by a twentieth
/// and half a plant (common practice, no source).
[[nodiscard]] bool much_better(double share, double than, std::optional<double> seeds);

/// The first, unless another is much better.
[[nodiscard]] const KeptWay& best_way(const std::vector<KeptWay>& ways,
                                      std::optional<double> seeds);

/// "keep_warm", "fridge", "warm_then_fridge", or "as_it_is" where it is not known how that is.
[[nodiscard]] std::string route_of(const Keeping& keeping, const Packet& packet);

} // namespace nightsow::planner
