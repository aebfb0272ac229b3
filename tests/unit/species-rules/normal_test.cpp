#include "species-rules/normal.hpp"

#include <gtest/gtest.h>

namespace nightsow::species_rules {
namespace {

TEST(Normal, QuantileAndShareUndoEachOther) {
  for (const double share : {1e-12, 1e-6, 0.001, 0.024, 0.075, 0.3, 0.5, 0.6, 0.95, 0.999999}) {
    EXPECT_NEAR(normal_share(normal_quantile(share)), share, 1e-13 + 1e-10 * share) << share;
  }
}

TEST(Normal, IsSymmetric) {
  EXPECT_DOUBLE_EQ(normal_share(0.0), 0.5);
  EXPECT_DOUBLE_EQ(normal_quantile(0.5), 0.0);
  EXPECT_NEAR(normal_quantile(0.1), -normal_quantile(0.9), 1e-15);
}

} // namespace
} // namespace nightsow::species_rules
