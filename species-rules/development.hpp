#pragma once

#include "species-rules/rule.hpp"

#include <algorithm>

namespace nightsow::species_rules {

/// Where progress towards emergence begins, is fastest and ends, °C of the seed itself.
/// base_c < optimum_c < ceiling_c.
struct CardinalTemperatures {
  double base_c = 3.0;
  double optimum_c = 17.0;
  double ceiling_c = 28.0;
};

/// Progress in °C d a day at a steady temperature: 0 at and under the base, t - base up to the
/// optimum, then straight down to 0 at the ceiling and over it. Triangular response of thermal time
/// (Garcia-Huidobro, Monteith and Squire 1982, J. Exp. Bot. 33: 288-296, with a second line above
/// the optimum).
[[nodiscard]] inline double thermal_rate(double seed_c, const CardinalTemperatures& cardinal) {
  const double rising = seed_c - cardinal.base_c;
  const double falling = (cardinal.ceiling_c - seed_c) / (cardinal.ceiling_c - cardinal.optimum_c);
  return std::max(0.0, std::min(rising, (cardinal.optimum_c - cardinal.base_c) * falling));
}

/// What a day's swing (highest minus lowest hour at the seed, K) makes of its progress, up to 1:
/// s = a + (1 - a) / (1 + exp(-(swing - 6) / 1.5)), a = 0.85 where it is indifferent, 0.6 helpful,
/// 0.1 needed (common practice, no source; set so that it looked right to a grower).
[[nodiscard]] double swing_factor(double swing_k, Swing need);

/// The same in two steps: how much of a swing seed feels, 0..1, and what its need makes of that.
[[nodiscard]] double swing_felt(double swing_k);
[[nodiscard]] double swing_factor_of(double felt, Swing need);

/// Share up, 0..1, of seed released together, so many °C d later: log-normal about
/// `thermal_time_c_d` with `spread` of the natural logarithm; without spread all at once.
/// Requires: thermal_time_c_d > 0, spread >= 0. Nothing is up at 0 and under.
[[nodiscard]] double emerged_share(double passed_c_d, double thermal_time_c_d, double spread);

/// The °C d by which a share of it is up. 0 < share < 1.
[[nodiscard]] double emergence_time_c_d(double share, double thermal_time_c_d, double spread);

} // namespace nightsow::species_rules
