#include "climate/readers/sub_daily.hpp"

#include "climate/daily_series.hpp"
#include "tests/support/weather_text.hpp"

#include <date/date.h>
#include <gtest/gtest.h>

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace nightsow::climate {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using std::chrono::seconds;

date::local_seconds clock_at(int year, unsigned month, unsigned day, int hour = 0, int minute = 0) {
  return date::local_seconds{make_date(year, month, day).value()} + hours{hour} + minutes{minute};
}

using Curve = std::function<float(date::local_seconds)>;

seconds time_of(date::local_seconds clock) {
  return clock - date::floor<Days>(clock);
}

// Coldest, 5, at six in the morning; warmest, 14, in the afternoon at three.
float plain_day(date::local_seconds clock) {
  const auto hour = static_cast<float>(time_of(clock).count()) / 3600.0F;
  return hour <= 6.0F    ? 5.0F + (6.0F - hour)
         : hour <= 15.0F ? 5.0F + (hour - 6.0F)
                         : 14.0F - (hour - 15.0F) / 3.0F;
}

TimedSeries every(seconds step,
                  date::local_seconds from,
                  date::local_seconds until,
                  const Curve& curve = plain_day) {
  TimedSeries series;
  std::uint32_t line = 2;
  for (auto clock = from; clock < until; clock += step) {
    series.readings.push_back({clock, curve(clock), line++});
  }
  return series;
}

Readings days_of(TimedSeries series, const std::string& zone = "Africa/Johannesburg") {
  Readings readings;
  readings.file = "logger.csv";
  readings.rows_read = series.readings.size();
  add_nights_and_days(std::move(series), ReadingChoices{"", "", zone}, readings);
  return readings;
}

std::string refusal_of(TimedSeries series, const std::string& zone = "Africa/Johannesburg") {
  try {
    static_cast<void>(days_of(std::move(series), zone));
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

const Reading* row_of(const Readings& readings, Date date) {
  for (const Reading& row : readings.rows) {
    if (row.date == date) {
      return &row;
    }
  }
  return nullptr;
}

float night_of(const Readings& readings, int year, unsigned month, unsigned day) {
  const Reading* row = row_of(readings, *make_date(year, month, day));
  return row == nullptr ? missing_c : row->night_c;
}

float day_of(const Readings& readings, int year, unsigned month, unsigned day) {
  const Reading* row = row_of(readings, *make_date(year, month, day));
  return row == nullptr ? missing_c : row->day_c;
}

bool told(const Readings& readings, std::string_view words) {
  for (const Problem& problem : readings.problems) {
    if (says(to_text(problem), words)) {
      return true;
    }
  }
  return false;
}

TEST(SubDaily, ANightEndsAtNoonAndADayAtMidnight) {
  const auto readings = days_of(every(hours{1}, clock_at(2026, 4, 1), clock_at(2026, 4, 4)));
  EXPECT_EQ(rows_of(readings), "2026-04-01 -/14; 2026-04-02 5/14; 2026-04-03 5/14");
}

TEST(SubDaily, TheReadingAtNoonBelongsToTheNightBehindIt) {
  const auto cold_at = [](date::local_seconds cold) {
    return [cold](date::local_seconds clock) { return clock == cold ? -3.0F : plain_day(clock); };
  };
  const auto begin = clock_at(2026, 4, 1);
  const auto end = clock_at(2026, 4, 5);
  const auto at_noon = days_of(every(minutes{30}, begin, end, cold_at(clock_at(2026, 4, 2, 12))));
  EXPECT_EQ(night_of(at_noon, 2026, 4, 2), -3.0F);
  EXPECT_EQ(night_of(at_noon, 2026, 4, 3), 5.0F);
  const auto later = days_of(every(minutes{30}, begin, end, cold_at(clock_at(2026, 4, 2, 12, 30))));
  EXPECT_EQ(night_of(later, 2026, 4, 2), 5.0F);
  EXPECT_EQ(night_of(later, 2026, 4, 3), -3.0F);
}

TEST(SubDaily, TheReadingAtMidnightBelongsToTheDayBeginning) {
  const auto readings = days_of(
      every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 5), [](date::local_seconds clock) {
        return clock == clock_at(2026, 4, 3) ? 30.0F : plain_day(clock);
      }));
  EXPECT_EQ(day_of(readings, 2026, 4, 2), 14.0F);
  EXPECT_EQ(day_of(readings, 2026, 4, 3), 30.0F);
}

TimedSeries without(TimedSeries series, date::local_seconds from, date::local_seconds until) {
  std::erase_if(series.readings, [&](const TimedReading& reading) {
    return reading.clock > from && reading.clock < until;
  });
  return series;
}

TEST(SubDaily, AHoleOfThreeHoursTowardsDawnIsBorneAndALongerOneIsNot) {
  const auto whole = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 5));
  const auto borne = days_of(without(whole, clock_at(2026, 4, 3, 4), clock_at(2026, 4, 3, 7)));
  EXPECT_EQ(night_of(borne, 2026, 4, 3), 6.0F); // what is left of it, at seven
  const auto longer = days_of(without(whole, clock_at(2026, 4, 3, 4), clock_at(2026, 4, 3, 7, 30)));
  EXPECT_TRUE(std::isnan(night_of(longer, 2026, 4, 3)));
  EXPECT_EQ(day_of(longer, 2026, 4, 3), 14.0F);
  EXPECT_TRUE(told(longer,
                   "not covered by their readings and left out: nights 1, days 0 (the "
                   "first on 2026-04-03)"));
}

TEST(SubDaily, AHoleInTheEveningSpoilsNeitherNightNorDayWhileEnoughIsLeft) {
  const auto readings =
      days_of(without(every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 5)),
                      clock_at(2026, 4, 2, 19),
                      clock_at(2026, 4, 2, 23)));
  EXPECT_EQ(night_of(readings, 2026, 4, 3), 5.0F);
  EXPECT_EQ(day_of(readings, 2026, 4, 2), 14.0F);
}

TEST(SubDaily, LessThanFourFifthsOfTheUsualReadingsAreTooFew) {
  // 48 readings a day are usual; 39 of them are over four fifths, 38 are not.
  const auto whole = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 8));
  const auto thinned = [&](int missing) {
    TimedSeries series = whole;
    int dropped = 0;
    std::erase_if(series.readings, [&](const TimedReading& reading) {
      const bool evening =
          reading.clock >= clock_at(2026, 4, 4, 18, 30) && reading.clock < clock_at(2026, 4, 5);
      return evening && dropped++ < missing;
    });
    return days_of(series);
  };
  EXPECT_EQ(day_of(thinned(9), 2026, 4, 4), 14.0F);
  EXPECT_TRUE(std::isnan(day_of(thinned(10), 2026, 4, 4)));
}

TEST(SubDaily, ThreeHourlyReadingsDoAndFourHourlyOnesDoNot) {
  const auto of = [](int step) {
    return every(hours{step}, clock_at(2026, 4, 1), clock_at(2026, 4, 6));
  };
  EXPECT_EQ(night_of(days_of(of(3)), 2026, 4, 3), 5.0F);
  EXPECT_EQ(refusal_of(of(4)),
            "logger.csv: not one night or day is covered by its readings (there are 30, mostly "
            "every 240 minutes); expected readings at least every three hours, 80 % of the usual "
            "number a day; bring a longer piece of the logger's record, or set it to a shorter "
            "interval");
}

TEST(SubDaily, AnIntervalThatWasChangedIsUsualFromThenOn) {
  TimedSeries series = every(minutes{5}, clock_at(2026, 4, 1), clock_at(2026, 5, 1));
  const TimedSeries later = every(hours{1}, clock_at(2026, 5, 1), clock_at(2026, 6, 1));
  series.readings.insert(series.readings.end(), later.readings.begin(), later.readings.end());
  const Readings readings = days_of(series);
  EXPECT_EQ(night_of(readings, 2026, 4, 15), 5.0F);
  EXPECT_EQ(night_of(readings, 2026, 5, 20), 5.0F);
}

// ---- clocks ---------------------------------------------------------------------------------

// What a clock on the wall showed through a change: instants turned into civil time.
TimedSeries on_the_wall(const std::string& zone,
                        date::local_seconds from,
                        date::local_seconds until,
                        seconds step) {
  const CivilClock clock = CivilClock::in_zone(zone).value();
  TimedSeries series;
  std::uint32_t line = 2;
  for (auto instant = clock.instant(from); instant < clock.instant(until); instant += step) {
    const date::local_seconds civil = clock.civil(instant);
    series.readings.push_back({civil, plain_day(civil), line++});
  }
  return series;
}

struct Change {
  const char* zone;
  int year;
  unsigned month;
  unsigned day;
};

// source: IANA time zone database
TEST(SubDaily, ChangesOfTheClockAreNeitherGapsNorDoubles) {
  for (const Change& change : {Change{"Europe/Berlin", 2026, 3, 29},
                               Change{"Europe/Berlin", 2026, 10, 25},
                               Change{"Australia/Melbourne", 2026, 4, 5},
                               Change{"Australia/Melbourne", 2026, 10, 4},
                               Change{"Australia/Lord_Howe", 2026, 4, 5},
                               Change{"Australia/Lord_Howe", 2026, 10, 4},
                               Change{"America/Santiago", 2026, 4, 5},
                               Change{"America/Santiago", 2026, 9, 6},
                               Change{"Africa/Johannesburg", 2026, 4, 5}}) {
    for (const int step : {10, 30}) {
      const auto middle = clock_at(change.year, change.month, change.day);
      const Readings readings = days_of(
          on_the_wall(change.zone, middle - Days{2}, middle + Days{3}, minutes{step}), change.zone);
      ASSERT_EQ(readings.rows.size(), 5U) << change.zone;
      EXPECT_EQ(readings.rows_faulty, 0U) << change.zone;
      for (std::size_t i = 1; i < readings.rows.size(); ++i) {
        EXPECT_EQ(readings.rows[i].night_c, 5.0F) << change.zone << ' ' << i << ' ' << step;
        EXPECT_EQ(readings.rows[i].day_c, 14.0F) << change.zone << ' ' << i << ' ' << step;
      }
      EXPECT_TRUE(readings.problems.empty()) << change.zone << ' ' << step;
    }
  }
}

TEST(SubDaily, ADayThatThePlaceSkippedHasNoRow) {
  const Readings readings = days_of(
      on_the_wall("Pacific/Apia", clock_at(2011, 12, 27), clock_at(2012, 1, 2), minutes{30}),
      "Pacific/Apia");
  EXPECT_EQ(row_of(readings, *make_date(2011, 12, 30)), nullptr);
  EXPECT_EQ(night_of(readings, 2011, 12, 29), 5.0F);
  EXPECT_EQ(night_of(readings, 2011, 12, 31), 5.0F);
  EXPECT_EQ(day_of(readings, 2011, 12, 31), 14.0F);
}

TEST(SubDaily, ALoggerThatKeepsOneTimeAllYearIsFoundOutInSpring) {
  const Readings readings =
      days_of(every(minutes{30}, clock_at(2026, 3, 27), clock_at(2026, 3, 31)), "Europe/Berlin");
  EXPECT_TRUE(told(readings,
                   "logger.csv:102: a time that the clocks of this zone leap over in "
                   "spring (2 such times)"));
}

TEST(SubDaily, TimesInUtcMakeTheNightsOfTheGarden) {
  // Six in the morning in Johannesburg is four in UTC; by UTC's own noon the night would be the
  // same, but the day of a warm midnight would not.
  TimedSeries series = every(minutes{30}, clock_at(2026, 3, 31, 22), clock_at(2026, 4, 4, 22));
  series.in_utc = true;
  for (TimedReading& reading : series.readings) {
    const date::local_seconds here = reading.clock + hours{2};
    reading.value = here == clock_at(2026, 4, 3, 0, 30) ? 30.0F : plain_day(here);
  }
  const Readings readings = days_of(series);
  EXPECT_EQ(day_of(readings, 2026, 4, 2), 14.0F);
  EXPECT_EQ(day_of(readings, 2026, 4, 3), 30.0F);
  EXPECT_EQ(night_of(readings, 2026, 4, 3), 5.0F);
}

TEST(SubDaily, TheFilesOwnOffsetStandsInForAZone) {
  TimedSeries series = every(minutes{30}, clock_at(2026, 4, 1, 4), clock_at(2026, 4, 4, 4));
  series.in_utc = true;
  series.offset = hours{-4};
  EXPECT_EQ(rows_of(days_of(series, "")).substr(0, 10), "2026-04-01");
  EXPECT_TRUE(says(days_of(series, "").because.front(), "the file's own clock, UTC-4"));
  // source: IANA time zone database, Kabul is 4 h 30 min east
  series.offset = minutes{270};
  EXPECT_TRUE(says(days_of(series, "").because.front(), "UTC+4:30"));
}

TEST(SubDaily, AZoneTheFileNamesIsSecondToTheGardens) {
  TimedSeries series = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 4));
  series.in_utc = true;
  series.time_zone = "Europe/Berlin";
  EXPECT_TRUE(says(days_of(series, "").because.front(), "the file names the time zone"));
  EXPECT_TRUE(says(days_of(series).because.front(), "those of Africa/Johannesburg"));
}

TEST(SubDaily, WithoutOffsetAndZoneTheQuestionIsAsked) {
  const auto series = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 4));
  EXPECT_EQ(refusal_of(series, ""),
            "logger.csv: the times tell no distance from UTC, and the garden names no time zone; "
            "expected the time zone of the place; in which time zone is it? Write \"time_zone\": "
            "\"Africa/Johannesburg\" or the like into garden.json (`nightsow start` takes "
            "--time-zone)");
  TimedSeries utc = series;
  utc.in_utc = true;
  EXPECT_TRUE(says(refusal_of(utc, ""), "the times are in UTC"));
}

// ---- what goes wrong ------------------------------------------------------------------------

TEST(SubDaily, AClockThatStartsAnewIsSaidAndItsReadingsAreLeftOut) {
  TimedSeries series = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 4));
  const TimedSeries lost =
      every(minutes{30}, clock_at(2000, 1, 1), clock_at(2000, 1, 2), [](auto) { return -20.0F; });
  const TimedSeries set = every(minutes{30}, clock_at(2026, 4, 6), clock_at(2026, 4, 8));
  series.readings.insert(series.readings.end(), lost.readings.begin(), lost.readings.end());
  series.readings.insert(series.readings.end(), set.readings.begin(), set.readings.end());
  const Readings readings = days_of(series);
  EXPECT_EQ(readings.rows.front().date, *make_date(2026, 4, 1));
  EXPECT_EQ(day_of(readings, 2026, 4, 7), 14.0F);
  EXPECT_EQ(readings.rows_faulty, 48U);
  EXPECT_TRUE(told(readings, "48 readings have no true time"));
}

TEST(SubDaily, AClockNotYetSetAtTheBeginningIsLeftOutToo) {
  TimedSeries series = every(minutes{30}, clock_at(2000, 1, 1), clock_at(2000, 1, 2));
  const TimedSeries set = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 4));
  series.readings.insert(series.readings.end(), set.readings.begin(), set.readings.end());
  const Readings readings = days_of(series);
  EXPECT_EQ(readings.rows.front().date, *make_date(2026, 4, 1));
  EXPECT_EQ(readings.rows_faulty, 48U);
}

TEST(SubDaily, AnOldRecordFromTheFirstOfAYearIsNoRestart) {
  const Readings readings = days_of(every(hours{1}, clock_at(2000, 1, 1), clock_at(2000, 3, 1)));
  EXPECT_EQ(readings.rows_faulty, 0U);
  EXPECT_EQ(readings.rows.size(), 60U);
}

TEST(SubDaily, AnExportPastedTwiceCountsOnce) {
  TimedSeries series = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 4));
  const TimedSeries once = series;
  series.readings.insert(series.readings.end(), once.readings.begin(), once.readings.end());
  const Readings readings = days_of(series);
  EXPECT_EQ(rows_of(readings), rows_of(days_of(once)));
  EXPECT_TRUE(told(readings, "144 readings stand there twice and were counted once"));
}

TEST(SubDaily, OfTwoReadingsForOneTimeNeitherIsUsed) {
  TimedSeries series = every(minutes{30}, clock_at(2026, 4, 1), clock_at(2026, 4, 4));
  series.readings.push_back({clock_at(2026, 4, 2, 6), -9.0F, 900});
  const Readings readings = days_of(series);
  EXPECT_EQ(night_of(readings, 2026, 4, 2), 5.5F);
  EXPECT_TRUE(told(readings, "logger.csv:900: another reading for the time of line 62"));
  EXPECT_EQ(readings.rows_faulty, 2U);
}

TEST(SubDaily, TheNewestReadingMayStandFirst) {
  TimedSeries series =
      on_the_wall("Europe/Berlin", clock_at(2026, 10, 23), clock_at(2026, 10, 28), minutes{30});
  const std::string forwards = rows_of(days_of(series, "Europe/Berlin"));
  std::reverse(series.readings.begin(), series.readings.end());
  const Readings readings = days_of(series, "Europe/Berlin");
  EXPECT_EQ(rows_of(readings), forwards);
  EXPECT_EQ(readings.rows_faulty, 0U);
}

} // namespace
} // namespace nightsow::climate
