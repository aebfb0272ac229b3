#include "climate/readers/logger_row.hpp"

#include "climate/base/csv.hpp"
#include "climate/daily_series.hpp"
#include "climate/readers/field_value.hpp"
#include "climate/readers/table_header.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string>

namespace nightsow::climate {

namespace {

std::optional<ClockStamp> three_numbers(const LoggerHeader& header, Fields fields) {
  const auto year = read_whole(field_at(fields, header.year));
  const auto month = read_whole(field_at(fields, header.month));
  const auto day = read_whole(field_at(fields, header.day));
  if (!year || !month || !day) {
    return std::nullopt;
  }
  ClockStamp stamp;
  stamp.a = *year;
  stamp.b = *month;
  stamp.c = *day;
  stamp.year_leads = true;
  return stamp;
}

std::optional<ClockStamp> stamp_of(const LoggerHeader& header, Fields fields) {
  auto stamp =
      header.stamp ? read_stamp(field_at(fields, header.stamp)) : three_numbers(header, fields);
  if (!stamp || !header.time || stamp->has_time) {
    return stamp;
  }
  const auto time = read_time_of_day(field_at(fields, header.time), true);
  if (!time) {
    return std::nullopt;
  }
  stamp->time = *time;
  stamp->has_time = true;
  if (!minute_is_sound(header, fields)) {
    return std::nullopt;
  }
  stamp->time += std::chrono::minutes{read_whole(field_at(fields, header.minute)).value_or(0)};
  return stamp;
}

std::optional<TemperatureUnit> unit_named(std::string_view word) {
  for (const std::string& unit : words_of(word)) {
    if (unit == "c" || unit == "celsius" || unit == "centigrade" || unit == "degc") {
      return TemperatureUnit::celsius;
    }
    if (unit == "f" || unit == "fahrenheit" || unit == "degf") {
      return TemperatureUnit::fahrenheit;
    }
  }
  return std::nullopt;
}

bool all_digits(std::string_view text) {
  return !text.empty() &&
         std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

bool is_split(Fields fields, std::size_t column) {
  if (column + 1 >= fields.size()) {
    return false;
  }
  std::string_view whole = trimmed(fields[column]);
  if (whole.starts_with('-') || whole.starts_with('+')) {
    whole.remove_prefix(1);
  }
  return all_digits(whole) && all_digits(fields[column + 1]);
}

std::optional<float> value_of(const LoggerLayout& layout, Fields fields) {
  const std::size_t column = layout.channel.column;
  if (layout.split_decimals && fields.size() > layout.header.names.size() &&
      is_split(fields, column)) {
    return read_temperature(std::string(trimmed(fields[column])) + ',' +
                            std::string(fields[column + 1]));
  }
  const auto value = read_temperature(field_at(fields, column));
  return value && is_missing_code(*value, TemperatureUnit::celsius) ? std::optional(std::nanf(""))
                                                                    : value;
}

// The rows of the opening below the header.
std::vector<std::vector<std::string>> first_rows(const Opening& opening,
                                                 const LoggerHeader& header) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = header.line; i < opening.lines.size(); ++i) {
    if (!trimmed(opening.lines[i]).empty()) {
      rows.push_back(fields_of(opening.lines[i], header.separator));
    }
  }
  return rows;
}

std::vector<std::string_view> views_of(const std::vector<std::string>& fields) {
  return {fields.begin(), fields.end()};
}

} // namespace

std::string_view field_at(Fields fields, std::optional<std::size_t> column) {
  return column && *column < fields.size() ? fields[*column] : std::string_view{};
}

bool minute_is_sound(const LoggerHeader& header, Fields fields) {
  constexpr int last_minute = 59;
  const std::string_view field = trimmed(field_at(fields, header.minute));
  const auto minute = read_whole(field);
  return field.empty() || (minute && *minute >= 0 && *minute <= last_minute);
}

LoggerRow understand_row(const LoggerLayout& layout, Fields fields, std::size_t line) {
  LoggerRow row;
  row.line = line;
  row.stamp = stamp_of(layout.header, fields);
  if (!row.stamp && layout.header.stamp) {
    row.instant = read_unix_time(field_at(fields, layout.header.stamp));
  }
  row.value = value_of(layout, fields);
  row.unit = unit_named(field_at(fields, layout.header.unit));
  return row;
}

bool shows_times_of_day(const Opening& opening, const LoggerHeader& header) {
  std::map<std::array<int, 3>, std::chrono::seconds> first_time;
  for (const std::vector<std::string>& row : first_rows(opening, header)) {
    const auto fields = views_of(row);
    const auto stamp = stamp_of(header, fields);
    if (!stamp && header.stamp && read_unix_time(field_at(fields, header.stamp))) {
      return true;
    }
    if (stamp && stamp->has_time) {
      const auto [known, is_new] =
          first_time.try_emplace(std::array{stamp->a, stamp->b, stamp->c}, stamp->time);
      if (!is_new && known->second != stamp->time) {
        return true;
      }
    }
  }
  return false;
}

// A few rows with more fields than names may have an alarm column; nearly all have split decimals.
bool has_split_decimals(const Opening& opening,
                        const LoggerHeader& header,
                        const LoggerChannel& channel) {
  if (header.separator != ',') {
    return false;
  }
  std::size_t rows = 0;
  std::size_t split = 0;
  for (const std::vector<std::string>& row : first_rows(opening, header)) {
    const auto fields = views_of(row);
    ++rows;
    split += fields.size() > header.names.size() && is_split(fields, channel.column) ? 1U : 0U;
  }
  return split > 0 && 4 * split >= 3 * rows;
}

} // namespace nightsow::climate
