#include "planner/cli/record_ground.hpp"

#include "climate/base/nearest_name.hpp"
#include "planner/cli/typed_values.hpp"
#include "planner/garden/load_garden.hpp"
#include "planner/garden/time_zone.hpp"

#include <fmt/format.h>

namespace nightsow::planner {

namespace {

/// What is typed for an option that takes one of the garden's things of a kind.
std::string one_typed(const char* option,
                      const char* kind,
                      const std::string& name,
                      const std::vector<std::string>& names) {
  const auto nearest = nearest_name(name, names);
  if (names.empty() || name.empty()) {
    return name;
  }
  if (!nearest || nearest->distance > 0) {
    wrong_use(option,
              fmt::format("the garden has no {} {}", kind, shown(name)),
              listed(names),
              nearest ? fmt::format("did you mean \"{}\"? nothing was written", nearest->name)
                      : fmt::format("type one of them, or add the {} to garden.json", kind));
  }
  return nearest->name;
}

} // namespace

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
  return one_typed("--bench", "bench", name, bench_names(garden));
}

std::string mat_typed(const std::string& name, const Garden& garden) {
  std::vector<std::string> names;
  for (const HeatMat& mat : garden.mats) {
    if (!mat.name.empty()) {
      names.push_back(mat.name);
    }
  }
  return one_typed("--mat", "mat", name, names);
}

} // namespace nightsow::planner
