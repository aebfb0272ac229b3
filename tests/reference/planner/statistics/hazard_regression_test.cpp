#include "planner/statistics/hazard_regression.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace nightsow::planner {
namespace {

using Priors = std::vector<std::optional<CoefficientPrior>>;

const Priors three_free(3);

// Invented counts; recorded.R beside this file holds the same.
std::vector<HazardRow> invented_rows() {
  const std::vector<double> waiting{40, 40, 38, 33, 25, 30, 30, 29, 24, 15};
  const std::vector<double> came{0, 2, 5, 8, 9, 0, 1, 5, 9, 6};
  const std::vector<double> window_c{19.5, 17.2, 15.8, 14.1, 12.6, 18.8, 17.9, 15.1, 13.0, 11.4};
  std::vector<HazardRow> rows;
  for (std::size_t i = 0; i < waiting.size(); ++i) {
    rows.push_back({waiting[i], came[i], {1.0, window_c[i], i < 5 ? 0.0 : 1.0}});
  }
  return rows;
}

// Singer and Willett (2003), Table 11.1, as rows of a grade and a group each.
std::vector<HazardRow> published_rows(bool with_group) {
  const std::vector<double> at_risk{72, 70, 68, 60, 52, 42, 108, 95, 90, 74, 53, 38};
  const std::vector<double> events{2, 2, 8, 8, 10, 8, 13, 5, 16, 21, 15, 18};
  std::vector<HazardRow> rows;
  for (std::size_t i = 0; i < at_risk.size(); ++i) {
    HazardRow row{at_risk[i], events[i], std::vector<double>(6, 0.0)};
    row.explains[i % 6] = 1.0;
    if (with_group) {
      row.explains.push_back(i < 6 ? 0.0 : 1.0);
    }
    rows.push_back(row);
  }
  return rows;
}

// glm of R 4.2.2, binomial with cloglog and logit link; recorded.R.
TEST(HazardOfSeed, CoefficientsAreThoseOfR) {
  struct Recorded {
    HazardLink link;
    std::vector<double> coefficients;
    std::vector<double> errors;
    double deviance;
  };

  const std::vector<Recorded> recorded{{HazardLink::complementary_log_log,
                                        {5.07511608737, -0.459652833895, -0.128535924673},
                                        {1.13562787399, 0.0782514202393, 0.312821914124},
                                        5.6622179693},
                                       {HazardLink::logit,
                                        {6.17536714809, -0.525781904004, -0.102005612298},
                                        {1.32946901095, 0.0902827078737, 0.364067084535},
                                        4.61995082768}};
  for (const Recorded& one : recorded) {
    const std::optional<HazardFit> fit = fit_hazard(invented_rows(), three_free, one.link);
    ASSERT_TRUE(fit);
    for (std::size_t i = 0; i < one.coefficients.size(); ++i) {
      EXPECT_NEAR(fit->coefficients.at(i), one.coefficients.at(i), 1e-6);
      EXPECT_NEAR(fit->errors.at(i), one.errors.at(i), 1e-6);
    }
    EXPECT_NEAR(fit->group_deviance, one.deviance, 1e-6);
  }
}

// Singer and Willett (2003), Tables 11.3 (models A and B) and 12.3, from memory; R 4.2.2 gives the
// same with more digits, recorded.R.
TEST(HazardOfSeed, CoefficientsAreThoseOfThePublishedTable) {
  const std::vector<double> printed{-2.9943, -3.7001, -2.2811, -1.8226, -1.6542, -1.1791, 0.8736};
  const std::vector<double> of_r{-2.99432660046,
                                 -3.70012402771,
                                 -2.28112354545,
                                 -1.82259854341,
                                 -1.65422722466,
                                 -1.17905695181,
                                 0.873618441881};
  const std::optional<HazardFit> logit =
      fit_hazard(published_rows(true), Priors(7), HazardLink::logit);
  ASSERT_TRUE(logit);
  for (std::size_t i = 0; i < printed.size(); ++i) {
    EXPECT_NEAR(logit->coefficients.at(i), printed.at(i), 5.1e-5);
    EXPECT_NEAR(logit->coefficients.at(i), of_r.at(i), 1e-6);
  }
  EXPECT_NEAR(logit->deviance, 634.66, 0.006);
  const std::optional<HazardFit> cloglog = fit_hazard(published_rows(true), Priors(7));
  ASSERT_TRUE(cloglog);
  EXPECT_NEAR(cloglog->coefficients.back(), 0.7854, 5.1e-5);
  EXPECT_NEAR(cloglog->coefficients.back(), 0.785404825141, 1e-6);
  EXPECT_NEAR(cloglog->coefficients.front(), -2.97329734552, 1e-6);
  EXPECT_NEAR(cloglog->deviance, 634.50, 0.006);
  const std::optional<HazardFit> plain =
      fit_hazard(published_rows(false), Priors(6), HazardLink::logit);
  ASSERT_TRUE(plain);
  EXPECT_NEAR(plain->deviance, 651.96, 0.006);
}

TEST(HazardOfSeed, WithoutAnythingThatCameItIsRefused) {
  std::vector<HazardRow> rows = invented_rows();
  for (HazardRow& row : rows) {
    row.came = 0.0;
  }
  EXPECT_FALSE(fit_hazard(rows, three_free));
  EXPECT_FALSE(fit_hazard({}, three_free));
}

TEST(HazardOfSeed, ValuesThatSayTheSameTwiceAreRefused) {
  std::vector<HazardRow> rows = invented_rows();
  for (HazardRow& row : rows) {
    row.explains[2] = 2.0 * row.explains[1];
  }
  EXPECT_FALSE(fit_hazard(rows, three_free));
}

TEST(HazardOfSeed, APriorHoldsWhatTheRecordLeavesOpen) {
  std::vector<HazardRow> rows = invented_rows();
  for (HazardRow& row : rows) {
    row.came = 0.0;
  }
  const std::optional<HazardFit> fit = fit_hazard(
      rows,
      {CoefficientPrior{-1.0, 0.5}, CoefficientPrior{-0.3, 0.01}, CoefficientPrior{0.0, 1.0}});
  ASSERT_TRUE(fit);
  EXPECT_LT(fit->coefficients.at(0), -1.0);
  EXPECT_NEAR(fit->coefficients.at(1), -0.3, 0.05);
}

TEST(HazardOfSeed, ANarrowPriorWinsAndAWideOneYields) {
  const std::vector<HazardRow> rows = invented_rows();
  const auto with = [&](double deviation) {
    return fit_hazard(rows, {std::nullopt, CoefficientPrior{-0.2, deviation}, std::nullopt})
        ->coefficients.at(1);
  };
  EXPECT_NEAR(with(1e-4), -0.2, 1e-3);
  EXPECT_NEAR(with(1e4), -0.459652833895, 1e-6);
  EXPECT_GT(with(0.1), with(1.0));
}

} // namespace
} // namespace nightsow::planner
