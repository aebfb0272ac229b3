#include "climate/suspicions.hpp"

#include "tests/support/invented_series.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

namespace nightsow::climate {
namespace {

DailySeries measured() {
  support::InventedClimate climate;
  climate.night_sd_k = 2.5;
  climate.years = 8;
  DailySeries series = support::invented_series(climate);
  series.set_night(900, missing_c);
  return series;
}

using Change = std::function<double(double)>;

DailySeries changed(const Change& change) {
  DailySeries series = measured();
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, static_cast<float>(change(static_cast<double>(series.night_c()[i]))));
    series.set_day(i, static_cast<float>(change(static_cast<double>(series.day_c()[i]))));
  }
  return series;
}

std::vector<SuspicionKind> kinds(const DailySeries& series) {
  std::vector<SuspicionKind> result;
  for (const Suspicion& suspicion : suspicions(series)) {
    result.push_back(suspicion.kind);
  }
  return result;
}

double fahrenheit(double c) {
  return c * 1.8 + 32.0;
}

double to(double value, double step) {
  return std::round(value / step) * step;
}

using Kinds = std::vector<SuspicionKind>;

TEST(Suspicions, AreNoneOfASoundRecord) {
  EXPECT_EQ(kinds(measured()), Kinds{});
}

struct ChangeCase {
  const char* what;
  Change change;
  Kinds kinds;
};

TEST(Suspicions, TellWhatWasDoneToAllValues) {
  using enum SuspicionKind;
  const std::vector<ChangeCase> cases{
      {"°F kept as °C", [](double c) { return to(fahrenheit(c), 0.1); }, {fahrenheit_as_celsius}},
      {"whole °F kept as °C",
       [](double c) { return to(fahrenheit(c), 1.0); },
       {fahrenheit_as_celsius, whole_celsius}},
      {"tenths kept as degrees",
       [](double c) { return to(c * 10.0, 1.0); },
       {tenths_as_celsius, whole_celsius}},
      {"degrees read as tenths", [](double c) { return to(c / 10.0, 0.1); }, {a_tenth_of_celsius}},
      {"whole °F in tenths of °C",
       [](double c) { return to((to(fahrenheit(c), 1.0) - 32.0) / 1.8, 0.1); },
       {whole_fahrenheit}},
      {"whole °F in hundredths of °C",
       [](double c) { return to((to(fahrenheit(c), 1.0) - 32.0) / 1.8, 0.01); },
       {whole_fahrenheit}},
      {"half °F in hundredths of °C",
       [](double c) { return to((to(fahrenheit(c), 0.5) - 32.0) / 1.8, 0.01); },
       {whole_fahrenheit}},
      {"whole °C", [](double c) { return to(c, 1.0); }, {whole_celsius}},
      {"a hundredth added", [](double c) { return c + 0.01; }, {uneven_hundredths}}};
  for (const ChangeCase& test : cases) {
    EXPECT_EQ(kinds(changed(test.change)), test.kinds) << test.what;
  }
}

TEST(Suspicions, TellSwappedColumns) {
  DailySeries series = measured();
  for (std::size_t i = 0; i < series.size(); ++i) {
    const float night = series.night_c()[i];
    series.set_night(i, series.day_c()[i]);
    series.set_day(i, night);
  }
  const std::vector<Suspicion> found = suspicions(series);
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].kind, SuspicionKind::swapped);
  EXPECT_NEAR(found[0].share, 1.0, 1e-12);
}

TEST(Suspicions, AThirdOfDatesCrossedIsNoSwap) {
  DailySeries series = measured();
  for (std::size_t i = 0; i < series.size(); i += 3) {
    series.set_night(i, series.day_c()[i] + 1.0F);
  }
  EXPECT_EQ(kinds(series), Kinds{});
}

/// Each night goes with the day before it and with the day after it, and has weather of its own.
DailySeries nights_follow_days(int days_late) {
  support::InventedClimate climate;
  climate.night_sd_k = 3.0;
  climate.years = 8;
  const DailySeries weather = support::invented_series(climate);
  DailySeries series{weather.first(), weather.size()};
  for (std::size_t i = 400; i + 2 < weather.size(); ++i) {
    series.set_day(i + static_cast<std::size_t>(days_late), weather.day_c()[i]);
    const float days_c = weather.day_c()[i] + weather.day_c()[i + 1];
    series.set_night(i + 1, 0.3F * days_c + 0.1F * weather.night_c()[i - 400]);
  }
  return series;
}

TEST(Suspicions, TellMaximaThatStandADayLate) {
  const auto is_told = [](const Kinds& found) {
    return std::count(found.begin(), found.end(), SuspicionKind::days_a_day_late) == 1;
  };
  EXPECT_TRUE(is_told(kinds(nights_follow_days(1))));
  EXPECT_FALSE(is_told(kinds(nights_follow_days(0))));
}

TEST(Suspicions, TellRecordsThatLookComputed) {
  DailySeries series = measured();
  const auto hundredth = [](std::size_t i) { return 0.01F * static_cast<float>((i * 7) % 10); };
  series.set_night(900, 8.0F);
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, series.night_c()[i] + hundredth(i));
    series.set_day(i, series.day_c()[i] + hundredth(i + 3));
  }
  EXPECT_EQ(kinds(series), Kinds{SuspicionKind::computed});
  series.set_night(900, missing_c);
  EXPECT_EQ(kinds(series), Kinds{});
}

TEST(Suspicions, EachIsPutIntoWordsAndThoseOfUnitAndColumnsSpoilEveryAnswer) {
  using enum SuspicionKind;
  for (int i = 0; i <= static_cast<int>(computed); ++i) {
    EXPECT_GT(words_for(static_cast<SuspicionKind>(i)).size(), 20U) << i;
  }
  for (const SuspicionKind kind :
       {fahrenheit_as_celsius, tenths_as_celsius, a_tenth_of_celsius, swapped}) {
    EXPECT_TRUE(spoils_every_answer(kind)) << words_for(kind);
  }
  for (const SuspicionKind kind :
       {days_a_day_late, whole_fahrenheit, whole_celsius, uneven_hundredths, computed}) {
    EXPECT_FALSE(spoils_every_answer(kind)) << words_for(kind);
  }
}

TEST(Suspicions, TooFewValuesTellNothing) {
  DailySeries series{make_date(2020, 1, 1).value(), 29};
  for (std::size_t i = 0; i < series.size(); ++i) {
    series.set_night(i, 70.0F);
    series.set_day(i, 60.0F);
  }
  EXPECT_EQ(kinds(series), Kinds{});
  EXPECT_EQ(kinds(DailySeries{}), Kinds{});
}

} // namespace
} // namespace nightsow::climate
