#pragma once

#include "species-rules/estimate.hpp"

namespace nightsow::species_rules {

// After-ripening: dry seed of many kinds comes up only after warmth. The form and its constants are
// the project's own model (common practice, no source).

/// No after-ripening at or under this, °C, for a rule that leaves it open. Published ones of other
/// species run from 1.6 to 8.2 °C, so a fridge ripens some kinds slowly and others not at all.
[[nodiscard]] Estimate usual_ripening_base_c();

/// Spread between seeds, of the natural logarithm.
inline constexpr double ripening_spread = 0.5;

/// What the humidity of the store, 0..1, leaves of ripening: 1 at 30 to 60 %, 0 from 80 % on, 0.2
/// at 15 % and under (very dry), straight between.
[[nodiscard]] double ripening_weight(double humidity);

/// What a day in a store adds, °C d: max(0, t - base) times that weight.
[[nodiscard]] double ripening_c_d_a_day(double store_c, double humidity, double base_c);

/// Share of sound seed that is ripe, 0..1, after a sum of these: log-normal about the sum that half
/// of it needs; 0 needed: all are. Requires: both not negative.
[[nodiscard]] double ripe_share(double ripened_c_d, double needed_c_d);

/// The same where seed may need no ripening at all, with a chance of 0..1.
[[nodiscard]] double ripe_or_needs_none(double ripe_share, double needs_none);

/// A share and the range in which about four in five cases lie.
struct ShareRange {
  double share = 0.0;
  double low = 0.0;
  double high = 0.0;

  bool operator==(const ShareRange&) const = default;
};

/// The same when the sum needed is not known exactly.
[[nodiscard]] ShareRange ripe_range(double ripened_c_d, const Estimate& needed_c_d);

/// Share of all seed that can come up in this season, 0..1: alive, ripe, and not among those that
/// wait a year longer. `deferral_share` is of ripe sound seed.
[[nodiscard]] double share_for_this_season(double alive, double ripe, double deferral_share);

} // namespace nightsow::species_rules
