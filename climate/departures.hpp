#pragma once

#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"
#include "climate/smooth_year.hpp"

#include <span>
#include <vector>

namespace nightsow::climate {

/// How far nights, or days, lay above (+) or below (-) the smooth year of their own date, K; NaN is
/// missing. Dates are contiguous.
class DepartureRow {
public:
  DepartureRow() = default;

  DepartureRow(Date first, std::vector<float> departures_k)
      : first_(first), departures_k_(std::move(departures_k)) {}

  [[nodiscard]] Date first() const { return first_; }

  [[nodiscard]] std::size_t size() const { return departures_k_.size(); }

  /// NaN outside of the row.
  [[nodiscard]] float at(Date day) const;

  /// `count` dates from `from` on; dates outside are NaN.
  [[nodiscard]] std::vector<float> from(Date from, int count) const;

  /// Mean of the `count` dates that end on `last`; NaN when fewer than half of them are there.
  [[nodiscard]] double mean_of(Date last, int count) const;

private:
  Date first_{};
  std::vector<float> departures_k_;
};

struct Departures {
  DepartureRow night;
  DepartureRow day; ///< all missing where the smooth year knows no days
};

[[nodiscard]] Departures departures(const DailySeries& series, const SmoothYear& smooth);

} // namespace nightsow::climate
