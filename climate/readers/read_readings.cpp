#include "climate/readers/read_readings.hpp"

#include "climate/readers/archive_formats.hpp"
#include "climate/readers/canada_dly.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/daily_table.hpp"
#include "climate/readers/dssat_weather.hpp"
#include "climate/readers/ghcn_dly.hpp"
#include "climate/readers/ghcn_long_csv.hpp"
#include "climate/readers/ghcn_wide_csv.hpp"
#include "climate/readers/inta_dat.hpp"
#include "climate/readers/line_reader.hpp"
#include "climate/readers/midas.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/unread_format.hpp"

#include <array>
#include <utility>

namespace nightsow::climate {

namespace {

struct Format {
  std::string_view name;
  /// Why the file is of this format; empty when it is not.
  std::vector<std::string> (*recognise)(const Opening& opening);
  Readings (*read)(const Opening& opening, std::string_view name);
};

// Asked in this order after the archives' tables (archive_formats.cpp): what is told by fixed marks
// first, the general table last. A format that is no plain table is a line here and two functions
// of its own.
constexpr std::array formats{
    Format{"MIDAS daily temperatures (BADC-CSV)", recognise_midas, read_midas},
    Format{"DSSAT weather file", recognise_dssat_weather, read_dssat_weather},
    Format{"INTA .DAT", recognise_inta_dat, read_inta_dat},
    Format{"Environment Canada .DLY", recognise_canada_dly, read_canada_dly},
    Format{"GHCN-Daily .dly", recognise_ghcn_dly, read_ghcn_dly},
    Format{"GHCN-Daily CSV, a month a row", recognise_ghcn_month_csv, read_ghcn_month_csv},
    Format{"GHCN-Daily CSV, an element a row", recognise_ghcn_long_csv, read_ghcn_long_csv},
    Format{"GHCN-Daily CSV, a day a row", recognise_ghcn_wide_csv, read_ghcn_wide_csv},
    Format{"daily table", recognise_daily_table, read_daily_table},
};

// The first fault of a row, or, where no row is faulty, the first note: why nothing is left.
std::string first_reason(const Readings& readings) {
  for (const Problem& problem : readings.problems) {
    if (problem.severity == Severity::warning && problem.line > 0) {
      return "; line " + std::to_string(problem.line) + ": " + problem.found + ", expected " +
             problem.expected;
    }
  }
  return readings.problems.empty() ? "" : "; " + readings.problems.front().found;
}

[[noreturn]] void refuse_without_rows(const Readings& readings) {
  const std::string found = readings.rows_read == 0
                                ? "there are no rows"
                                : "not one of " + std::to_string(readings.rows_read) +
                                      " rows gives a temperature" + first_reason(readings);
  throw InputError({Severity::error,
                    readings.file,
                    0,
                    0,
                    found + " (read as " + readings.format + ")",
                    "rows with a date and a temperature",
                    "check that this is the file you meant"});
}

void say_when_list_is_cut(Readings& readings) {
  if (readings.rows_faulty > most_faults_listed) {
    add_note(readings,
             "only the first " + std::to_string(most_faults_listed) + " faults of " +
                 std::to_string(readings.rows_faulty) + " faulty rows are listed",
             "");
  }
}

// The file must be of the station that was asked for, or not be asked.
void check_station(std::string_view wanted, const Readings& readings) {
  if (wanted.empty() || wanted == readings.station.id || wanted == readings.station.name) {
    return;
  }
  const bool named = !readings.station.id.empty();
  throw InputError(
      {Severity::error,
       readings.file,
       0,
       0,
       "station '" + printable(wanted) + "' was asked for, and this file " +
           (named ? "is of '" + printable(readings.station.id) + "'" : "names no station"),
       "a file that holds that station",
       "correct \"station\" beside the file in garden.json, or remove it"});
}

Readings finished(Readings readings, std::string_view station) {
  if (readings.rows.empty()) {
    refuse_without_rows(readings);
  }
  check_station(station, readings);
  say_when_list_is_cut(readings);
  return readings;
}

} // namespace

Readings read_readings(std::string_view text, std::string_view name, std::string_view station) {
  check_text(text, name);
  Opening opening = opening_of(text);
  opening.station = station;
  if (auto readings = read_archive(opening, name)) {
    return finished(std::move(*readings), station);
  }
  refuse_unread_format(opening, name);
  for (const Format& format : formats) {
    std::vector<std::string> because = format.recognise(opening);
    if (because.empty()) {
      continue;
    }
    Readings readings = format.read(opening, name);
    readings.format = format.name;
    readings.because.insert(readings.because.begin(), because.begin(), because.end());
    return finished(std::move(readings), station);
  }
  refuse_unknown_format(opening, name);
}

} // namespace nightsow::climate
