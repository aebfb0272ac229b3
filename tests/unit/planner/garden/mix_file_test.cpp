#include "climate/base/problem.hpp"
#include "planner/garden/garden_file.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::planner {
namespace {

Garden read_with(const std::string& keys) {
  return read_garden_file(
      "{" + keys + R"(, "latitude": -33, "longitude": 19, "readings": [{"file": "a.csv"}]})",
      "garden.json");
}

TEST(MixFile, ReadsPartsRecipesAndPots) {
  const Garden garden = read_with(R"("mix": {"shrink": 0.15, "mineral": {"lava": 3, "grit": 1},
      "organic": {"leaf mould": 1},
      "recipes": [{"name": "gritty", "for": ["Monsonia"], "mineral_share": 0.9}]},
    "pots": [{"depth": "deep", "top_cm": 9, "base_cm": 6.5, "deep_cm": 13}])");
  EXPECT_EQ(garden.mix_shrink, 0.15);
  EXPECT_EQ(garden.mix_mineral.at(0).name, "lava");
  EXPECT_EQ(garden.mix_mineral.at(0).parts, 3.0);
  EXPECT_EQ(garden.mix_organic.at(0).name, "leaf mould");
  EXPECT_EQ(garden.mix_recipes.at(0).taxa.at(0), "Monsonia");
  EXPECT_EQ(garden.mix_recipes.at(0).mineral_share, 0.9);
  EXPECT_EQ(garden.pot_sizes.at(0).deep_cm, 13.0);
}

TEST(MixFile, RefusesWhatIsNoMixOrPot) {
  const auto refused = [](const std::string& keys) {
    return support::fault<InputError>([&] { return read_with(keys); });
  };
  EXPECT_NE(refused(R"("mix": {"mineral": {"grit": 0}})").find("parts by volume"),
            std::string::npos);
  EXPECT_NE(refused(R"("mix": {"shrink": 15})").find("from 0 to 0.5"), std::string::npos);
  EXPECT_NE(refused(R"("mix": {"recipes": [{"name": "x"}]})").find("\"for\" is missing"),
            std::string::npos);
  const std::string pot = R"({"depth": "deep", "top_cm": 9, "base_cm": 6, "deep_cm": 13})";
  EXPECT_NE(refused("\"pots\": [" + pot + ", " + pot + "]").find("a second pot \"deep\""),
            std::string::npos);
}

} // namespace
} // namespace nightsow::planner
