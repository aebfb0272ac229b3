#include "climate/readers/read_readings.hpp"

#include "climate/readers/archive_formats.hpp"
#include "climate/readers/canada_dly.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/daily_table.hpp"
#include "climate/readers/dssat_weather.hpp"
#include "climate/readers/ghcn_dly.hpp"
#include "climate/readers/ghcn_long_csv.hpp"
#include "climate/readers/ghcn_wide_csv.hpp"
#include "climate/readers/gunzip.hpp"
#include "climate/readers/inta_dat.hpp"
#include "climate/readers/json_daily.hpp"
#include "climate/readers/line_reader.hpp"
#include "climate/readers/logger.hpp"
#include "climate/readers/midas.hpp"
#include "climate/readers/open_meteo_csv.hpp"
#include "climate/readers/row_faults.hpp"
#include "climate/readers/unread_format.hpp"

#include <array>
#include <utility>

namespace nightsow::climate {

namespace {

struct Format {
  std::string_view name;
  /// Why the file is of this format; empty when it is not.
  std::vector<std::string> (*recognise)(const Opening& opening, const ReadingChoices& choices);
  Readings (*read)(const Opening& opening, std::string_view name, const ReadingChoices& choices);
};

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

// Most formats leave nothing open.
template <auto Recognise>
std::vector<std::string> content_only(const Opening& opening, const ReadingChoices& /*choices*/) {
  return Recognise(opening);
}

// Those that need the choice of a station have it from the opening.
template <auto Read>
Readings without_choices(const Opening& opening,
                         std::string_view name,
                         const ReadingChoices& /*choices*/) {
  return Read(opening, name);
}

// Asked in this order after the archives' tables (archive_formats.cpp): what is told by fixed marks
// first, the general tables last. A format that is no plain table is a line here and two functions
// of its own.
constexpr std::array formats{
    Format{"JSON", content_only<recognise_json>, read_json},
    Format{"MIDAS daily temperatures (BADC-CSV)",
           content_only<recognise_midas>,
           without_choices<read_midas>},
    Format{"DSSAT weather file",
           content_only<recognise_dssat_weather>,
           without_choices<read_dssat_weather>},
    Format{"INTA .DAT", content_only<recognise_inta_dat>, without_choices<read_inta_dat>},
    Format{"Environment Canada .DLY",
           content_only<recognise_canada_dly>,
           without_choices<read_canada_dly>},
    Format{"GHCN-Daily .dly", content_only<recognise_ghcn_dly>, without_choices<read_ghcn_dly>},
    Format{"GHCN-Daily CSV, a month a row",
           content_only<recognise_ghcn_month_csv>,
           without_choices<read_ghcn_month_csv>},
    Format{"GHCN-Daily CSV, an element a row",
           content_only<recognise_ghcn_long_csv>,
           without_choices<read_ghcn_long_csv>},
    Format{"GHCN-Daily CSV, a day a row",
           content_only<recognise_ghcn_wide_csv>,
           without_choices<read_ghcn_wide_csv>},
    Format{"CSV in blocks, as Open-Meteo writes it",
           content_only<recognise_open_meteo_csv>,
           read_open_meteo_csv},
    Format{"readings within the day", recognise_logger, read_logger},
    Format{"daily table", content_only<recognise_daily_table>, without_choices<read_daily_table>},
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

Readings finished(Readings readings, const ReadingChoices& choices) {
  check_station(choices.station, readings);
  if (readings.rows.empty()) {
    refuse_without_rows(readings);
  }
  say_when_list_is_cut(readings);
  return readings;
}

Readings read_text(std::string_view text, std::string_view name, const ReadingChoices& choices) {
  check_text(text, name);
  Opening opening = opening_of(text);
  opening.station = choices.station;
  if (!is_json(text)) { // whose one long line no reader of lines should see
    if (auto readings = read_archive(opening, name)) {
      return finished(std::move(*readings), choices);
    }
    refuse_unread_format(opening, name);
  }
  for (const Format& format : formats) {
    std::vector<std::string> because = format.recognise(opening, choices);
    if (because.empty()) {
      continue;
    }
    Readings readings = format.read(opening, name, choices);
    readings.format = format.name;
    readings.because.insert(readings.because.begin(), because.begin(), because.end());
    return finished(std::move(readings), choices);
  }
  refuse_unknown_format(opening, name);
}

} // namespace

Readings read_readings(std::string_view text,
                       std::string_view name,
                       const ReadingChoices& choices) {
  if (!is_gzip(text)) {
    return read_text(text, name, choices);
  }
  const std::string unpacked = gunzip(text, name);
  Readings readings = read_text(unpacked, name, choices);
  readings.because.insert(readings.because.begin(), "it was packed by gzip");
  return readings;
}

} // namespace nightsow::climate
