// The Mann-Kendall test beside published examples.
#include "climate/trend.hpp"

#include <gtest/gtest.h>

#include <array>

namespace nightsow::climate {
namespace {

// source: USEPA (2009), Unified Guidance, example 17-6, page 17-33 (sulfate), as printed in the
// help of kendallTrendTest of the R package EnvStats.
constexpr std::array sulfate{480.0, 450.0, 490.0, 520.0, 485.0, 510.0, 510.0, 530.0,
                             510.0, 560.0, 560.0, 540.0, 590.0, 550.0, 600.0, 700.0,
                             570.0, 610.0, 650.0, 620.0, 830.0, 720.0, 590.0};

TEST(MannKendall, GivesTheUnifiedGuidancesExampleOfSulfate) {
  const MannKendall test = mann_kendall(sulfate);
  EXPECT_EQ(test.s, 194.0);
  EXPECT_NEAR(test.z, 5.107322, 6e-7);
  EXPECT_NEAR(test.p_value, 3.267574e-7, 6e-14);
}

// source: vignette of the R package trend, section 1.1, mk.test of the annual discharge of the
// Rhine at Maxau 1965-2009.
TEST(MannKendall, GivesTheDischargeAtMaxau) {
  constexpr std::array discharge{
      1649.3534, 1585.2685, 1370.1123, 1520.9016, 1255.726,  1808.3425, 864.1068,  959.306,
      1141.5534, 1216.2329, 1344.4247, 861.9098,  1402.9233, 1415.8384, 1349.7973, 1419.0995,
      1523.7537, 1535.4712, 1365.4521, 1228.2486, 1114.0137, 1339.9178, 1537.3315, 1448.2596,
      1000.7863, 1095.2137, 1055.3151, 1208.9727, 1174.0082, 1356.6411, 1565.474,  1112.5437,
      1163.9205, 1143.3041, 1723.8329, 1400.8662, 1632.989,  1495.7014, 915.7534,  1062.4227,
      1048.9845, 1263.6548, 1286.674,  1205.0519, 1112.3863};
  const MannKendall test = mann_kendall(discharge);
  EXPECT_EQ(test.s, -144.0);
  EXPECT_NEAR(test.variance, 10450.0, 0.5);
  EXPECT_NEAR(test.z, -1.3989, 6e-5);
  EXPECT_NEAR(test.p_value, 0.1619, 6e-5);
}

} // namespace
} // namespace nightsow::climate
