#include "planner/statistics/survival.hpp"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace nightsow::planner {
namespace {

std::vector<Waited> waited(const std::vector<int>& times, const std::vector<int>& events) {
  std::vector<Waited> list;
  for (std::size_t i = 0; i < times.size(); ++i) {
    list.push_back({static_cast<double>(times.at(i)), events.empty() || events.at(i) == 1});
  }
  return list;
}

// Freireich et al. (1963), weeks in remission.
std::vector<Waited> treated() {
  return waited({10, 7, 32, 23, 22, 6, 16, 34, 32, 25, 11, 20, 19, 6, 17, 35, 6, 13, 9, 6, 10},
                {1, 1, 0, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0});
}

std::vector<Waited> untreated() {
  return waited({1, 22, 3, 12, 8, 17, 2, 11, 8, 12, 2, 5, 4, 15, 8, 23, 5, 11, 4, 1, 8}, {});
}

// Miller (1997), Survival Analysis: weeks until leukaemia came back.
std::vector<Waited> maintained() {
  return waited({9, 13, 13, 18, 23, 28, 31, 34, 45, 48, 161}, {1, 1, 0, 1, 1, 0, 1, 1, 0, 1, 0});
}

std::vector<Waited> not_maintained() {
  return waited({5, 5, 8, 8, 12, 16, 23, 27, 30, 33, 43, 45}, {1, 1, 1, 1, 1, 0, 1, 1, 1, 1, 1, 1});
}

// Klein and Moeschberger (2003), Survival Analysis, Table 4.1B p. 93; numbers at risk Table 4.1A,
// from memory.
TEST(SeedsStillWaiting, AreThoseOfThePublishedTable) {
  constexpr std::array shares{0.8571, 0.8067, 0.7529, 0.6902, 0.6275, 0.5378, 0.4482};
  constexpr std::array at_risk{21, 17, 15, 12, 11, 7, 6};
  const std::vector<SurvivalStep> steps = kaplan_meier(treated());
  ASSERT_EQ(steps.size(), shares.size());
  for (std::size_t i = 0; i < shares.size(); ++i) {
    EXPECT_NEAR(steps.at(i).waiting_share, shares.at(i), 5.1e-5) << i;
    EXPECT_EQ(steps.at(i).at_risk, at_risk.at(i)) << i;
  }
  EXPECT_EQ(days_until_waiting(steps, 0.5), 23.0);
  EXPECT_FALSE(days_until_waiting(steps, 0.4));
}

// survfit of survival 3.5.3, conf.type log-log, R 4.2.2; recorded.R beside this file.
TEST(SeedsStillWaiting, ErrorsAndLimitsAreThoseOfR) {
  struct Row {
    double share, error, low, high;
  };

  const std::vector<Row> rows{{0.857142857143, 0.0763603548321, 0.619717955266, 0.951551747647},
                              {0.806722689076, 0.0869352851801, 0.563146564622, 0.922809019203},
                              {0.752941176471, 0.0963496529943, 0.503199510800, 0.889361835169},
                              {0.690196078431, 0.1068147077750, 0.431610222486, 0.849065963349},
                              {0.627450980392, 0.1140538652568, 0.367510855988, 0.804912189472},
                              {0.537815126050, 0.1282337516930, 0.267778936767, 0.746790717635},
                              {0.448179271709, 0.1345914567558, 0.188052005959, 0.680142628495}};
  const std::vector<SurvivalStep> steps = kaplan_meier(treated());
  ASSERT_EQ(steps.size(), rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_NEAR(steps.at(i).waiting_share, rows.at(i).share, 1e-11);
    EXPECT_NEAR(steps.at(i).error, rows.at(i).error, 1e-11);
    EXPECT_NEAR(log_log_limits(steps.at(i)).low, rows.at(i).low, 1e-9);
    EXPECT_NEAR(log_log_limits(steps.at(i)).high, rows.at(i).high, 1e-9);
  }
}

// R package survival, example aml; three decimals.
TEST(SeedsStillWaiting, AreThoseOfTheSurvivalPackage) {
  constexpr std::array shares{0.909, 0.818, 0.716, 0.614, 0.491, 0.368, 0.184};
  const std::vector<SurvivalStep> steps = kaplan_meier(maintained());
  ASSERT_EQ(steps.size(), shares.size());
  for (std::size_t i = 0; i < shares.size(); ++i) {
    EXPECT_NEAR(steps.at(i).waiting_share, shares.at(i), 6e-4) << i;
  }
}

// Kleinbaum and Klein's text: chi-square 16.79, observed 9, expected 19.3; the rest from survdiff
// of survival 3.5.3, recorded.R. aml: survdiff, chi-square 3.4, expected 10.69.
TEST(SeedsStillWaiting, TheLogRankTestIsThatOfRAndTheText) {
  const LogRank remission = log_rank(treated(), untreated());
  EXPECT_NEAR(remission.chi_square, 16.79, 0.006);
  EXPECT_NEAR(remission.chi_square, 16.7929409892, 1e-9);
  EXPECT_EQ(remission.observed_a, 9.0);
  EXPECT_NEAR(remission.expected_a, 19.250500948, 1e-8);
  EXPECT_NEAR(remission.variance, 6.25696057368, 1e-9);
  EXPECT_NEAR(remission.chance, 4.16880910934e-05, 1e-12);
  const LogRank leukaemia = log_rank(maintained(), not_maintained());
  EXPECT_NEAR(leukaemia.chi_square, 3.4, 0.05);
  EXPECT_NEAR(leukaemia.expected_a, 10.69, 0.006);
}

struct Life {
  std::vector<int> at_risk;
  std::vector<int> events;
  std::vector<double> share;
  std::vector<double> error;
};

// Singer and Willett (2003), Applied Longitudinal Data Analysis, Table 11.1 p. 360, as life tables
// printed by a university's statistics service; four decimals.
TEST(SeedsStillWaiting, LifeTablesAreThoseOfThePublishedTable) {
  const std::vector<Life> tables{{{72, 70, 68, 60, 52, 42},
                                  {2, 2, 8, 8, 10, 8},
                                  {0.9722, 0.9444, 0.8333, 0.7222, 0.5833, 0.4722},
                                  {0.0194, 0.027, 0.0439, 0.0528, 0.0581, 0.0588}},
                                 {{108, 95, 90, 74, 53, 38},
                                  {13, 5, 16, 21, 15, 18},
                                  {0.8796, 0.8333, 0.6852, 0.4907, 0.3519, 0.1852},
                                  {0.0313, 0.0359, 0.0447, 0.0481, 0.046, 0.0374}}};
  for (const Life& life : tables) {
    const std::vector<SurvivalStep> steps = life_table(life.at_risk, life.events);
    ASSERT_EQ(steps.size(), life.share.size());
    for (std::size_t i = 0; i < steps.size(); ++i) {
      EXPECT_NEAR(steps.at(i).waiting_share, life.share.at(i), 5.1e-5);
      EXPECT_NEAR(steps.at(i).error, life.error.at(i), 5.1e-5);
    }
  }
  const Interval limits =
      log_log_limits(life_table(tables.at(0).at_risk, tables.at(0).events).back());
  EXPECT_NEAR(limits.low, 0.3538, 6e-5);
  EXPECT_NEAR(limits.high, 0.5817, 6e-5);
}

TEST(SeedsStillWaiting, NoSeedsHaveNoSteps) {
  EXPECT_TRUE(kaplan_meier({}).empty());
  EXPECT_EQ(log_rank({}, {}).chance, 1.0);
}

} // namespace
} // namespace nightsow::planner
