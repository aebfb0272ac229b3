#include "planner/model/count_range.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cstddef>

namespace nightsow::planner {
namespace {

// Sex of the first twelve children in 6115 families (Geissler 1889), expected counts of the
// beta-binomial with alpha 34.1350 and beta 31.6085, as often reprinted; from memory. The counts
// differ by up to 0.15 from the rounding of alpha and beta.
TEST(BetaBinomial, GivesThePublishedCountsOfFamilies) {
  constexpr double alpha = 34.1350;
  constexpr double beta = 31.6085;
  constexpr std::array expected{
      2.3, 22.6, 104.8, 310.9, 655.7, 1036.2, 1257.9, 1182.1, 853.6, 461.9, 177.9, 43.8, 5.2};
  const std::vector<double> chances =
      beta_binomial(12, alpha / (alpha + beta), 1.0 / (alpha + beta + 1.0));
  for (std::size_t k = 0; k < expected.size(); ++k) {
    EXPECT_NEAR(6115.0 * chances.at(k), expected.at(k), 0.2) << k;
  }
}

} // namespace
} // namespace nightsow::planner
