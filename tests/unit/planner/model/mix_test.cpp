#include "planner/model/mix.hpp"

#include <gtest/gtest.h>

namespace nightsow::planner {
namespace {

const KindNames lachenalia{"Lachenalia aloides", "Asparagaceae"};

double litres_of(const std::vector<PartLitres>& parts, std::string_view name) {
  for (const PartLitres& part : parts) {
    if (part.name == name) {
      return part.litres;
    }
  }
  return 0.0;
}

TEST(Mix, IsSeventyPartsMineralWhereNobodySaysOtherwise) {
  const std::vector<PartLitres> parts = parts_of(mix_for({}, lachenalia, {}), 10.0, 0.0);
  EXPECT_NEAR(litres_of(parts, "pumice"), 3.5, 1e-9);
  EXPECT_NEAR(litres_of(parts, "coarse sand"), 1.75, 1e-9);
  EXPECT_NEAR(litres_of(parts, "fine grit"), 1.75, 1e-9);
  EXPECT_NEAR(litres_of(parts, "sieved compost"), 3.0, 1e-9);
}

TEST(Mix, NeedsMoreLooseThanItYields) {
  const std::vector<PartLitres> parts = parts_of(mix_for({}, lachenalia, {}), 9.0, 0.1);
  double sum = 0.0;
  for (const PartLitres& part : parts) {
    sum += part.litres;
  }
  EXPECT_NEAR(sum, 10.0, 1e-9);
}

TEST(Mix, ShareOfARecipeStandsBeforeTheGardensAndThatBeforeTheRules) {
  Garden garden;
  EXPECT_EQ(mix_for(garden, lachenalia, 0.8).mineral_share, 0.8);
  garden.mix_mineral_share = 0.6;
  EXPECT_EQ(mix_for(garden, lachenalia, 0.8).mineral_share, 0.6);
  garden.mix_recipes.push_back({"bulbs", {"Lachenalia"}, 0.75, {{"lava", 1.0}}, {}});
  EXPECT_EQ(mix_for(garden, lachenalia, 0.8).mineral_share, 0.75);
  EXPECT_EQ(mix_for(garden, {"Moraea tripetala", "Iridaceae"}, 0.8).mineral_share, 0.6);
}

TEST(Mix, RecipeOfTheSpeciesStandsBeforeThatOfGenusAndFamily) {
  Garden garden;
  garden.mix_recipes.push_back({"family", {"Asparagaceae"}, 0.5, {}, {}});
  garden.mix_recipes.push_back({"genus", {"Lachenalia"}, 0.6, {}, {}});
  garden.mix_recipes.push_back({"species", {"Lachenalia aloides"}, 0.7, {}, {}});
  EXPECT_EQ(mix_for(garden, lachenalia, {}).name, "species");
  EXPECT_EQ(mix_for(garden, {"Lachenalia rubida", "Asparagaceae"}, {}).name, "genus");
  EXPECT_EQ(mix_for(garden, {"Albuca spiralis", "Asparagaceae"}, {}).name, "family");
}

TEST(Mix, TellsAPartOnBothSidesOnce) {
  const MixRecipe mix{"", {}, 0.5, {{"pumice", 1.0}}, {{"pumice", 1.0}, {"compost", 1.0}}};
  const std::vector<PartLitres> parts = parts_of(mix, 4.0, 0.0);
  ASSERT_EQ(parts.size(), 2U);
  EXPECT_NEAR(parts.front().litres, 3.0, 1e-9);
}

} // namespace
} // namespace nightsow::planner
