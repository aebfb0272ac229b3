#pragma once

#include "climate/readers/line_reader.hpp"
#include "climate/readers/preamble.hpp"
#include "climate/readers/temperature_unit.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

enum class Element { night, day };

/// How a table gives its dates. Of three columns, years come first.
enum class DateForm {
  none,
  one_column,       ///< YYYYMMDD, YYYY-MM-DD and the like
  year_month_day,   ///< three columns
  year_day_of_year, ///< two columns; 1 January is 1
  utc_day_end,      ///< YYYYMMDD:HHMM in UTC, of the end of a day at 9 am New Zealand time
};

// Names of columns below are compared without regard to case. "a|b" is either of them, "a*" is
// every name that begins with a.

struct DateColumns {
  DateForm form = DateForm::none;
  std::array<std::string_view, 3> names = {};
};

/// Matches every mark that is not blank.
inline constexpr std::string_view any_mark = "any";

/// What a column of quality says of a value. Marks are lists parted by blanks.
struct QualityRule {
  std::string_view column = {};    ///< its name
  std::size_t behind = 0;          ///< so many columns behind the value; 0: one for both elements
  std::size_t night_place = 0;     ///< the mark is this character of the field, from 1
  std::size_t day_place = 0;       ///< the same for the day; 0: the whole field
  std::string_view not_used = {};  ///< marks of values that must not be used: listed as findings
  int at_most = 0;                 ///< a number over this is such a mark, too; 0: no number is
  std::string_view why_not = {};   ///< in words: "3 values are <...>: not used"
  std::string_view kept = {};      ///< marks of values that are used, but that is said
  std::string_view what_kept = {}; ///< in words: "3 values are <...>: used all the same"
};

/// An archive's files of daily temperatures, where they are tables of text: everything a reader
/// needs to know of them, as data.
struct TableFormat {
  std::string_view name = {};
  std::array<std::string_view, 3> marks = {}; ///< each stands in one of the first lines
  char separator = ',';                       ///< or `runs_of_blanks`
  std::string_view layout = {}; ///< names by position ("date,tmax,tmin"), for want of a header
  std::array<DateColumns, 3> dates = {}; ///< the first that the header has
  std::string_view night = {};
  std::string_view day = {};
  std::string_view value = {};   ///< a column whose element only the file's own name tells
  bool column_a_station = false; ///< each column behind the date is named for its station
  TemperatureUnit unit = TemperatureUnit::celsius;
  std::array<QualityRule, 2> quality = {};
  std::string_view station = {};
  std::string_view station_name = {};
  std::string_view latitude = {};
  std::string_view longitude = {};
  std::string_view elevation = {};
  std::span<const PreambleFact> preamble = {};
  std::string_view comments = {}; ///< lines that begin with one of these characters are no rows
  std::string_view day_is = {};   ///< how the archive means a day
};

/// Where things stand in the rows of one file.
struct PlacedColumns {
  std::size_t header_line = 0; ///< 0: there is none
  std::vector<std::string> names;
  DateForm form = DateForm::none;
  std::vector<std::size_t> date;
  std::optional<std::size_t> night;
  std::optional<std::size_t> day;
  std::optional<std::size_t> value;
  std::optional<std::size_t> station;
  std::optional<std::size_t> station_name;
};

/// The names of a line's columns as that format parts them, trimmed; marks such as '#' before the
/// first are taken off.
[[nodiscard]] std::vector<std::string> names_in(const TableFormat& format, std::string_view line);

/// The first name that fits, as a position.
[[nodiscard]] std::optional<std::size_t> column_named(std::span<const std::string> names,
                                                      std::string_view wanted);

/// Whether a row is a comment of the format, by its first field or its whole line; a blank one is
/// not.
[[nodiscard]] bool is_comment(const TableFormat& format, std::string_view row);

/// The format's columns in the header, or by the layout. Empty when no line names dates and
/// temperatures of that format.
[[nodiscard]] std::optional<PlacedColumns> place_columns(const TableFormat& format,
                                                         const Opening& opening);

/// A date of a row; empty when it is none.
[[nodiscard]] std::optional<Date> date_of_row(const PlacedColumns& columns,
                                              std::span<const std::string_view> fields);

/// Why the file is of that format; empty when it is not.
[[nodiscard]] std::vector<std::string> recognise_table(const TableFormat& format,
                                                       const Opening& opening);

} // namespace nightsow::climate
