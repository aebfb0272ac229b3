#include "climate/readers/unread_format.hpp"

#include "climate/base/csv.hpp"
#include "climate/base/problem.hpp"
#include "climate/readers/check_text.hpp"
#include "climate/readers/ghcn_wide_csv.hpp"
#include "climate/readers/table_header.hpp"

#include <array>

namespace nightsow::climate {

namespace {

// What comes with an archive's readings and holds none, known by words on one of its first lines.
struct Companion {
  std::string_view words;
  std::string_view what;
};

constexpr std::array companions{
    Companion{"Product code: IDCJAC00", "a note that comes with Bureau of Meteorology files"},
    Companion{"STAID,STANAME", "ECA&D's list of stations"},
    Companion{"station_id, name, longitude", "ECA&D's list of stations"},
};

constexpr std::string_view plain_table =
    "a table with the columns date, tmin_c and tmax_c, or a file of an archive that is read";

[[noreturn]] void refuse(std::string_view name, std::string found, std::string_view remedy) {
  throw InputError({Severity::error,
                    std::string(name),
                    0,
                    0,
                    std::move(found),
                    std::string(plain_table),
                    std::string(remedy)});
}

// ---- a file of no known format --------------------------------------------------------------

constexpr std::size_t lines_shown = 3;
constexpr std::size_t fields_shown = 8;

std::string show_names(const TableHeader& header) {
  std::string text;
  for (std::size_t i = 0; i < header.names.size() && i < fields_shown; ++i) {
    text += (i == 0 ? "" : " | ") + printable(header.names[i], 30) + " (" +
            std::string(meaning_name(header.columns[i].meaning)) + ")";
  }
  return text + (header.names.size() > fields_shown ? " | ..." : "");
}

std::string show_fields(std::string_view line, char separator) {
  std::string text;
  const std::vector<std::string> fields = fields_of(line, separator);
  for (std::size_t i = 0; i < fields.size() && i < fields_shown; ++i) {
    text += (i == 0 ? "" : " | ") + printable(fields[i], 30);
  }
  return text + (fields.size() > fields_shown ? " | ..." : "");
}

std::string show_lines(const Opening& opening, const TableHeader& header) {
  std::string text = "line " + std::to_string(header.line) + ": " + show_names(header);
  std::size_t shown = 1;
  for (std::size_t i = header.line; i < opening.lines.size() && shown < lines_shown; ++i) {
    if (!trimmed(opening.lines[i]).empty()) {
      text += "; line " + std::to_string(i + 1) + ": " +
              show_fields(opening.lines[i], header.separator);
      ++shown;
    }
  }
  return text;
}

std::string what_is_missing(const TableHeader& header) {
  const bool temperature = header.column_of(ColumnMeaning::temperature_only).has_value();
  if (!header.has_dates() && !header.night && !header.day) {
    return "no line names a column of dates and one of daily minima or maxima";
  }
  if (!header.has_dates()) {
    return "no column of dates is named";
  }
  return temperature ? "the temperature is named neither a daily minimum nor a daily maximum"
                     : "no column of daily minima or maxima is named";
}

} // namespace

void refuse_unread_format(const Opening& opening, std::string_view name) {
  for (const Companion& companion : companions) {
    for (const std::string_view line : opening.lines) {
      if (line.find(companion.words) != std::string_view::npos) {
        refuse(name,
               "this is " + std::string(companion.what) + ", which holds no readings",
               "name the file of readings that came with it");
      }
    }
  }
  if (is_ghcn_wide_without_header(opening)) {
    refuse(name,
           "this is GHCN-Daily without its header line, so nothing tells which column is which",
           "put the header of the original file (STATION, DATE, ...) back as line 1");
  }
}

void refuse_unknown_format(const Opening& opening, std::string_view name) {
  const TableHeader header = nearest_to_a_header(opening);
  refuse(name,
         "no known weather format: " + what_is_missing(header) + " (" +
             show_lines(opening, header) + ")",
         "give line 1 names such as date,tmin_c,tmax_c");
}

} // namespace nightsow::climate
