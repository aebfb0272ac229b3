#include "climate/readers/open_meteo_csv.hpp"

#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::climate {
namespace {

// Invented places and figures throughout.

const std::string one_place = "latitude,longitude,elevation,utc_offset_seconds,timezone\n"
                              "-33.1,19.2,NaN,7200,Africa/Johannesburg\n\n";

const std::string two_places =
    "location_id,latitude,longitude,elevation,utc_offset_seconds,timezone\n"
    "0,-33.1,19.2,210,7200,Africa/Johannesburg\n"
    "1,-34.5,20.25,15,7200,Africa/Johannesburg\n\n";

std::string refusal_for(const std::string& text, const ReadingChoices& choices = {}) {
  try {
    static_cast<void>(read_readings(text, "f.csv", choices));
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

std::string hours(const std::string& before) {
  std::string text;
  for (int hour = 0; hour < 48; ++hour) {
    const std::string clock = (hour % 24 < 10 ? "0" : "") + std::to_string(hour % 24) + ":00";
    text += before + (hour < 24 ? "2024-03-31T" : "2024-04-01T") + clock + ',' +
            std::to_string(hour % 24 < 6 ? 12 - hour % 24 : hour % 24) + '\n';
  }
  return text;
}

TEST(OpenMeteoCsv, DaysAreRead) {
  const Readings readings =
      read(one_place + "time,temperature_2m_max (°F),temperature_2m_min (°F)\n"
                       "2024-03-30,68,41\n2024-03-31,,50\n2024-04-01,NaN,\n");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5/20; 2024-03-31 10/-");
  EXPECT_EQ(readings.unit, "°F");
  EXPECT_EQ(readings.station.latitude, -33.1);
  EXPECT_FALSE(readings.station.elevation_m);
  EXPECT_EQ(readings.rows.at(0).line, 5U);
  EXPECT_EQ(readings.rows_read, 3U);
}

TEST(OpenMeteoCsv, DaysArePreferredToHoursBeforeThem) {
  EXPECT_EQ(rows_of(read(one_place + "time,temperature_2m (°C)\n" + hours("") +
                         "\ntime,temperature_2m_min (°C)\n2024-03-30,5\n")),
            "2024-03-30 5/-");
}

TEST(OpenMeteoCsv, HoursBecomeNightsAndDays) {
  EXPECT_EQ(rows_of(read(one_place + "time,temperature_2m (°C)\n" + hours(""))),
            "2024-03-31 -/23; 2024-04-01 6/23");
}

TEST(OpenMeteoCsv, OfSeveralPlacesItIsAskedWhichIsMeant) {
  const std::string text = two_places + "location_id,time,temperature_2m_min (°C)\n"
                                        "0,2024-03-30,5\n1,2024-03-30,6\n";
  EXPECT_EQ(refusal_for(text),
            "f.csv: the file holds several places: 0 (-33.1, 19.2); 1 (-34.5, 20.25); expected one "
            "place; which one is meant? Name it in garden.json beside the file: \"station\": "
            "\"0\"");
  EXPECT_EQ(rows_of(read_readings(text, "f.csv", {"1", "", ""})), "2024-03-30 6/-");
  EXPECT_TRUE(says(refusal_for(text, {"2", "", ""}), "the file has no place '2'"));
}

TEST(OpenMeteoCsv, ADistanceFromUtcThatNoPlaceHasIsRefused) {
  const auto text_with = [](const std::string& offset) {
    return "latitude,longitude,utc_offset_seconds\n1,2," + offset +
           "\n\ntime,temperature_2m_min (°C)\n2024-03-30,5\n";
  };
  for (const char* sound : {"64800", "-64800", ""}) {
    EXPECT_EQ(rows_of(read(text_with(sound))), "2024-03-30 5/-") << sound;
  }
  for (const char* unsound : {"64801", "-64801", "99999999999", "7200.5", "east"}) {
    EXPECT_EQ(refusal_for(text_with(unsound)),
              "f.csv:2: utc_offset_seconds is '" + std::string(unsound) +
                  "', which is no place's distance from UTC; expected whole seconds, 18 hours "
                  "(64800) at most east or west; download it again");
  }
}

TEST(OpenMeteoCsv, FaultsHaveTheirPlace) {
  const Readings readings =
      read(one_place + "time,temperature_2m_min (°C)\nsoon,5\n2024-03-31,warm\n2024-04-01,7\n");
  EXPECT_EQ(rows_of(readings), "2024-04-01 7/-");
  EXPECT_EQ(readings.rows_faulty, 2U);
  EXPECT_EQ(readings.problems.at(0).line, 5U);
  EXPECT_EQ(readings.problems.at(1).line, 6U);
  EXPECT_EQ(readings.problems.at(1).column, 12U);
}

TEST(OpenMeteoCsv, ADayWithTwoFaultsIsOneFaultyRow) {
  const Readings readings =
      read(one_place + "time,temperature_2m_max (°C),temperature_2m_min (°C)\n"
                       "2024-03-30,hot,cold\n2024-03-31,15,5\n");
  EXPECT_EQ(readings.rows_read, 2U);
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_EQ(readings.problems.size(), 2U);
}

TEST(OpenMeteoCsv, WithoutTemperaturesItIsRefused) {
  EXPECT_TRUE(says(refusal_for(one_place + "time,rain_sum (mm)\n2024-03-30,5\n"),
                   "no block of the file holds air temperatures"));
}

} // namespace
} // namespace nightsow::climate
