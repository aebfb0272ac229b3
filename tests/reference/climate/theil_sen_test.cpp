// The Theil-Sen slope beside published examples.
#include "climate/trend.hpp"

#include <gtest/gtest.h>

#include <array>
#include <numeric>

namespace nightsow::climate {
namespace {

// source: USEPA (2009), Unified Guidance, example 17-6 (sulfate), as printed in the help of
// kendallTrendTest of the R package EnvStats: 95 % limits of the slope after Gilbert (1987).
TEST(TheilSen, GivesTheLimitsOfTheUnifiedGuidancesExampleOfSulfate) {
  constexpr std::array sulfate{480.0, 450.0, 490.0, 520.0, 485.0, 510.0, 510.0, 530.0,
                               510.0, 560.0, 560.0, 540.0, 590.0, 550.0, 600.0, 700.0,
                               570.0, 610.0, 650.0, 620.0, 830.0, 720.0, 590.0};
  constexpr std::array time{89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6,
                            93.1, 93.6, 94.1, 94.6, 95.1, 95.6, 95.8, 96.1, 96.3, 96.6, 96.8};
  const TheilSen trend = theil_sen(time, sulfate).value();
  EXPECT_NEAR(trend.low, 20.0, 6e-6);
  EXPECT_NEAR(trend.high, 35.71182, 6e-6);
}

// source: the same, example 17-7 (sodium); the printed slope, 1.33, is from memory.
TEST(TheilSen, GivesTheUnifiedGuidancesExampleOfSodium) {
  constexpr std::array sodium{56.0, 53.0, 51.0, 55.0, 52.0, 60.0, 62.0, 59.0, 61.0, 63.0};
  constexpr std::array time{89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3};
  EXPECT_NEAR(theil_sen(time, sodium).value().slope, 1.33, 0.005);
}

// source: vignette of the R package trend, section 2.1, sens.slope of the suspended sediment of the
// Rhine at Maxau 1965-2009. Its data are printed to five decimals, the slope was taken from more.
TEST(TheilSen, GivesTheSedimentAtMaxau) {
  constexpr std::array sediment{
      37.38356, 31.28219, 26.41918, 28.82787, 32.88219, 37.5726,  27.34247, 29.85792, 35.49315,
      28.90411, 25.69315, 16.96995, 28.90137, 20.25205, 19.26849, 19.19126, 24.33699, 28.81096,
      17.69589, 19.63661, 20.95616, 29.10411, 27.34521, 27.60383, 20.98904, 26.96986, 27.44384,
      32.79235, 27.56164, 30.72877, 33.14521, 25.77869, 25.28767, 24.40822, 28.38356, 17.97268,
      16.09589, 17.26849, 11.89041, 13.77049, 21.46897, 23.09863, 16.44413, 15.77322, 13.87363};
  std::array<double, sediment.size()> year{};
  std::iota(year.begin(), year.end(), 1965.0);
  EXPECT_NEAR(theil_sen(year, sediment).value().slope, -0.2876139, 6e-7);
  EXPECT_NEAR(mann_kendall(sediment).z, -3.8445, 6e-5);
  EXPECT_NEAR(mann_kendall(sediment).p_value, 0.0001208, 6e-8);
}

} // namespace
} // namespace nightsow::climate
