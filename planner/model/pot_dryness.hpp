#pragma once

#include "planner/model/once.hpp"
#include "planner/model/range_maximum.hpp"

#include <cstddef>
#include <memory>
#include <vector>

namespace nightsow::planner {

/// Evaporation since the last water at the end of each day, mm: so much goes from a pot a day, and
/// it is watered at the end of the day on which more than `watering_point_mm` has gone.
[[nodiscard]] RangeMaximum since_water_mm(const std::vector<double>& a_day_mm,
                                          double watering_point_mm);

/// How dry the top of a pot gets for the seed in it, between waterings, in one course of days.
class PotDryness {
public:
  /// Since the last water, mm: many kinds of seed share it.
  PotDryness(std::shared_ptr<const RangeMaximum> since_water_mm, double seed_depth_mm);

  /// The first day on which it is driest. Requires: 0 <= first <= last, both within the days.
  [[nodiscard]] int driest(int first, int last) const { return since_water_mm_->of(first, last); }

  /// Share of pots dry for the seed on a day, 0..1.
  [[nodiscard]] double dry_share(int day) {
    return once(dry_[static_cast<std::size_t>(day)], [&] { return worked_out(day); });
  }

private:
  [[nodiscard]] double worked_out(int day) const;

  std::shared_ptr<const RangeMaximum> since_water_mm_;
  double seed_depth_mm_ = 0.0;
  std::vector<double> dry_; ///< NaN: not needed yet
};

} // namespace nightsow::planner
