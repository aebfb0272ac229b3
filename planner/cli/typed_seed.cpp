#include "planner/cli/typed_seed.hpp"

#include "planner/cli/typed_values.hpp"
#include "planner/garden/packet_values.hpp"
#include "planner/garden/store_stages.hpp"

#include <string>

namespace nightsow::planner {

SeedAge typed_age(std::string_view option, std::string_view text) {
  const auto age = parse_seed_age(text);
  if (!age) {
    wrong_use(option, "is " + shown(text), "a number with its unit: 18mo, 2y, 90d or 6w");
  }
  return *age;
}

std::vector<StoreStage> typed_store(std::string_view option, std::string_view text) {
  auto stages = parse_store_stages(text);
  if (!stages) {
    wrong_use(option,
              "is " + shown(text),
              "shelf, fridge, freezer, indoors or unknown, a word with a temperature, or stages "
              "such as \"shelf 22C to 2026-03-01; fridge\"");
  }
  return *std::move(stages);
}

GerminationTest typed_test(std::string_view option, std::string_view text) {
  const auto test = parse_germination_test(text);
  if (!test) {
    wrong_use(option,
              "is " + shown(text),
              "seeds up of seeds tried, the day and the temperature: \"14/20 2026-01-10 15C\"");
  }
  return *test;
}

} // namespace nightsow::planner
