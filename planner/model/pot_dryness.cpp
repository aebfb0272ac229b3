#include "planner/model/pot_dryness.hpp"

#include "species-rules/drying.hpp"

#include <limits>
#include <utility>

namespace nightsow::planner {

RangeMaximum since_water_mm(const std::vector<double>& a_day_mm, double watering_point_mm) {
  std::vector<double> since;
  since.reserve(a_day_mm.size());
  double gone_mm = 0.0;
  for (const double mm : a_day_mm) {
    gone_mm += mm;
    since.push_back(gone_mm);
    if (gone_mm > watering_point_mm) {
      gone_mm = 0.0;
    }
  }
  return RangeMaximum{std::move(since)};
}

PotDryness::PotDryness(std::shared_ptr<const RangeMaximum> since_water_mm, double seed_depth_mm)
    : since_water_mm_(std::move(since_water_mm)), seed_depth_mm_(seed_depth_mm),
      dry_(since_water_mm_->size(), std::numeric_limits<double>::quiet_NaN()) {}

double PotDryness::worked_out(int day) const {
  return species_rules::dry_share(since_water_mm_->value(day), seed_depth_mm_);
}

} // namespace nightsow::planner
