#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace nightsow::climate {

// Trends that assume no distribution: ranks and medians only.

/// Mann-Kendall test for a monotonic trend (Mann 1945, Kendall 1975), corrected for ties and for
/// continuity.
struct MannKendall {
  double s = 0.0;        ///< sum of signs of all later minus earlier values
  double variance = 0.0; ///< of s when there is no trend
  double z = 0.0;
  double p_value = 1.0; ///< two-sided, by the normal approximation
};

/// Values in the order of time. Fewer than two, or all equal: no trend, p_value 1.
[[nodiscard]] MannKendall mann_kendall(std::span<const double> values);

/// Median slope (Theil 1950, Sen 1968) with the 95 % limits of Gilbert (1987), Statistical Methods
/// for Environmental Pollution Monitoring, at interpolated ranks.
struct TheilSen {
  double slope = 0.0;
  double low = 0.0;  ///< lower 95 % limit of the slope
  double high = 0.0; ///< upper one
};

/// Times need not be equally spaced; pairs at the same time do not count. Same length. Empty when
/// no two times differ.
[[nodiscard]] std::optional<TheilSen> theil_sen(std::span<const double> times,
                                                std::span<const double> values);

/// Fewer values than this make no trend worth printing (common practice, no source).
inline constexpr std::size_t least_values_for_theil_sen = 10;

} // namespace nightsow::climate
