#include "species-rules/catalogue.hpp"

#include <gtest/gtest.h>

// What growers of these plants hold in common (common practice, no source), against the catalogue:
// whoever changes a rule past these bounds should know that growers would be surprised.
namespace nightsow::species_rules {
namespace {

Rule rule_of(std::string_view taxon) {
  static const Catalogue catalogue = Catalogue::embedded();
  const auto found = catalogue.rule_for(taxon).found;
  EXPECT_TRUE(found) << taxon;
  return found ? found->rule : Rule{};
}

// common practice, no source
TEST(KnownKinds, SeedLikeDustIsBarelyCoveredOrNotAtAll) {
  const Rule crassula = rule_of("Crassula");
  EXPECT_LE(crassula.seed.size->value, SeedSize::fine);
  EXPECT_LE(crassula.sowing.cover->value, Cover::dusting);
  EXPECT_LE(crassula.sowing.cover_mm ? crassula.sowing.cover_mm->value : 0.0, 1.0);
}

// common practice, no source
TEST(KnownKinds, MonsoniaGetsAPotForEachSeed) {
  EXPECT_EQ(rule_of("Monsonia").sowing.seeds_per_pot->value, 1.0);
}

// common practice, no source
TEST(KnownKinds, SeedOfMesembsKeepsForManyYears) {
  for (const std::string_view genus : {"Conophytum", "Lithops", "Gibbaeum", "Sceletium"}) {
    EXPECT_GE(rule_of(genus).seed.half_life_years->value, 5.0) << genus;
  }
}

// common practice, no source
TEST(KnownKinds, SeedOfAlbucaAndEriospermumScarcelyKeepsOneYear) {
  for (const std::string_view genus : {"Albuca", "Eriospermum"}) {
    EXPECT_LE(rule_of(genus).seed.half_life_years->value, 1.5) << genus;
  }
}

// common practice, no source
TEST(KnownKinds, WinterGrowersOfTheCapeWaitForCoolNights) {
  for (const std::string_view genus :
       {"Conophytum", "Lachenalia", "Moraea", "Bulbine", "Romulea"}) {
    const Rule rule = rule_of(genus);
    EXPECT_EQ(rule.gate.start->value, Start::cool) << genus;
    EXPECT_EQ(rule.gate.growth->value, Growth::winter) << genus;
    EXPECT_NE(rule.sowing.mat->value, Mat::needed) << genus;
  }
}

} // namespace
} // namespace nightsow::species_rules
