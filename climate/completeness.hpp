#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace nightsow::climate {

/// A run of missing values, both days included.
struct Hole {
  Date first{};
  Date last{};

  [[nodiscard]] int days() const { return days_between(first, last) + 1; }

  bool operator==(const Hole&) const = default;
};

/// Holes of so many days or more are listed.
inline constexpr int long_hole_days = 30;

/// How many values of a kind of day are missing.
struct MissingShare {
  int days = 0;
  int missing = 0;

  [[nodiscard]] double share() const {
    return days > 0 ? static_cast<double>(missing) / days : 0.0;
  }
};

/// What is missing of one element, and whether it is missing at random. Weekdays and months leave
/// the long holes out: one lost year would drown all else.
struct Completeness {
  int days = 0;
  int missing = 0;
  int months = 0;                           ///< calendar months wholly inside the series
  int months_lost = 0;                      ///< those of them with too much missing for a mean
  std::vector<Hole> long_holes;             ///< in the order of time
  std::array<MissingShare, 7> by_weekday{}; ///< Sunday first
  std::array<MissingShare, 12> by_month{};  ///< January first
};

/// A month's mean is not to be taken when 11 or more days are missing, or 5 or more in a row
/// (WMO-No. 1203, Guidelines on the Calculation of Climate Normals, 2017).
[[nodiscard]] bool month_is_lost(std::span<const float> month_c);

[[nodiscard]] Completeness completeness(Date first, std::span<const float> values_c);

/// Kinds of days on which clearly more is missing than on others: at least half as much again and 5
/// points more (common practice, no source).
struct Lopsided {
  std::vector<int> of; ///< weekdays (0 = Sunday) or months (0 = January), in their order
  double share = 0.0;  ///< missing on those
  double usual = 0.0;  ///< missing on all the others
};

/// The weekdays that are clearly worse than the best one. Empty when none is, and when more than
/// three are: then it is the good days that stand out, and no weekend.
[[nodiscard]] std::optional<Lopsided> lopsided_week(const Completeness& element);

/// The worst three months in a row (December goes on with January) that are clearly worse than the
/// other nine. Empty when there are none.
[[nodiscard]] std::optional<Lopsided> lopsided_year(const Completeness& element);

} // namespace nightsow::climate
