#include "planner/cli/record_ground.hpp"

#include "planner/garden/load_garden.hpp"
#include "planner/garden/time_zone.hpp"

namespace nightsow::planner {

std::filesystem::path journal_of(const CommonOptions& common) {
  return common.garden / journal_file_name;
}

Date today_in(const Garden& garden, const CommonOptions& common, const Surroundings& around) {
  return common.today ? *common.today : civil_date(around.now, garden.time_zone);
}

} // namespace nightsow::planner
