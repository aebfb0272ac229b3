// Harrington and Minges 1954, Vegetable Seed Germination, California Agricultural Extension
// leaflet: days to emergence from half an inch, as reprinted by university extensions.
#include "planner/model/establishment.hpp"
#include "species-rules/development.hpp"
#include "tests/support/even_course.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

namespace nightsow::planner {
namespace {

constexpr int days = 400;

struct EmergenceRow {
  std::string kind;
  std::vector<double> at_c;
  std::vector<double> days;
};

// From 5 °C to the fastest; at 0 °C the table has days for five of them, all later than a straight
// line of rates allows.
std::vector<EmergenceRow> emergence_table() {
  return {{"onion", {5, 10, 15, 20, 25}, {31, 13, 7, 5, 4}},
          {"lettuce", {5, 10, 15, 20, 25}, {15, 7, 4, 3, 2}},
          {"carrot", {5, 10, 15, 20, 25}, {51, 17, 10, 7, 6}},
          {"spinach", {5, 10, 15, 20, 25}, {23, 12, 7, 6, 5}},
          {"parsnip", {5, 10, 15, 20}, {57, 27, 19, 14}},
          {"pea", {5, 10, 15, 20, 25}, {36, 14, 9, 8, 6}},
          {"celery", {5, 10, 15, 20}, {41, 16, 12, 7}},
          {"beet", {5, 10, 15, 20, 25}, {42, 17, 10, 6, 5}}};
}

struct BaseAndSum {
  double base_c = 0.0;
  double sum_c_d = 0.0;
};

// 1 / days is a straight line of temperature: least squares over every other temperature, from the
// `first` on.
BaseAndSum fitted(const EmergenceRow& row, std::size_t first) {
  double n = 0.0;
  double t = 0.0;
  double r = 0.0;
  double tt = 0.0;
  double tr = 0.0;
  for (std::size_t i = first; i < row.at_c.size(); i += 2) {
    const double rate = 1.0 / row.days[i];
    n += 1.0;
    t += row.at_c[i];
    r += rate;
    tt += row.at_c[i] * row.at_c[i];
    tr += row.at_c[i] * rate;
  }
  const double slope = (n * tr - t * r) / (n * tt - t * t);
  return {(t - r / slope) / n, 1.0 / slope};
}

// What the model of the plan makes of such seed, kept moist at one temperature: days from first
// water until all of it is up, whole days.
int days_until_up(const BaseAndSum& seed, double at_c) {
  const SeedCourse course = support::even_course(days, 10.0, at_c);
  species_rules::SeedParameters kind;
  kind.cardinal = {seed.base_c, 30.0, 40.0};
  kind.thermal_time_c_d = seed.sum_c_d;
  kind.thermal_time_spread = 0.0;
  kind.rot_factor = 0.0;
  kind.dry_loss_share = 0.0;
  kind.rest_sum = 1e9;
  SeedSeason season{course, kind, {}, {0, 0, 1, days}};
  const std::vector<double> up = season.watered_on(0, {}).up;
  return static_cast<int>(std::max_element(up.begin(), up.end()) - up.begin());
}

struct Foretold {
  std::string what;
  double days = 0.0;
  double at_rates = 0.0; ///< by the response to temperature alone
  int by_model = 0;
};

// Of the temperatures that are not in the fit, from 10 °C on.
std::vector<Foretold> foretold_of_the_other_half(std::size_t first_fitted) {
  std::vector<Foretold> list;
  for (const EmergenceRow& row : emergence_table()) {
    const BaseAndSum seed = fitted(row, first_fitted);
    for (std::size_t i = 1; i < row.at_c.size(); ++i) {
      if (i % 2 == first_fitted % 2) {
        continue;
      }
      const double rate =
          species_rules::thermal_rate(row.at_c[i], {seed.base_c, 30.0, 40.0}) / seed.sum_c_d;
      list.push_back({row.kind + " at " + std::to_string(row.at_c[i]),
                      row.days[i],
                      1.0 / rate,
                      days_until_up(seed, row.at_c[i])});
    }
  }
  return list;
}

double middle_of(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

// Reached: fitted on 5, 15 and 25 °C, the days at 10 and 20 °C are missed by at most 27 %, half of
// them by at most 9 %; from 10 and 20 °C, those at 15 and 25 °C by at most 19 %, half of them by at
// most 10 %. Days are printed whole: a quarter to half of the fastest.
TEST(EmergenceTable, BaseAndSumOfHalfTheTemperaturesForetellTheOtherHalf) {
  constexpr double worst_missed[] = {0.27, 0.19};
  for (const std::size_t first : {0U, 1U}) {
    std::vector<double> missed;
    for (const Foretold& one : foretold_of_the_other_half(first)) {
      missed.push_back(std::abs(one.at_rates - one.days) / one.days);
      EXPECT_LE(missed.back(), worst_missed[first]) << one.what << ": " << one.at_rates;
    }
    ASSERT_GE(missed.size(), 12U);
    EXPECT_LE(middle_of(missed), 0.10);
  }
}

TEST(EmergenceTable, TheModelOfThePlanComesUpByTheEndOfTheDayThatTheRatesForetell) {
  for (const std::size_t first : {0U, 1U}) {
    for (const Foretold& one : foretold_of_the_other_half(first)) {
      EXPECT_GE(one.by_model, one.at_rates - 1e-3) << one.what;
      EXPECT_LE(one.by_model, one.at_rates + 1.0 + 1e-3) << one.what;
    }
  }
}

// Near the base days grow without bounds, and only the rate can be foretold.
TEST(EmergenceTable, AtFiveDegreesTheRateIsForetoldWithinAFortiethADay) {
  for (const EmergenceRow& row : emergence_table()) {
    const BaseAndSum seed = fitted(row, 1);
    const double rate = species_rules::thermal_rate(5.0, {seed.base_c, 30.0, 40.0}) / seed.sum_c_d;
    EXPECT_NEAR(rate, 1.0 / row.days.front(), 0.025) << row.kind;
  }
}

} // namespace
} // namespace nightsow::planner
