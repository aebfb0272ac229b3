#include "planner/model/pot_care.hpp"

#include "planner/model/nights_for_rule.hpp"

namespace nightsow::planner {

PotCare pot_care(const species_rules::Rule& rule, const std::string& cover) {
  using species_rules::Cover;
  using species_rules::HumidityCover;
  PotCare care;
  care.seed_depth_mm = value_or(rule.sowing.cover_mm, 0.0);
  care.grit = cover.empty() ? !rule.sowing.cover || rule.sowing.cover->value != Cover::none
                            : cover != "none";
  care.bag_until_up =
      rule.sowing.humidity_cover && rule.sowing.humidity_cover->value == HumidityCover::useful;
  return care;
}

} // namespace nightsow::planner
