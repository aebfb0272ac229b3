#include "planner/cli/record_ground.hpp"

#include "climate/base/nearest_name.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/time_zone.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

std::filesystem::path journal_of(const CommonOptions& common) {
  return common.garden / journal_file_name;
}

Date today_in(const Garden& garden, const CommonOptions& common, const Surroundings& around) {
  return common.today ? *common.today : civil_date(around.now, garden.time_zone);
}

std::vector<std::string> bench_names(const Garden& garden) {
  std::vector<std::string> names;
  names.reserve(garden.benches.size());
  for (const Bench& bench : garden.benches) {
    names.push_back(bench.name);
  }
  return names;
}

std::string bench_typed(const std::string& name, const Garden& garden) {
  const std::vector<std::string> names = bench_names(garden);
  const auto nearest = nearest_name(name, names);
  if (names.empty() || name.empty()) {
    return name;
  }
  if (!nearest || nearest->distance > 0) {
    wrong_use("--bench",
              fmt::format("the garden has no bench {}", shown(name)),
              listed(names),
              nearest ? fmt::format("did you mean \"{}\"? nothing was written", nearest->name)
                      : "type one of them, or add the bench to garden.json");
  }
  return nearest->name;
}

} // namespace nightsow::planner
