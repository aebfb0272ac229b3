#include "climate/readers/local_time.hpp"

#include <date/date.h>
#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {
namespace {

date::local_seconds local(std::string_view text) {
  const std::optional<Date> day = parse_iso_date(text.substr(0, 10));
  EXPECT_TRUE(day) << text;
  return day.value() + std::chrono::hours{std::stoi(std::string(text.substr(11, 2)))} +
         std::chrono::minutes{std::stoi(std::string(text.substr(14, 2)))};
}

std::string utc(date::sys_seconds instant) {
  return date::format("%F %R", instant);
}

CivilClock zone(std::string_view name) {
  return CivilClock::in_zone(name).value();
}

std::vector<std::string> instants(std::string_view name, const std::vector<const char*>& times) {
  std::vector<date::local_seconds> clock;
  for (const char* time : times) {
    clock.push_back(local(time));
  }
  std::vector<std::string> result;
  for (const date::sys_seconds instant : instants_of(clock, zone(name), false).instants) {
    result.push_back(utc(instant));
  }
  return result;
}

// The rules of the zones in this file. source: IANA time zone database.

TEST(CivilClock, UnknownZonesAreNone) {
  EXPECT_FALSE(CivilClock::in_zone("Atlantis/Capital"));
}

TEST(CivilClock, AFixedOffsetKeepsOneTimeAllYear) {
  const CivilClock clock = CivilClock::at_offset(std::chrono::hours{-5});
  EXPECT_EQ(utc(clock.instant(local("2024-03-10 02:30"))), "2024-03-10 07:30");
  EXPECT_EQ(clock.times_shown(local("2024-03-10 02:30")), 1);
  EXPECT_EQ(clock.civil(clock.instant(local("2024-07-01 00:00"))), local("2024-07-01 00:00"));
}

TEST(CivilClock, JohannesburgHasNeitherGapNorDoubledHour) {
  const CivilClock clock = zone("Africa/Johannesburg");
  for (auto time = local("2024-01-01 00:00"); time < local("2025-01-01 00:00");
       time += std::chrono::hours{1}) {
    ASSERT_EQ(clock.times_shown(time), 1);
    ASSERT_EQ(clock.instant(time).time_since_epoch(),
              time.time_since_epoch() - std::chrono::hours{2});
  }
}

TEST(CivilClock, BerlinLeapsInSpringAndDoublesInAutumn) {
  const CivilClock clock = zone("Europe/Berlin");
  EXPECT_EQ(clock.times_shown(local("2026-03-29 02:30")), 0);
  // source: RFC 5545 section 3.3.5, the offset before the gap
  EXPECT_EQ(utc(clock.instant(local("2026-03-29 02:30"))), "2026-03-29 01:30");
  EXPECT_EQ(utc(clock.first_reaches(local("2026-03-29 02:30"))), "2026-03-29 01:00");
  EXPECT_EQ(clock.times_shown(local("2026-10-25 02:30")), 2);
  EXPECT_EQ(utc(clock.instant(local("2026-10-25 02:30"))), "2026-10-25 00:30");
  EXPECT_EQ(utc(clock.instant(local("2026-10-25 02:30"), true)), "2026-10-25 01:30");
}

TEST(CivilClock, LordHoweShiftsByHalfAnHour) {
  const CivilClock clock = zone("Australia/Lord_Howe");
  EXPECT_EQ(clock.times_shown(local("2026-04-05 01:45")), 2);
  EXPECT_EQ(clock.times_shown(local("2026-04-05 01:15")), 1);
  EXPECT_EQ(clock.instant(local("2026-04-05 01:45"), true) -
                clock.instant(local("2026-04-05 01:45")),
            std::chrono::minutes{30});
  EXPECT_EQ(clock.times_shown(local("2026-10-04 02:15")), 0);
  EXPECT_EQ(clock.times_shown(local("2026-10-04 02:30")), 1);
}

TEST(CivilClock, TheDayThatApiaSkippedHasNoLength) {
  const CivilClock clock = zone("Pacific/Apia");
  EXPECT_EQ(clock.first_reaches(local("2011-12-30 00:00")),
            clock.first_reaches(local("2011-12-31 00:00")));
  EXPECT_EQ(clock.first_reaches(local("2011-12-30 00:00")) -
                clock.first_reaches(local("2011-12-29 00:00")),
            std::chrono::hours{24});
}

TEST(InstantsOf, BehindTheStepBackStandsTheLaterHour) {
  // Melbourne leaves summer time on 5 April 2026 at 03:00, 16:00 UTC of the day before.
  EXPECT_EQ(instants("Australia/Melbourne",
                     {"2026-04-05 02:30",
                      "2026-04-05 02:45",
                      "2026-04-05 02:00",
                      "2026-04-05 02:15",
                      "2026-04-05 02:30",
                      "2026-04-05 03:00"}),
            (std::vector<std::string>{"2026-04-04 15:30",
                                      "2026-04-04 15:45",
                                      "2026-04-04 16:00",
                                      "2026-04-04 16:15",
                                      "2026-04-04 16:30",
                                      "2026-04-04 17:00"}));
}

TEST(InstantsOf, OfEqualTimesInASortedFileTheSecondIsTheLater) {
  EXPECT_EQ(
      instants("Europe/Berlin",
               {"2026-10-25 02:00", "2026-10-25 02:00", "2026-10-25 02:30", "2026-10-25 02:30"}),
      (std::vector<std::string>{
          "2026-10-25 00:00", "2026-10-25 01:00", "2026-10-25 00:30", "2026-10-25 01:30"}));
}

TEST(InstantsOf, TheNewestFirstIsFollowedFromBelow) {
  const std::vector<date::local_seconds> clock{local("2026-10-25 03:00"),
                                               local("2026-10-25 02:30"),
                                               local("2026-10-25 02:00"),
                                               local("2026-10-25 02:30"),
                                               local("2026-10-25 02:00")};
  const Instants found = instants_of(clock, zone("Europe/Berlin"), true);
  EXPECT_EQ(utc(found.instants[0]), "2026-10-25 02:00");
  EXPECT_EQ(utc(found.instants[1]), "2026-10-25 01:30");
  EXPECT_EQ(utc(found.instants[2]), "2026-10-25 01:00");
  EXPECT_EQ(utc(found.instants[3]), "2026-10-25 00:30");
  EXPECT_EQ(utc(found.instants[4]), "2026-10-25 00:00");
}

TEST(InstantsOf, TimesInAGapAreCounted) {
  const std::vector<date::local_seconds> clock{
      local("2026-03-29 01:30"), local("2026-03-29 02:00"), local("2026-03-29 02:30")};
  const Instants found = instants_of(clock, zone("Europe/Berlin"), false);
  EXPECT_EQ(found.skipped, 2U);
  EXPECT_EQ(found.first_skipped, 1U);
}

} // namespace
} // namespace nightsow::climate
