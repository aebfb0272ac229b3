#include "species-rules/drawn_parameters.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <string>
#include <vector>

namespace nightsow::species_rules {
namespace {

RuleFor kind(const std::string& family, const std::string& accepted) {
  RuleFor result;
  result.family = family;
  result.accepted = accepted;
  result.rule.gate.start = Choice<Start>{Start::cool, {}};
  result.rule.gate.night_limit_c = Estimate{13, 11, 16, {}};
  result.rule.seed.half_life_years = Estimate{4, 2, 7, {}};
  result.rule.seed.after_ripening_c_d = Estimate{1200, 700, 2200, {}};
  result.rule.seed.deferral_share = Estimate{0.1, 0.0, 0.3, {}};
  return result;
}

double correlation(const std::vector<double>& a, const std::vector<double>& b) {
  const double products = std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
  const double own = std::inner_product(a.begin(), a.end(), a.begin(), 0.0);
  return products / own; // both are the same figures, about 0, in two orders
}

template <class Get> std::vector<double> sorted_of(const RuleFor& of, int draws, Get get) {
  std::vector<double> values;
  for (const SeedParameters& seed : drawn_parameters(of, draws)) {
    values.push_back(get(seed));
  }
  std::sort(values.begin(), values.end());
  return values;
}

// Draws lie at (i + 0.5) / n of the distribution; between two of them is its quantile.
double quantile(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size()) - 0.5;
  const auto below = static_cast<std::size_t>(std::floor(place));
  const double part = place - std::floor(place);
  return sorted[below] + part * (sorted[below + 1] - sorted[below]);
}

TEST(DrawnParameters, ATenthLiesUnderLowHalfUnderTheValueATenthOverHigh) {
  const RuleFor moraea = kind("Iridaceae", "Moraea villosa");
  for (const int draws : {usual_draws, 1000}) {
    const auto limits =
        sorted_of(moraea, draws, [](const SeedParameters& s) { return s.release->limit_c; });
    EXPECT_NEAR(quantile(limits, 0.1), 11, 0.05);
    EXPECT_NEAR(quantile(limits, 0.5), 13, 0.05);
    EXPECT_NEAR(quantile(limits, 0.9), 16, 0.05);
    const auto lives =
        sorted_of(moraea, draws, [](const SeedParameters& s) { return s.half_life_years; });
    EXPECT_NEAR(quantile(lives, 0.1), 2, 0.04);
    EXPECT_NEAR(quantile(lives, 0.5), 4, 0.08);
    EXPECT_NEAR(quantile(lives, 0.9), 7, 0.1);
  }
}

TEST(DrawnParameters, TheMiddleOfAnEvenRangeIsItsMean) {
  RuleFor even = kind("Iridaceae", "Moraea villosa");
  even.rule.gate.night_limit_c = Estimate{13, 11, 15, {}};
  const auto limits =
      sorted_of(even, usual_draws, [](const SeedParameters& s) { return s.release->limit_c; });
  EXPECT_NEAR(std::accumulate(limits.begin(), limits.end(), 0.0) / usual_draws, 13, 1e-9);
}

TEST(DrawnParameters, RelativesAreDrawnAlikeByTheWeightsTheyShare) {
  constexpr int draws = 4096;
  const auto z = [&](const char* family, const char* accepted, const char* key) {
    return drawn_z(kind(family, accepted), key, draws);
  };
  const auto own = z("Iridaceae", "Moraea villosa", "night_limit_c");
  const auto sister = z("Iridaceae", "Moraea flaccida", "night_limit_c");
  const auto cousin = z("Iridaceae", "Romulea rosea", "night_limit_c");
  const auto stranger = z("Aizoaceae", "Conophytum minutum", "night_limit_c");
  // One standard deviation of a correlation of so many is 0.016.
  EXPECT_NEAR(correlation(own, sister), family_weight + genus_weight, 0.05);
  EXPECT_NEAR(correlation(own, cousin), family_weight, 0.05);
  EXPECT_NEAR(correlation(own, stranger), 0, 0.05);
  EXPECT_NEAR(correlation(own, z("Iridaceae", "Moraea villosa", "half_life_years")), 0, 0.05);
  EXPECT_NEAR(correlation(own, own), 1, 1e-12);
}

TEST(DrawnParameters, RelativesAreAlikeWithTheUsualFewDraws) {
  const auto own = drawn_z(kind("Iridaceae", "Moraea villosa"), "night_limit_c", usual_draws);
  const auto sister = drawn_z(kind("Iridaceae", "Moraea flaccida"), "night_limit_c", usual_draws);
  const auto stranger = drawn_z(kind("Aizoaceae", "Lithops"), "night_limit_c", usual_draws);
  EXPECT_GT(correlation(own, sister), 0.5);
  EXPECT_LT(std::abs(correlation(own, stranger)), 0.35);
}

TEST(DrawnParameters, AValueOfTheSpeciesOwnSharesTheErrorOfItsFamily) {
  RuleFor own = kind("Iridaceae", "Moraea villosa");
  own.rule.gate.night_limit_c->ground.origin = Origin::grower;
  EXPECT_EQ(drawn_z(own, "night_limit_c", 64),
            drawn_z(kind("Iridaceae", "Moraea villosa"), "night_limit_c", 64));
}

TEST(DrawnParameters, TheSameKindIsDrawnTheSameByteByByte) {
  const RuleFor moraea = kind("Iridaceae", "Moraea villosa");
  const auto once = drawn_parameters(moraea);
  const auto twice = drawn_parameters(moraea);
  ASSERT_EQ(once.size(), 64U);
  for (std::size_t i = 0; i < once.size(); ++i) {
    EXPECT_EQ(once[i].release->limit_c, twice[i].release->limit_c);
    EXPECT_EQ(once[i].half_life_years, twice[i].half_life_years);
    EXPECT_EQ(once[i].deferral_share, twice[i].deferral_share);
  }
}

TEST(DrawnParameters, AFactorIsDrawnInLogarithmsAndNoneWithoutARange) {
  const Estimate life{4, 2, 8, {}};
  EXPECT_NEAR(drawn_value(life, 2 * 1.2815515655446, true), 16, 1e-9);
  EXPECT_NEAR(drawn_value(life, 2 * 1.2815515655446, false), 12, 1e-9);
  EXPECT_NEAR(drawn_value(life, -1.2815515655446, true), 2, 1e-9);
  EXPECT_EQ(drawn_value(life, 0, true), 4);
  EXPECT_EQ(drawn_value({0, 0, 300, {}}, 0, true), 0);
  RuleFor exact = kind("Iridaceae", "Moraea villosa");
  exact.rule.seed.half_life_years = Estimate{4, 4, 4, {}};
  for (const SeedParameters& seed : drawn_parameters(exact)) {
    EXPECT_EQ(seed.half_life_years, 4);
  }
}

TEST(DrawnParameters, EveryDrawOfTheCatalogueIsWithinBoundsAndInOrder) {
  const Catalogue catalogue = Catalogue::embedded();
  for (const std::string& name : catalogue.rule_names()) {
    for (const SeedParameters& seed : drawn_parameters(*catalogue.rule_for(name).found)) {
      EXPECT_LT(seed.cardinal.base_c, seed.cardinal.optimum_c) << name;
      EXPECT_LT(seed.cardinal.optimum_c, seed.cardinal.ceiling_c) << name;
      EXPECT_LE(seed.older_frost_limit_c, seed.frost_limit_c) << name;
      EXPECT_LE(seed.nights, seed.of) << name;
      EXPECT_GE(seed.deferral_share, 0.0) << name;
      EXPECT_LE(seed.deferral_share, 1.0) << name;
      EXPECT_GE(seed.germination_share, 0.0) << name;
      EXPECT_LE(seed.germination_share, 1.0) << name;
      EXPECT_GE(seed.half_life_years, 0.01) << name;
      EXPECT_GE(seed.after_ripening_c_d, 0.0) << name;
      EXPECT_GT(seed.thermal_time_c_d, 0.0) << name;
      EXPECT_GE(seed.growth_needed_days, 0.0) << name;
    }
  }
}

} // namespace
} // namespace nightsow::species_rules
