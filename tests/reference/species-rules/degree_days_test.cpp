// Published degree-days, reckoned with the response to temperature that the plan's thermal time
// rests on: an optimum with a ceiling far off is the horizontal cutoff of the tables. The plan adds
// it up over the 24 hours of a day; so do these, beside a fine division of the day. The response
// has no unit of its own, so that °F need no conversion.
#include "species-rules/development.hpp"
#include "species-rules/ripeness.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

namespace nightsow::species_rules {
namespace {

constexpr double far_off = 1e12;
constexpr int hours = 24;
constexpr int fine = 24 * 60;

// The curve from minimum to maximum, half a day: 0 to 1 over 0 to 1.
double sine(double part) {
  return 0.5 - 0.5 * std::cos(std::numbers::pi * part);
}

double triangle(double part) {
  return part;
}

using Shape = std::function<double(double)>;

double half_a_day(
    const Shape& shape, double low, double high, const CardinalTemperatures& c, int parts) {
  double sum = 0.0;
  for (int i = 0; i < parts; ++i) {
    sum += thermal_rate(low + (high - low) * shape((i + 0.5) / parts), c);
  }
  return 0.5 * sum / parts;
}

struct Day {
  double low = 0.0;
  double high = 0.0;
  double next_low = 0.0;
};

double degree_days(const Shape& shape, const Day& day, const CardinalTemperatures& c, int parts) {
  return half_a_day(shape, day.low, day.high, c, parts / 2) +
         half_a_day(shape, day.next_low, day.high, c, parts / 2);
}

/// Empty: not printed.
struct Row {
  Day day;
  std::optional<double> triangle;
  std::optional<double> double_triangle;
  std::optional<double> sine;
  std::optional<double> double_sine;
};

struct Table {
  std::string source;
  CardinalTemperatures limits;
  double rounding = 0.0;
  std::vector<Row> rows;
};

const std::optional<double> none;

// Zalom, Goodell, Wilson, Barnett and Bentley 1983, Degree-days: the calculation and use of heat
// units in pest management, UC DANR Leaflet 21373, table 7 (as stored in the R package degday); °F,
// 55 to 90; the last digit may be one off.
Table zalom() {
  return {"Zalom and others",
          {55, 90, far_off},
          0.0151,
          {{{96, 110, 91}, 35.0, 35.0, 35.0, 35.0},
           {{91, 105, 96}, 35.0, 35.0, 35.0, 35.0},
           {{45, 54, 38}, 0.0, 0.0, 0.0, 0.0},
           {{38, 50, 45}, 0.0, 0.0, 0.0, 0.0},
           {{60, 80, 75}, 15.0, 18.75, 15.0, 18.75},
           {{75, 88, 60}, 26.5, 22.75, 26.5, 22.75},
           {{50, 82, 45}, 11.39, 10.62, 11.85, 11.31},
           {{45, 70, 50}, 4.5, 5.06, 5.31, 5.7},
           {{60, 100, 75}, 23.75, none, 22.82, 26.26}}};
}

// Method of Baskerville and Emin 1969, unit test of a public library of growing degree-days; °F.
Table baskerville_emin() {
  return {"Baskerville and Emin",
          {50, far_off, 2.0 * far_off},
          0.0005,
          {{{34, 60, 34}, none, none, 2.749, none}}};
}

// University of California IPM, degree-day output of the station OJAI.C, first days of January
// 2016, 12 to 33 °C (held in the test data of the R package TrenchR).
Table california() {
  return {"University of California IPM",
          {12, 33, far_off},
          0.03,
          {{{7.8, 19.4, 7.8}, none, none, 2.72, none},
           {{4.4, 22.2, 3.3}, 2.92, none, 3.51, 3.45},
           {{3.3, 18.9, 10.0}, 1.53, none, 2.05, 2.46},
           {{10.0, 21.7, 6.1}, 4.02, none, 4.21, 3.86},
           {{5.0, 15.0, 3.3}, 0.45, none, none, 0.69},
           {{3.3, 16.7, 6.1}, 0.82, none, 1.23, 1.31},
           {{6.1, 17.2, 10.0}, 1.22, none, 1.6, 1.83},
           {{10.0, 15.6, 7.2}, 1.16, none, none, 1.19}}};
}

// R package TrenchR, test-19-DDFunctions.R, degree_days of single.sine and single.triangulation.
Table trenchr() {
  return {"TrenchR",
          {12, 33, far_off},
          0.0051,
          {{{7, 14, 7}, none, none, 0.47, none},
           {{13, 14, 13}, none, none, 1.5, none},
           {{7, 40, 7}, 11.14, none, 10.94, none},
           {{13, 40, 13}, 13.59, none, none, none}}};
}

void expect_printed(const Row& row, const Table& table, int parts, double rounding) {
  Day single = row.day;
  single.next_low = single.low;
  const auto expect =
      [&](const std::optional<double>& printed, const Shape& shape, const Day& day) {
        if (printed) {
          EXPECT_NEAR(degree_days(shape, day, table.limits, parts), *printed, rounding)
              << table.source << ", " << day.low << " to " << day.high;
        }
      };
  expect(row.triangle, triangle, single);
  expect(row.double_triangle, triangle, row.day);
  expect(row.sine, sine, single);
  expect(row.double_sine, sine, row.day);
}

TEST(DegreeDays, AreThosePublishedForSineAndTriangle) {
  for (const Table& table : {zalom(), baskerville_emin(), california(), trenchr()}) {
    for (const Row& row : table.rows) {
      expect_printed(row, table, fine, table.rounding);
    }
  }
}

// What adding up by the hour costs.
TEST(DegreeDays, AddedUpByTheHourMissThePublishedByUnderAFiftieth) {
  for (const Table& table : {zalom(), baskerville_emin(), california(), trenchr()}) {
    for (const Row& row : table.rows) {
      expect_printed(row, table, hours, 0.02);
    }
  }
}

// McMaster and Wilhelm 1997, Growing degree-days: one equation, two interpretations, Agric. For.
// Meteorol. 87: 291-300, table 1 (as stored in the R package degday); °C, base 0: the mean is cut
// off at the base, or each extreme before they are averaged.
struct Averaged {
  double high_c;
  double low_c;
  double of_mean;
  double of_extremes;
};

const std::vector<Averaged> averaged{{20, 10, 15.0, 15.0},
                                     {10, 1, 5.5, 5.5},
                                     {6, 0, 3.0, 3.0},
                                     {10, 5, 7.5, 7.5},
                                     {5, -5, 0.0, 2.5},
                                     {-2, -7, 0.0, 0.0},
                                     {10, -2, 4.0, 5.0},
                                     {15, 2, 8.5, 8.5}};

TEST(DegreeDays, OfAMeanAndOfTwoExtremesAreThosePublished) {
  const CardinalTemperatures over_zero{0.0, far_off, 2.0 * far_off};
  for (const Averaged& row : averaged) {
    const double mean_c = 0.5 * (row.high_c + row.low_c);
    EXPECT_NEAR(thermal_rate(mean_c, over_zero), row.of_mean, 1e-9) << row.high_c;
    EXPECT_NEAR(0.5 * (thermal_rate(row.high_c, over_zero) + thermal_rate(row.low_c, over_zero)),
                row.of_extremes,
                1e-9)
        << row.high_c;
  }
}

// Stores keep one temperature: the warm dry sum is that of the mean, above its own base.
TEST(DegreeDays, OfAStoreAreThoseOfItsMean) {
  constexpr double room_humidity = 0.5;
  for (const Averaged& row : averaged) {
    const double base_c = usual_ripening_base_c().value;
    const double mean_c = base_c + 0.5 * (row.high_c + row.low_c);
    EXPECT_NEAR(ripening_c_d_a_day(mean_c, room_humidity, base_c), row.of_mean, 1e-9) << row.high_c;
  }
}

// Vertical cutoff, nothing above the upper limit (glossary of University of California IPM); the
// two values are the closed form of the sine, worked out for this check. °F.
TEST(DegreeDays, WithACeilingAtTheOptimumNothingIsAddedAboveIt) {
  const CardinalTemperatures vertical{55, 90, 90.0 + 1e-9};
  EXPECT_NEAR(degree_days(sine, {50, 101, 50}, vertical, 100000), 8.1912, 0.002);
  EXPECT_NEAR(degree_days(sine, {45, 70, 45}, vertical, 100000), 5.3087, 0.002);
}

} // namespace
} // namespace nightsow::species_rules
