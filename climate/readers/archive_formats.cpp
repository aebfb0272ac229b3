#include "climate/readers/archive_formats.hpp"

#include "climate/readers/read_table.hpp"
#include "climate/readers/row_reader.hpp"

#include <array>

namespace nightsow::climate {

namespace {

using enum DateForm;
using enum StationFact;

constexpr DateColumns date_in(std::string_view name) {
  return {one_column, {name}};
}

constexpr DateColumns year_month_day_in(std::string_view year,
                                        std::string_view month,
                                        std::string_view day) {
  return {year_month_day, {year, month, day}};
}

constexpr std::string_view to_nine_am =
    "24 hours to 9 am local time; the archive sets the minimum on the day of the reading and the "
    "maximum on the day before, and its dates are kept";

constexpr std::array power_preamble{PreambleFact{"latitude", latitude},
                                    PreambleFact{"longitude", longitude},
                                    PreambleFact{"lat/lon region", elevation},
                                    PreambleFact{"Dates (", said}};

constexpr std::array acorn_night_preamble{PreambleFact{"MIN TEMP", id},
                                          PreambleFact{"missing_value=99999.9", name}};
constexpr std::array acorn_day_preamble{PreambleFact{"MAX TEMP", id},
                                        PreambleFact{"missing_value=99999.9", name}};

constexpr std::array met_preamble{PreambleFact{"station number", id},
                                  PreambleFact{"station name", name},
                                  PreambleFact{"latitude", latitude},
                                  PreambleFact{"longitude", longitude},
                                  PreambleFact{"altitude", elevation}};

constexpr std::array eca_preamble{PreambleFact{"STAID:", id},
                                  PreambleFact{"series of station", name}};

constexpr std::array canada_preamble{PreambleFact{"Climate Identifier", id},
                                     PreambleFact{"Station Name", name},
                                     PreambleFact{"Latitude", latitude},
                                     PreambleFact{"Longitude", longitude},
                                     PreambleFact{"Elevation", elevation}};

constexpr std::array sef_preamble{PreambleFact{"ID\t", id},
                                  PreambleFact{"Name\t", name},
                                  PreambleFact{"Lat\t", latitude},
                                  PreambleFact{"Lon\t", longitude},
                                  PreambleFact{"Alt\t", elevation}};

// The letters of Shift JIS (cp932), in which the archive writes, and of UTF-8, in which a
// spreadsheet saves them: the date, lowest and highest temperature.
constexpr std::string_view jma_date = "\x94N\x8C\x8E\x93\xFA|年月日";
constexpr std::string_view jma_night = "\x8D\xC5\x92\xE1\x8B\x43\x89\xB7*|最低気温*";
constexpr std::string_view jma_day = "\x8D\xC5\x8D\x82\x8B\x43\x89\xB7*|最高気温*";

// The column behind the value repeats its name and holds the quality. Codes from memory: 8 sound,
// 5 nearly complete, 4 and less incomplete, doubtful or missing. A 3 is in no list of them that we
// know; under 5 it is not used either.
constexpr QualityRule jma_rule(std::string_view column) {
  return {.column = column,
          .behind = 1,
          .not_used = "0 1 2 3 4",
          .why_not = "incomplete or doubtful (quality under 5)"};
}

constexpr std::array jma_quality{jma_rule(jma_night), jma_rule(jma_day)};

constexpr TemperatureUnit tenths = TemperatureUnit::tenths_of_celsius;

// What the marks of the archives mean stands in their own descriptions of the files; where a line
// says "from memory", it was not seen there.
constexpr std::array formats{
    TableFormat{.name = "GSOD (global summary of the day)",
                .marks = {"\"FRSHTT\""},
                .dates = {date_in("DATE")},
                .night = "MIN",
                .day = "MAX",
                .unit = TemperatureUnit::fahrenheit,
                .quality = {QualityRule{.column = "MIN_ATTRIBUTES|MAX_ATTRIBUTES",
                                        .behind = 1,
                                        .kept = "*",
                                        .what_kept = "taken from the hourly readings, not from a "
                                                     "minimum or maximum thermometer"}},
                .station = "STATION",
                .station_name = "NAME",
                .latitude = "LATITUDE",
                .longitude = "LONGITUDE",
                .elevation = "ELEVATION",
                .day_is = "0 to 24 h UTC, which far from Greenwich is another night"},
    TableFormat{.name = "NASA POWER CSV",
                .marks = {"-BEGIN HEADER-"},
                .dates = {DateColumns{year_day_of_year, {"YEAR", "DOY"}},
                          year_month_day_in("YEAR", "MO", "DY")},
                .night = "T2M_MIN",
                .day = "T2M_MAX",
                .preamble = power_preamble,
                .day_is = "UTC or local solar time, as the header says; a grid cell, no station"},
    TableFormat{.name = "Bureau of Meteorology, one element a file",
                .marks = {"Product code,"},
                .dates = {year_month_day_in("Year", "Month", "Day")},
                .night = "Minimum*",
                .day = "Maximum*",
                .quality = {QualityRule{.column = "Days of accumulation*",
                                        .behind = 1,
                                        .at_most = 1,
                                        .why_not = "the extreme of several days"},
                            QualityRule{.column = "Quality",
                                        .behind = 2,
                                        .kept = "N",
                                        .what_kept = "not yet checked by the archive (N)"}},
                .station = "Bureau of Meteorology station number|Station Number|BoM station",
                .day_is = to_nine_am},
    TableFormat{.name = "ACORN-SAT text, minima",
                .marks = {"MIN TEMP ", "missing_value="},
                .separator = runs_of_blanks,
                .layout = "date,tmin",
                .dates = {date_in("date")},
                .night = "tmin",
                .preamble = acorn_night_preamble,
                .comments = "M",
                .day_is = to_nine_am},
    TableFormat{.name = "ACORN-SAT text, maxima",
                .marks = {"MAX TEMP ", "missing_value="},
                .separator = runs_of_blanks,
                .layout = "date,tmax",
                .dates = {date_in("date")},
                .day = "tmax",
                .preamble = acorn_day_preamble,
                .comments = "M",
                .day_is = to_nine_am},
    TableFormat{.name = "ACORN-SAT CSV",
                .marks = {"temperature (degC),site number"},
                .dates = {date_in("date")},
                .night = "minimum temperature (degC)",
                .day = "maximum temperature (degC)",
                .station = "site number",
                .station_name = "site name",
                .day_is = to_nine_am},
    TableFormat{.name = "crop model .met (SILO)",
                .marks = {"[weather.met.weather]"},
                .separator = runs_of_blanks,
                .dates = {year_month_day_in("year", "month", "dm"),
                          year_month_day_in("year", "month", "day"),
                          DateColumns{year_day_of_year, {"year", "day"}}},
                .night = "mint",
                .day = "maxt",
                .quality = {QualityRule{.column = "code",
                                        .night_place = 3,
                                        .day_place = 2,
                                        .not_used = "7",
                                        .why_not = "long-term averages, not readings (code 7)",
                                        .kept = "2 3",
                                        .what_kept = "interpolated from other stations (code 2 "
                                                     "or 3)"}},
                .preamble = met_preamble,
                .comments = "!(",
                .day_is = to_nine_am},
    TableFormat{.name = "KNMI daily",
                .marks = {"# STN,YYYYMMDD"},
                .dates = {date_in("YYYYMMDD")},
                .night = "TN",
                .day = "TX",
                .unit = tenths,
                .station = "STN",
                .comments = "#",
                .day_is = "0 to 24 h UTC"},
    TableFormat{.name = "DWD daily (klima_tag)",
                .marks = {"STATIONS_ID;MESS_DATUM"},
                .separator = ';',
                .dates = {date_in("MESS_DATUM")},
                .night = "TNK",
                .day = "TXK",
                .station = "STATIONS_ID",
                .day_is = "0 to 24 h UTC, older years after a national rule; QN_4 is a level of "
                          "checking and drops nothing"},
    TableFormat{.name = "ECA&D",
                .marks = {"SOUID,"},
                .dates = {date_in("DATE")},
                .night = "TN",
                .day = "TX",
                .unit = tenths,
                .quality = {QualityRule{.column = "Q_TN|Q_TX",
                                        .behind = 1,
                                        .not_used = "1",
                                        .why_not = "suspect by the archive's checks (Q = 1)"}},
                .station = "STAID",
                .preamble = eca_preamble,
                .day_is = "as each country has it"},
    TableFormat{.name = "ECA&D, a column a station",
                .dates = {date_in("YYYYMMDD")},
                .column_a_station = true,
                .day_is = "as each country has it"},
    TableFormat{.name = "Environment Canada daily CSV",
                .marks = {"Temp Flag"},
                .dates = {date_in("Date/Time"), year_month_day_in("Year", "Month", "Day")},
                .night = "Min Temp (*",
                .day = "Max Temp (*",
                .quality = {QualityRule{.column = "Min Temp Flag|Max Temp Flag",
                                        .behind = 1,
                                        .kept = "E",
                                        .what_kept = "estimated (E)"},
                            QualityRule{.column = "Data Quality",
                                        .kept = any_mark,
                                        .what_kept = "not reviewed by the archive (Data Quality)"}},
                .station = "Climate ID",
                .station_name = "Station Name",
                .latitude = "Latitude (y)",
                .longitude = "Longitude (x)",
                .preamble = canada_preamble,
                .day_is = "the climatological day of the network"},
    TableFormat{.name = "Météo-France daily",
                .marks = {"NUM_POSTE;NOM_USUEL"},
                .separator = ';',
                .dates = {date_in("AAAAMMJJ")},
                .night = "TN",
                .day = "TX",
                // Codes from memory: 0 protected, 1 validated, 2 doubtful, 9 filtered.
                .quality = {QualityRule{.column = "QTN|QTX",
                                        .behind = 1,
                                        .not_used = "2",
                                        .why_not = "doubtful by the archive's checks (Q = 2)"}},
                .station = "NUM_POSTE",
                .station_name = "NOM_USUEL",
                .latitude = "LAT",
                .longitude = "LON",
                .elevation = "ALTI",
                .day_is = "as the network has it"},
    TableFormat{.name = "SEF (rescued minima)",
                .marks = {"SEF\t", "Vbl\tTn", "Units\tC"},
                .separator = '\t',
                .dates = {year_month_day_in("Year", "Month", "Day")},
                .night = "Value",
                .preamble = sef_preamble,
                .day_is = "as the old observers had it; one date may have several readings"},
    TableFormat{.name = "SEF (rescued maxima)",
                .marks = {"SEF\t", "Vbl\tTx", "Units\tC"},
                .separator = '\t',
                .dates = {year_month_day_in("Year", "Month", "Day")},
                .day = "Value",
                .preamble = sef_preamble,
                .day_is = "as the old observers had it; one date may have several readings"},
    // Any other variable or unit of the same layout: known, and refused.
    TableFormat{.name = "SEF with neither Tn nor Tx in °C", .marks = {"SEF\t", "Vbl\t"}},
    TableFormat{.name = "New Zealand database export",
                .marks = {"Date(UTC)", "Period(Hrs)"},
                .dates = {DateColumns{utc_day_end, {"Date(UTC)"}}},
                .night = "Tmin(C)",
                .day = "Tmax(C)",
                .quality = {QualityRule{.column = "Period(Hrs)",
                                        .behind = 1,
                                        .at_most = 24,
                                        .why_not = "the extreme of several days"}},
                .station = "Station",
                .day_is = "24 hours to 9 am local time, stamped at their end in UTC; the local "
                          "date of that end is taken"},
    TableFormat{.name = "JMA daily",
                .marks = {"\x94N\x8C\x8E\x93\xFA", "\x8B\x43\x89\xB7"},
                .dates = {date_in(jma_date)},
                .night = jma_night,
                .day = jma_day,
                .quality = jma_quality,
                .day_is = "0 to 24 h Japan time"},
    TableFormat{.name = "JMA daily, saved as UTF-8",
                .marks = {"年月日", "気温"},
                .dates = {date_in(jma_date)},
                .night = jma_night,
                .day = jma_day,
                .quality = jma_quality,
                .day_is = "0 to 24 h Japan time"},
    TableFormat{.name = "HadCET daily",
                .separator = runs_of_blanks,
                .dates = {date_in("Date")},
                .value = "Value",
                .day_is = "as the series has it"},
    TableFormat{.name = "AquaCrop climate text",
                .separator = runs_of_blanks,
                .dates = {year_month_day_in("Year", "Month", "Day")},
                .night = "Tmin(C)|MinTemp",
                .day = "Tmax(C)|MaxTemp"},
    TableFormat{.name = "Meteostat bulk daily",
                .marks = {"date,tavg,tmin,tmax,prcp"},
                .dates = {date_in("date")},
                .night = "tmin",
                .day = "tmax"},
    TableFormat{.name = "Meteostat bulk daily, without header",
                .layout = "date,tavg,tmin,tmax,prcp,snow,wdir,wspd,wpgt,pres,tsun",
                .dates = {date_in("date")},
                .night = "tmin",
                .day = "tmax"},
    TableFormat{.name = "RClimDex",
                .separator = runs_of_blanks,
                .layout = "year,month,day,prec,tmax,tmin",
                .dates = {year_month_day_in("year", "month", "day")},
                .night = "tmin",
                .day = "tmax"},
    TableFormat{.name = "GHCN-Daily subset in tenths",
                .separator = runs_of_blanks,
                .layout = "date,tmax,tmin,prec",
                .dates = {date_in("date")},
                .night = "tmin",
                .day = "tmax",
                .unit = tenths},
};

} // namespace

std::span<const TableFormat> archive_formats() {
  return formats;
}

std::optional<Readings> read_archive(const Opening& opening, std::string_view name) {
  for (const TableFormat& format : formats) {
    const std::vector<std::string> because = recognise_table(format, opening);
    if (because.empty()) {
      continue;
    }
    Readings readings = read_table(format, opening, name);
    readings.format = format.name;
    readings.because.insert(readings.because.begin(), because.begin(), because.end());
    return readings;
  }
  return std::nullopt;
}

} // namespace nightsow::climate
