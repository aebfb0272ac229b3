#include "species-rules/viability.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

// Published figures against species-rules/viability.hpp. Numbers such as S5-003 are those of our
// list of checked values. "viabilitymetrics" is the R package of that name (ICAR-NBPGR), whose
// manual prints results of the equation of Ellis & Roberts (1980), Annals of Botany 45:13-30; its
// constants are compiled from Hong, Linington & Ellis (1996).
namespace nightsow::species_rules {
namespace {

// S5-015: viabilitymetrics, Ke(36, 10): 36.3768 from K = 36 at 10 °C, so log10 of sigma falls by
// 0.3768 from 0 to 10 °C.
TEST(ViabilityReference, TenDegreesAboveZeroCostWhatTheUniversalTermsSay) {
  EXPECT_NEAR(std::log10(ageing_factor(10) / ageing_factor(0)), 36.3768 - 36, 6e-5);
}

// S5-003: viabilitymetrics, Sigma(): soybean at 8 % moisture and -18 °C, 18719.85 days; S5-041: the
// same constants (7.525, 4.086, universal; Ellis et al. 1982, Dickie et al. 1990) at 20 °C, 967.8.
TEST(ViabilityReference, SoybeanKeepsNineteenTimesLongerInTheFreezer) {
  EXPECT_NEAR(1 / ageing_factor(-18), 18719.85 / 967.8, 0.002);
}

// S5-013: viabilitymetrics, P50(): chickpea at 5 % moisture and -20 °C, 98 % sound at first,
// 1960829 days; S5-039: sigma at -18 °C, 892114.1. P50 = Ki sigma, and Ki of 98 % is 2.053749.
TEST(ViabilityReference, ChickpeaAtTwoFreezersDiffersByTheUniversalTerms) {
  const double sigma_at_minus_20 = 1960829 / 2.053749;
  EXPECT_NEAR(ageing_factor(-20) / ageing_factor(-18), 892114.1 / sigma_at_minus_20, 1e-5);
}

// S5-023 to S5-028: viabilitymetrics, Percent2Probit(), less the 5 that is added there.
TEST(ViabilityReference, TheShareAliveFollowsThePublishedProbits) {
  const double half_life_of_one_year_a_probit = initial_probit;
  for (const auto& [share, probit] : {std::pair{0.95, 1.644854},
                                      {0.90, 1.281552},
                                      {0.85, 1.036433},
                                      {0.75, 0.674490},
                                      {0.50, 0.0},
                                      {0.25, -0.674490}}) {
    EXPECT_NEAR(share_alive(half_life_of_one_year_a_probit, initial_probit - probit), share, 1e-6);
  }
}

// S5-055: Harrington (1972), as restated by extension services: life halves with each 10 °F. The
// universal terms agree near room temperature, less so far from it.
TEST(ViabilityReference, TenDegreesFahrenheitAboutHalveTheLifeInARoom) {
  EXPECT_NEAR(ageing_factor(20 + 10 / 1.8) / ageing_factor(20), 2.0, 0.2);
}

} // namespace
} // namespace nightsow::species_rules
