#include "climate/readers/json_daily.hpp"

#include "tests/support/weather_text.hpp"

#include <gtest/gtest.h>

#include <string>

namespace nightsow::climate {
namespace {

// Invented places and figures throughout.

constexpr std::string_view daily = R"({
  "latitude": -33.1, "longitude": 19.2, "elevation": 210.0,
  "utc_offset_seconds": 7200, "timezone": "Africa/Johannesburg",
  "daily_units": {"time": "iso8601", "temperature_2m_max": "°C", "temperature_2m_min": "°C"},
  "daily": {
    "time": ["2024-03-30", "2024-03-31", "2024-04-01"],
    "temperature_2m_max": [18.5, null, 17],
    "temperature_2m_min": [5.1, null, null],
    "apparent_temperature_min": [1, 2, 3]
  }
})";

std::string refusal_for(std::string_view text, const ReadingChoices& choices = {}) {
  try {
    static_cast<void>(read_readings(text, "f.json", choices));
  } catch (const InputError& error) {
    return to_text(error.problem());
  }
  return "";
}

TEST(OpenMeteoJson, TimesThatAreNoListAreRefused) {
  for (const char* text : {R"({"daily": {"time": {"a": 1}, "temperature_2m_min": [1.0]}})",
                           R"({"daily": {"time": "2024-01-01", "temperature_2m_min": [1.0]}})"}) {
    EXPECT_NE(refusal_for(text).find("is no list"), std::string::npos) << text;
  }
}

TEST(OpenMeteoJson, DaysAreReadAndNullIsMissing) {
  const Readings readings = read(daily);
  EXPECT_EQ(rows_of(readings), "2024-03-30 5.1/18.5; 2024-04-01 -/17");
  EXPECT_EQ(readings.rows_read, 3U);
  EXPECT_EQ(readings.rows_faulty, 0U);
  EXPECT_EQ(readings.rows.at(1).line, 6U);
  EXPECT_EQ(readings.unit, "°C");
  EXPECT_EQ(readings.station.latitude, -33.1);
  EXPECT_EQ(readings.station.elevation_m, 210.0);
  EXPECT_EQ(readings.format, "JSON");
}

TEST(OpenMeteoJson, FahrenheitIsToldByTheUnits) {
  EXPECT_EQ(rows_of(read(R"({"daily_units": {"temperature_2m_min": "\u00b0F"},
      "daily": {"time": ["2024-03-31"], "temperature_2m_min": [41.0]}})")),
            "2024-03-31 5/-");
}

TEST(OpenMeteoJson, DaysMayBeSecondsOfTheirLocalMidnight) {
  // 2024-03-31 00:00 in Johannesburg is 22:00 UTC of the day before.
  EXPECT_EQ(rows_of(read(R"({"utc_offset_seconds": 7200, "daily": {"time": [1711836000],
      "temperature_2m_min": [5]}})")),
            "2024-03-31 5/-");
}

TEST(OpenMeteoJson, ArraysOfUnequalLengthAreRefused) {
  EXPECT_EQ(refusal_for(R"({"daily": {"time": ["2024-03-31"],
 "temperature_2m_min": [5, 6]}})"),
            "f.json:2:2: \"temperature_2m_min\" holds 2 values for 1 times; expected one value a "
            "time; download it again");
}

TEST(OpenMeteoJson, FaultsHaveTheirPlace) {
  const Readings readings = read(R"({"daily": {"time": ["2024-03-31", "soon", "2024-04-02"],
"temperature_2m_min": [5, 6, "warm"]}})");
  EXPECT_EQ(rows_of(readings), "2024-03-31 5/-");
  EXPECT_EQ(readings.rows_faulty, 2U);
  EXPECT_EQ(to_text(readings.problems.at(0)),
            "file.csv:1: \"soon\" where the time should be; expected a time such as "
            "2024-03-31T21:30, or seconds since 1970; download it again");
  EXPECT_EQ(readings.problems.at(1).line, 2U);
}

TEST(OpenMeteoJson, ADayWithTwoFaultsIsOneFaultyRow) {
  const Readings readings = read(R"({"daily": {"time": ["2024-03-31", "2024-04-01"],
      "temperature_2m_min": ["a", 5], "temperature_2m_max": ["b", 15]}})");
  EXPECT_EQ(readings.rows_read, 2U);
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_EQ(readings.problems.size(), 2U);
}

constexpr std::string_view places = R"([
  {"latitude": 1.5, "longitude": 2.5, "daily": {"time": ["2024-03-31"], "temperature_2m_min": [5]}},
  {"location_id": 7, "latitude": 3.5, "longitude": 4.5,
   "daily": {"time": ["2024-03-31"], "temperature_2m_min": [6]}}])";

TEST(OpenMeteoJson, OfSeveralPlacesItIsAskedWhichIsMeant) {
  EXPECT_EQ(refusal_for(places),
            "f.json:1:1: the file holds several places: 0 (1.5, 2.5); 7 (3.5, 4.5); expected one "
            "place; which one is meant? Name it in garden.json beside the file: \"station\": "
            "\"0\"");
  EXPECT_EQ(rows_of(read_readings(places, "f.json", {"7", "", ""})), "2024-03-31 6/-");
  EXPECT_TRUE(says(refusal_for(places, {"9", "", ""}), "the file has no place '9'"));
}

TEST(OpenMeteoJson, TheOnePlaceOfAFileIsNotTakenForAnother) {
  EXPECT_EQ(refusal_for(daily, {"7", "", ""}),
            "f.json: station '7' was asked for, and this file names no station; expected a file "
            "that holds that station; correct \"station\" beside the file in garden.json, or "
            "remove it");
  const std::string named = R"({"location_id": 7, "daily": {"time": ["2024-03-31"],
      "temperature_2m_min": [6]}})";
  EXPECT_EQ(rows_of(read_readings(named, "f.json", {"7", "", ""})), "2024-03-31 6/-");
  EXPECT_TRUE(says(refusal_for(named, {"8", "", ""}), "and this file is of '7'"));
}

std::string hours_of_a_day(std::string_view place, bool unix_times) {
  std::string times;
  std::string values;
  for (int hour = 0; hour < 48; ++hour) {
    const std::string clock = (hour % 24 < 10 ? "0" : "") + std::to_string(hour % 24) + ":00";
    times += (hour == 0 ? "" : ", ") +
             (unix_times ? std::to_string(1711836000 + 3600 * hour)
                         : "\"2024-0" + std::string(hour < 24 ? "3-31T" : "4-01T") + clock + '"');
    values += (hour == 0 ? "" : ", ") + std::to_string(hour % 24 < 6 ? 12 - hour % 24 : hour % 24);
  }
  return "{" + std::string(place) + R"("hourly": {"time": [)" + times +
         R"(], "temperature_2m": [)" + values + "]}}";
}

TEST(OpenMeteoJson, HoursBecomeNightsAndDays) {
  const std::string place = R"("utc_offset_seconds": 7200, "timezone": "Africa/Johannesburg", )";
  EXPECT_EQ(rows_of(read(hours_of_a_day(place, false))), "2024-03-31 -/23; 2024-04-01 6/23");
  EXPECT_EQ(rows_of(read(hours_of_a_day(place, true))), "2024-03-31 -/23; 2024-04-01 6/23");
}

TEST(OpenMeteoJson, HoursInUtcNeedTheGardensZone) {
  const std::string hours =
      hours_of_a_day(R"("utc_offset_seconds": 0, "timezone": "GMT", )", false);
  EXPECT_TRUE(says(refusal_for(hours), "in which time zone is it?"));
  EXPECT_EQ(rows_of(read_readings(hours, "f", {"", "", "Africa/Abidjan"})),
            "2024-03-31 -/23; 2024-04-01 6/23");
}

TEST(OpenMeteoJson, ADistanceFromUtcThatNoPlaceHasIsRefused) {
  const auto text_with = [](const std::string& offset) {
    return R"({"utc_offset_seconds": )" + offset +
           R"(, "daily": {"time": ["2024-03-31"], "temperature_2m_min": [5]}})";
  };
  for (const char* sound : {"64800", "-64800", "null"}) {
    EXPECT_EQ(rows_of(read(text_with(sound))), "2024-03-31 5/-") << sound;
  }
  for (const char* unsound : {"64801", "-1e300", "\"east\""}) {
    EXPECT_TRUE(says(refusal_for(text_with(unsound)),
                     "which is no place's distance from UTC; expected seconds, 18 hours (64800)"))
        << unsound;
  }
}

TEST(OpenMeteoJson, WithoutTemperaturesItIsRefused) {
  EXPECT_TRUE(says(refusal_for(R"({"daily": {"time": ["2024-03-31"], "rain_sum": [5]}})"),
                   R"(neither "daily" nor "hourly" holds air temperatures)"));
}

TEST(PowerJson, ReadsBothElementsAndLeavesTheFillValueOut) {
  const Readings readings = read(R"({"type": "Feature",
    "geometry": {"type": "Point", "coordinates": [19.2, -33.1, 210.5]},
    "properties": {"parameter": {
      "T2M_MAX": {"20240330": 18.5, "20240331": -999.0},
      "T2M_MIN": {"20240330": 5.1, "20240331": 6.2, "20240401": -999.0}}},
    "header": {"fill_value": -999.0, "time_standard": "LST"}})");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5.1/18.5; 2024-03-31 6.2/-");
  EXPECT_EQ(readings.station.latitude, -33.1);
  EXPECT_EQ(readings.station.longitude, 19.2);
  EXPECT_EQ(readings.station.elevation_m, 210.5);
  EXPECT_EQ(readings.because.back(), "days are those of LST");
}

TEST(PowerJson, RowsAreDatesWhateverTheyHold) {
  const Readings readings = read(R"({"properties": {"parameter": {
      "T2M_MAX": {"20240330": 18.5, "20240331": "x", "soon": 3},
      "T2M_MIN": {"20240330": 5.1, "20240331": "y"}}}})");
  EXPECT_EQ(rows_of(readings), "2024-03-30 5.1/18.5");
  EXPECT_EQ(readings.rows_read, 3U);
  EXPECT_EQ(readings.rows_faulty, 2U);
  EXPECT_EQ(readings.problems.size(), 3U);
}

TEST(PowerJson, NamesNoStationSoNoneCanBeAskedFor) {
  EXPECT_TRUE(says(
      refusal_for(R"({"properties": {"parameter": {"T2M_MIN": {"20240330": 5}}}})", {"7", "", ""}),
      "station '7' was asked for, and this file names no station"));
}

TEST(PowerJson, AnotherFillValueIsHeeded) {
  EXPECT_EQ(rows_of(read(R"({"header": {"fill_value": -99.5}, "properties": {"parameter": {
      "T2M_MIN": {"20240330": -99.5, "20240331": 5}}}})")),
            "2024-03-31 5/-");
}

TEST(PowerJson, WithoutTemperaturesItIsRefused) {
  EXPECT_TRUE(says(refusal_for(R"({"properties": {"parameter": {"PS": {"20240330": 90}}}})"),
                   "neither T2M_MIN nor T2M_MAX"));
}

constexpr std::string_view aemet = R"([
 {"fecha": "2024-03-30", "indicativo": "A1", "nombre": "INVENTED", "altitud": "676",
  "tmin": "0,8", "tmax": "16,8", "horatmax": "Varias"},
 {"fecha": "2024-03-31", "indicativo": "A1", "nombre": "INVENTED", "altitud": "676",
  "tmin": "-1,5"},
 {"fecha": "2024-04-01", "indicativo": "A1", "tmin": "Ip", "tmax": "17,0"},
 {"fecha": "2024-03-30", "indicativo": "B2", "nombre": "OTHER", "tmin": "3,0"}])";

TEST(AemetJson, TextsWithDecimalCommasAreRead) {
  const Readings readings = read_readings(aemet, "a.json", {"A1", "", ""});
  EXPECT_EQ(rows_of(readings), "2024-03-30 0.8/16.8; 2024-03-31 -1.5/-; 2024-04-01 -/17");
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_EQ(readings.problems.at(0).line, 6U);
  EXPECT_EQ(readings.station.id, "A1");
}

TEST(AemetJson, ADayWithTwoFaultsIsOneFaultyRow) {
  const Readings readings = read(R"([
 {"fecha": "2024-03-30", "indicativo": "A1", "tmin": "x", "tmax": "y"},
 {"fecha": "2024-03-31", "indicativo": "A1", "tmin": "0,5"}])");
  EXPECT_EQ(readings.rows_faulty, 1U);
  EXPECT_EQ(readings.problems.size(), 2U);
}

TEST(AemetJson, OfSeveralStationsOneIsChosen) {
  EXPECT_TRUE(says(refusal_for(aemet),
                   "the file holds several stations: A1, B2; expected one station; which one"));
  EXPECT_EQ(rows_of(read_readings(aemet, "a.json", {"OTHER", "", ""})), "2024-03-30 3/-");
  EXPECT_TRUE(says(refusal_for(aemet, {"C3", "", ""}),
                   "the file has no one station 'C3'; expected one of: A1, B2"));
}

TEST(Json, OfAnotherKindShowsItsKeys) {
  EXPECT_EQ(refusal_for(R"({"a": 1, "b": 2})"),
            "f.json:1:1: JSON of a kind that is not known: its keys are a, b; expected \"daily\" "
            "or \"hourly\" arrays with temperatures, NASA POWER or AEMET; download the readings as "
            "CSV, or write date, minimum and maximum to a CSV file");
  EXPECT_TRUE(says(refusal_for("[]"), "JSON of a kind that is not known"));
}

TEST(Json, BrokenJsonIsRefusedWithItsPlace) {
  EXPECT_TRUE(says(refusal_for("{\"daily\":\n {"), "f.json:2"));
}

TEST(Json, OneLineMayBeLongerThanALineOfATable) {
  const std::string text = R"({"daily": {"time": ["2024-03-31"], "temperature_2m_min": [5]}, )"
                           R"("x": ")" +
                           std::string((std::size_t{1} << 20U) + 1, 'x') + "\"}";
  EXPECT_EQ(rows_of(read(text)), "2024-03-31 5/-");
}

} // namespace
} // namespace nightsow::climate
