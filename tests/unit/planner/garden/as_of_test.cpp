#include "planner/garden/load_garden.hpp"
#include "tests/support/garden_text.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

namespace nightsow::planner {
namespace {

using support::day;
using support::TemporaryFolder;

GardenFolder load(std::string_view station, std::string_view packets = "taxon,seeds\n") {
  const TemporaryFolder folder;
  support::write_garden(folder, support::smallest_garden, station);
  folder.write("packets.csv", packets);
  return load_garden(folder.path());
}

// Missing readings as -999, so that they compare equal.
std::vector<float> values(std::span<const float> row) {
  std::vector<float> result;
  for (const float value : row) {
    result.push_back(std::isnan(value) ? -999.0F : value);
  }
  return result;
}

void expect_equal(const LoadedGarden& a, const LoadedGarden& b) {
  EXPECT_EQ(a.station.first(), b.station.first());
  EXPECT_EQ(values(a.station.night_c()), values(b.station.night_c()));
  EXPECT_EQ(values(a.station.day_c()), values(b.station.day_c()));
  ASSERT_EQ(a.findings.size(), b.findings.size());
  for (std::size_t i = 0; i < a.findings.size(); ++i) {
    EXPECT_EQ(a.findings[i].kind, b.findings[i].kind);
    EXPECT_EQ(a.findings[i].date, b.findings[i].date);
    EXPECT_EQ(a.findings[i].line, b.findings[i].line);
  }
}

// A night too warm for this Earth, a missing one, an unequal repetition, a hole, a night above its
// day.
constexpr std::string_view doubtful = "date,tmin_c,tmax_c\n"
                                      "2026-01-01,10,20\n"
                                      "2026-01-02,99,20\n"
                                      "2026-01-03,,21\n"
                                      "2026-01-04,11,22\n"
                                      "2026-01-04,12,23\n"
                                      "2026-01-08,30,20\n"
                                      "2026-01-09,10,20\n";

// The header and the rows up to a day; ISO dates sort as text.
std::string cut_text(std::string_view text, std::string_view last_day) {
  std::string kept;
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n') + 1);
    if (line.starts_with("date") || line.substr(0, 10) <= last_day) {
      kept += line;
    }
    text.remove_prefix(line.size());
  }
  return kept;
}

TEST(AsOf, TheNightOfTodayCounts) {
  const auto garden = load(support::station_text("2026-01-01", 30));
  EXPECT_EQ(as_of(garden, day("2026-01-05")).station.last(), day("2026-01-05"));
  EXPECT_EQ(as_of(garden, day("2026-01-05")).today, day("2026-01-05"));
  EXPECT_EQ(as_of(garden, day("2027-01-01")).station.last(), day("2026-01-30"));
}

TEST(AsOf, CuttingTheFileAtTodayChangesNothing) {
  const GardenFolder whole = load(doubtful);
  for (int i = 0; i < 12; ++i) {
    const Date today = day("2026-01-01") + Days{i};
    const GardenFolder cut = load(cut_text(doubtful, format_iso_date(today)));
    SCOPED_TRACE(format_iso_date(today));
    expect_equal(as_of(whole, today), as_of(cut, today));
  }
}

TEST(AsOf, DaysWithoutReadingsBeforeTodayAreNoPartOfTheSeries) {
  EXPECT_EQ(as_of(load(doubtful), day("2026-01-03")).station.last(), day("2026-01-03"));
  EXPECT_EQ(as_of(load(doubtful), day("2026-01-07")).station.last(), day("2026-01-03"));
}

TEST(AsOf, FindingsAfterTodayAreNotKnownYet) {
  const GardenFolder garden = load(doubtful);
  for (const auto& [today, findings] : {std::pair{"2026-01-01", 0U},
                                        {"2026-01-02", 1U},
                                        {"2026-01-04", 3U},
                                        {"2026-01-07", 3U},
                                        {"2026-01-08", 4U}}) {
    EXPECT_EQ(as_of(garden, day(today)).findings.size(), findings) << today;
  }
}

TEST(AsOf, ReadingsAreScreened) {
  const auto garden = as_of(load(doubtful), day("2026-01-03"));
  EXPECT_TRUE(std::isnan(garden.station.night_c()[1]));
  EXPECT_EQ(garden.findings.at(0).kind, climate::FindingKind::impossible);
}

TEST(AsOf, ADayBeforeAllReadingsIsRefused) {
  const auto garden = load(support::station_text("2026-01-01", 30));
  EXPECT_EQ(support::fault<InputError>([&] { return as_of(garden, day("2025-12-31")); }),
            "readings/station.csv: no usable night up to today, 2025-12-31; expected a day from "
            "2026-01-01 on; check --today and the dates of the readings");
}

Packet packet_as_of(std::string_view row, std::string_view today) {
  const auto garden =
      load(support::station_text("2026-01-01", 30),
           "packet,taxon,seeds,harvested,tested\nb1,Bulbine annua,40," + std::string(row) + "\n");
  return as_of(garden, day(today)).packets.at(0);
}

TEST(AsOf, AHarvestAfterTodayIsAProblemAndTheSeedIsFresh) {
  const auto folder = load(support::station_text("2026-01-01", 30),
                           "packet,taxon,seeds,harvested\nb1,Bulbine annua,40,2026-02\n");
  const auto garden = as_of(folder, day("2026-01-20"));
  EXPECT_EQ(garden.packets.at(0).harvested->first, day("2026-01-20"));
  EXPECT_EQ(garden.packets.at(0).harvested->last, day("2026-01-20"));
  EXPECT_EQ(to_text(garden.problems.back()),
            "packets.csv:2: b1 is harvested 2026-02-01, after today; expected a day up to today; "
            "correct it; until then the seed counts as fresh, and is not sown");
}

TEST(AsOf, AReceiptAfterTodayIsAProblemAndThePacketStays) {
  const auto folder = load(support::station_text("2026-01-01", 30),
                           "packet,taxon,seeds,received\nb1,Bulbine annua,40,2026-02-03\n");
  EXPECT_EQ(to_text(as_of(folder, day("2026-01-20")).problems.back()),
            "packets.csv:2: b1 is received 2026-02-03, after today; expected a day up to today; "
            "correct it; until then it is planned, and not sown");
  EXPECT_EQ(as_of(folder, day("2026-01-20")).packets.size(), 1U);
  EXPECT_EQ(as_of(folder, day("2026-02-03")).problems.size(), folder.problems.size());
}

TEST(AsOf, AHarvestThisYearEndsToday) {
  EXPECT_EQ(packet_as_of("2026,", "2026-01-20").harvested->first, day("2026-01-01"));
  EXPECT_EQ(packet_as_of("2026,", "2026-01-20").harvested->last, day("2026-01-20"));
}

TEST(AsOf, ATestAfterTodayIsNotKnownYet) {
  EXPECT_TRUE(packet_as_of("2025,14/20 2026-01-20", "2026-01-20").tested);
  EXPECT_FALSE(packet_as_of("2025,14/20 2026-01-21", "2026-01-20").tested);
}

// ---- forecasts and loggers ------------------------------------------------------------------

// The station's last night is that of 10 January 2026.
GardenFolder load_with(std::string_view forecast, std::string_view logger = "") {
  const TemporaryFolder folder;
  support::write_garden(folder,
                        logger.empty() ? R"({"latitude": -33, "longitude": 19, "readings": [
      {"file": "readings/station.csv"}, {"file": "forecast.csv", "kind": "forecast"}]})"
                                       : R"({"latitude": -33, "longitude": 19, "readings": [
      {"file": "readings/station.csv"}, {"file": "logger.csv", "bench": "open bench"}]})",
                        support::station_text("2026-01-01", 10));
  folder.write("forecast.csv", forecast);
  folder.write("logger.csv", logger);
  folder.write("packets.csv", "taxon,seeds\n");
  return load_garden(folder.path());
}

constexpr std::string_view forecast_text = "date,tmin_c,tmax_c\n"
                                           "2026-01-09,1,2\n"
                                           "2026-01-10,3,4\n"
                                           "2026-01-11,5,6\n"
                                           "2026-01-12,99,7\n"
                                           "2026-01-13,8,9\n";

TEST(AsOf, AForecastIsScreenedAndKeptFromItsFirstDay) {
  const LoadedGarden garden = as_of(load_with(forecast_text), day("2026-01-10"));
  EXPECT_EQ(garden.forecast.first(), day("2026-01-09"));
  EXPECT_EQ(values(garden.forecast.night_c()), (std::vector<float>{1, 3, 5, -999, 8}));
  EXPECT_EQ(values(garden.forecast.day_c()), (std::vector<float>{2, 4, 6, 7, 9}));
  EXPECT_EQ(garden.forecast.night_mark()[0], climate::Mark::forecast);
  EXPECT_EQ(garden.station.last(), day("2026-01-10"));
  EXPECT_EQ(support::texts(garden.problems).back(),
            "forecast.csv: the forecast from 2026-01-09 to 2026-01-13 is weighed in, 3 days after "
            "the last reading");
}

TEST(AsOf, AForecastOfSomeDaysAgoIsWarnedOf) {
  const LoadedGarden garden = as_of(load_with(forecast_text), day("2026-01-13"));
  EXPECT_EQ(support::texts(garden.problems).back(),
            "forecast.csv: the forecast from 2026-01-09 to 2026-01-13 is weighed in, 3 days after "
            "the last reading; it is old and counts for less; bring a newer one");
}

TEST(AsOf, AnEarlierTodaySeesTheForecastOnlyWhenItWasKnown) {
  const LoadedGarden day_before = as_of(load_with(forecast_text), day("2026-01-08"));
  EXPECT_EQ(day_before.forecast.first(), day("2026-01-09"));
  const LoadedGarden too_early = as_of(load_with(forecast_text), day("2026-01-07"));
  EXPECT_TRUE(too_early.forecast.empty());
  EXPECT_EQ(support::texts(too_early.problems).back(),
            "forecast.csv: the forecast begins 2026-01-09, later than tomorrow: it was not known "
            "today, 2026-01-07; it is ignored");
}

TEST(AsOf, AForecastThatTheReadingsHaveOvertakenIsIgnoredAndSaid) {
  const LoadedGarden garden =
      as_of(load_with("date,tmin_c,tmax_c\n2026-01-09,1,2\n2026-01-10,3,4\n2026-01-11,,4\n"),
            day("2026-01-12"));
  EXPECT_TRUE(garden.forecast.empty());
  EXPECT_EQ(support::texts(garden.problems).back(),
            "forecast.csv: the forecast has no night after the last reading, 2026-01-10; it is "
            "ignored; bring a newer one");
}

// Nights and days from a first to a last day, none of them alike.
std::string readings_text(Date first, Date last) {
  std::string text = "date,tmin_c,tmax_c\n";
  for (Date date = first; date <= last; date += Days{1}) {
    const int wave = days_between(first, date) % 7;
    text += format_iso_date(date) + "," + std::to_string(8 + wave) + "," +
            std::to_string(20 + wave) + "\n";
  }
  return text;
}

TEST(AsOf, MonthlyNormalsAreSaidNotToBeUsedOnceTheReadingsSpanTenYears) {
  const TemporaryFolder folder;
  support::write_garden(folder,
                        R"({"latitude": -33, "longitude": 19,
      "readings": [{"file": "readings/station.csv"}], "monthly_normals": {
      "night_c": [1,1,1,1,1,1,1,1,1,1,1,1], "day_c": [1,1,1,1,1,1,1,1,1,1,1,1]}})",
                        readings_text(day("2014-01-01"), day("2025-12-31")));
  const GardenFolder read = load_garden(folder.path());
  EXPECT_EQ(support::texts(as_of(read, day("2025-12-31")).problems).back(),
            "garden.json: monthly_normals are not used where the readings span 10 years or more");
  for (const std::string& problem : support::texts(as_of(read, day("2020-12-31")).problems)) {
    EXPECT_EQ(problem.find("monthly_normals"), std::string::npos) << problem;
  }
}

TEST(AsOf, ALoggerIsScreenedAndCutAtToday) {
  const LoadedGarden garden = as_of(load_with("",
                                              "date,tmin_c,tmax_c\n"
                                              "2026-01-03,1,11\n"
                                              "2026-01-04,99,12\n"
                                              "2026-01-05,3,13\n"
                                              "2026-01-06,4,14\n"),
                                    day("2026-01-05"));
  const climate::DailySeries& logger = garden.bench_loggers.at("open bench");
  EXPECT_EQ(values(logger.night_c()), (std::vector<float>{1, -999, 3}));
  const std::vector<climate::Finding>& findings = garden.logger_doubts.at("open bench").findings;
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings[0].kind, climate::FindingKind::impossible);
  EXPECT_EQ(findings[0].file, "logger.csv");
  EXPECT_EQ(findings[0].line, 3U);
  EXPECT_TRUE(garden.findings.empty());
}

// Sixty values of which half are right for °F only.
TEST(AsOf, ALoggerThatReadsFahrenheitIsSaidUnderItsFile) {
  std::string text = "date,tmin_c,tmax_c\n";
  for (int i = 0; i < 40; ++i) {
    text += format_iso_date(day("2025-12-01") + Days{i}) + ",48,77\n";
  }
  const LoadedGarden garden = as_of(load_with("", text), day("2026-01-10"));
  EXPECT_EQ(garden.logger_doubts.at("open bench").suspicions.at(0).kind,
            climate::SuspicionKind::fahrenheit_as_celsius);
  EXPECT_TRUE(garden.suspicions.empty());
  EXPECT_TRUE(
      support::texts(garden.problems)
          .back()
          .starts_with("logger.csv: Too hot for °C, and right for °F: look at the unit (50 % of "
                       "what was read); expected lowest and highest of each day"))
      << support::texts(garden.problems).back();
}

} // namespace
} // namespace nightsow::planner
