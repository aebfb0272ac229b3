#pragma once

#include "climate/readers/temperature_unit.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace nightsow::climate {

/// What a column of a daily table holds.
enum class ColumnMeaning {
  other,
  date,
  time, ///< a date too, where there is no better one
  year,
  month,
  day_number,       ///< day of the month beside year and month; alone, a date
  night,            ///< daily minimum
  day,              ///< daily maximum
  temperature_only, ///< a temperature that says neither minimum nor maximum
  station_id,
  station_name,
  latitude,
  longitude,
  elevation,
};

struct ColumnName {
  ColumnMeaning meaning = ColumnMeaning::other;
  std::optional<TemperatureUnit> unit; ///< of a temperature, where the name gives one
};

/// Reads a column's name loosely: case, blanks, marks, accents, order of words and the language of
/// a few common words do not matter ("Min Temp (°C)", "temperature_2m_min", "Fecha"). A temperature
/// with a word that is not known ("Min Dew Point", "Min Temp Flag") is `other`: better refused than
/// misread.
[[nodiscard]] ColumnName understand_column(std::string_view name);

/// The words of a name in lower case, accents taken off: "TempMax (°C)" gives temp, max, c.
[[nodiscard]] std::vector<std::string> words_of(std::string_view name);

/// "the date", "daily minima", ... for people; "not understood" for `other`.
[[nodiscard]] std::string_view meaning_name(ColumnMeaning meaning);

} // namespace nightsow::climate
