#include "climate/readers/temperature_unit.hpp"

#include "climate/base/celsius.hpp"
#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>

namespace nightsow::climate {

namespace {

// The hottest day ever measured had 56.7 °C or 134 °F (Furnace Creek, 1913), the hottest night 42.6
// °C (Quriyat, 2018).
constexpr float hottest_day_c = 57.0F;
constexpr float hottest_night_c = 45.0F;
constexpr float hottest_day_f = 140.0F;

// No month of any place has most of its days above 51 °C, or most of its nights above 38: the
// hottest measured (Death Valley, July 2018 and 2024) had mean maxima under 50 and minima under 37.
constexpr float hottest_month_day_c = 51.0F;
constexpr float hottest_month_night_c = 38.0F;

// Night and day of one date lie 5 to 15 K apart in most places: 9 to 27 °F, or 50 to 150 tenths.
constexpr float widest_usual_swing = 45.0F;
constexpr float coldest_degrees = -90.0F; // Vostok 1983: -89.2 °C

// A slip of the pen must not turn the unit of a file: so many values, and this share of them.
constexpr std::size_t least_witnesses = 3;
constexpr double least_share = 0.02;

// How often something holds, of how many.
struct Share {
  std::size_t yes = 0;
  std::size_t all = 0;

  [[nodiscard]] bool notable() const {
    return yes >= least_witnesses &&
           static_cast<double>(yes) >= least_share * static_cast<double>(all);
  }

  [[nodiscard]] bool most() const { return yes >= least_witnesses && 2 * yes > all; }
};

using Months = std::array<std::size_t, 12>;

// The nights or the days of a file.
struct ElementTally {
  float hottest_c = 0.0F;       ///< over it a value is hot
  float hottest_month_c = 0.0F; ///< over it a value is too hot for most of a month
  std::size_t values = 0;
  std::size_t hot = 0;
  Months hot_by_month{};
};

struct Tally {
  float lowest = std::numeric_limits<float>::max();
  float highest = std::numeric_limits<float>::lowest();
  bool whole_numbers = true;
  ElementTally nights{hottest_night_c, hottest_month_night_c};
  ElementTally days{hottest_day_c, hottest_month_day_c};
  std::size_t hot_for_fahrenheit = 0;
  std::size_t cold_for_degrees = 0;
  std::size_t pairs = 0;
  std::size_t wide_swings = 0;
};

// No missing code lies between these.
bool is_no_code(float value) {
  return value > -99.0F && value < 9999.0F;
}

bool is_value(float value) {
  return !std::isnan(value) && !is_missing_code(value, TemperatureUnit::celsius);
}

std::size_t month_of(Date date) {
  return static_cast<unsigned>(date::year_month_day{date}.month()) - 1U;
}

// So hot or so cold that the unit could be in doubt, as few values are.
void tally_extreme(Tally& tally, ElementTally& element, float value, Date date) {
  element.hot += value > element.hottest_c ? 1U : 0U;
  element.hot_by_month[month_of(date)] += value > element.hottest_month_c ? 1U : 0U;
  tally.hot_for_fahrenheit += value > hottest_day_f ? 1U : 0U;
  tally.cold_for_degrees += value < coldest_degrees ? 1U : 0U;
}

// Whether there is a value.
bool tally_value(Tally& tally, ElementTally& element, float value, Date date) {
  if (!(value >= coldest_degrees && value <= element.hottest_month_c)) {
    if (!is_value(value)) {
      return false;
    }
    tally_extreme(tally, element, value, date);
  }
  tally.lowest = std::min(tally.lowest, value);
  tally.highest = std::max(tally.highest, value);
  tally.whole_numbers = tally.whole_numbers && value == std::trunc(value);
  ++element.values;
  return true;
}

void tally_row(Tally& tally, const Reading& row) {
  const bool has_night = tally_value(tally, tally.nights, row.night_c, row.date);
  const bool has_day = tally_value(tally, tally.days, row.day_c, row.date);
  if (has_night && has_day) {
    ++tally.pairs;
    tally.wide_swings += row.day_c - row.night_c > widest_usual_swing ? 1U : 0U;
  }
}

// Consecutive rows are mostly of one month, which is told once for them.
Months values_by_month(std::span<const Reading> rows, float Reading::*element) {
  constexpr Days shortest_month{28};
  Months values{};
  Date first{};
  std::size_t month = 0;
  bool known = false;
  for (const Reading& row : rows) {
    if (!known || row.date < first || row.date >= first + shortest_month) {
      const date::year_month_day ymd{row.date};
      first = Date{ymd.year() / ymd.month() / 1};
      month = month_of(row.date);
      known = true;
    }
    values[month] += is_value(row.*element) ? 1U : 0U;
  }
  return values;
}

bool a_month_is_too_hot(std::span<const Reading> rows,
                        float Reading::*element,
                        const Months& hot_by_month) {
  const auto witnessed = [](std::size_t hot) { return hot >= least_witnesses; };
  if (std::none_of(hot_by_month.begin(), hot_by_month.end(), witnessed)) {
    return false; // which spares the dates
  }
  const Months values = values_by_month(rows, element);
  for (std::size_t month = 0; month < values.size(); ++month) {
    if (Share{hot_by_month[month], values[month]}.most()) {
      return true;
    }
  }
  return false;
}

} // namespace

std::string_view unit_name(TemperatureUnit unit) {
  switch (unit) {
  case TemperatureUnit::fahrenheit:
    return "°F";
  case TemperatureUnit::tenths_of_celsius:
    return "tenths of °C";
  case TemperatureUnit::celsius:
    break;
  }
  return "°C";
}

bool is_missing_code(float value, TemperatureUnit unit) {
  if (is_no_code(value)) {
    return false;
  }
  constexpr std::array codes{
      -999.0F, -999.9F, -9999.0F, -9999.9F, 9999.0F, 9999.9F, 99999.0F, 99999.9F, -99999.0F};
  if (std::find(codes.begin(), codes.end(), value) != codes.end()) {
    return true;
  }
  return unit != TemperatureUnit::tenths_of_celsius && (value == -99.0F || value == -99.9F);
}

float to_celsius(float value, TemperatureUnit unit) {
  if (std::isnan(value) || is_missing_code(value, unit)) {
    return missing_c;
  }
  const auto number = static_cast<double>(value);
  switch (unit) {
  case TemperatureUnit::fahrenheit:
    return static_cast<float>(from_fahrenheit(number).degrees());
  case TemperatureUnit::tenths_of_celsius:
    return static_cast<float>(number / 10.0);
  case TemperatureUnit::celsius:
    break;
  }
  return value;
}

ValueSpread spread_of(std::span<const Reading> rows) {
  Tally tally;
  for (const Reading& row : rows) {
    tally_row(tally, row);
  }
  ValueSpread spread;
  const ElementTally& nights = tally.nights;
  const ElementTally& days = tally.days;
  spread.values = nights.values + days.values;
  if (spread.values > 0) {
    spread.lowest = tally.lowest;
    spread.highest = tally.highest;
    spread.whole_numbers = tally.whole_numbers;
  }
  spread.too_hot_for_celsius = Share{days.hot, days.values}.notable() ||
                               Share{nights.hot, nights.values}.notable() ||
                               a_month_is_too_hot(rows, &Reading::day_c, days.hot_by_month) ||
                               a_month_is_too_hot(rows, &Reading::night_c, nights.hot_by_month);
  spread.too_hot_for_fahrenheit = Share{tally.hot_for_fahrenheit, spread.values}.notable();
  spread.as_wide_as_tenths = Share{tally.wide_swings, tally.pairs}.most() ||
                             Share{tally.cold_for_degrees, spread.values}.notable();
  return spread;
}

std::optional<TemperatureUnit> unit_by_values(const ValueSpread& spread) {
  if (spread.too_hot_for_fahrenheit || spread.as_wide_as_tenths) {
    return spread.whole_numbers ? std::optional(TemperatureUnit::tenths_of_celsius) : std::nullopt;
  }
  return spread.too_hot_for_celsius ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
}

std::string describe(const ValueSpread& spread) {
  const auto figure = [](float value) {
    std::array<char, 32> text{};
    auto* const end = std::to_chars(text.data(), text.data() + text.size(), value).ptr;
    return std::string(text.data(), end);
  };
  return "values from " + figure(spread.lowest) + " to " + figure(spread.highest);
}

void convert_rows(std::vector<Reading>& rows, TemperatureUnit night, TemperatureUnit day) {
  const auto stays = [](float value, TemperatureUnit unit) {
    return unit == TemperatureUnit::celsius && (is_no_code(value) || std::isnan(value));
  };
  const auto is_empty = [](const Reading& row) {
    return std::isnan(row.night_c) && std::isnan(row.day_c);
  };
  // In most files nothing changes, or only from some row on.
  auto kept = std::find_if_not(rows.begin(), rows.end(), [&](const Reading& row) {
    return stays(row.night_c, night) && stays(row.day_c, day) && !is_empty(row);
  });
  for (auto row = kept; row != rows.end(); ++row) {
    *kept = *row;
    kept->night_c = stays(row->night_c, night) ? row->night_c : to_celsius(row->night_c, night);
    kept->day_c = stays(row->day_c, day) ? row->day_c : to_celsius(row->day_c, day);
    kept += is_empty(*kept) ? 0 : 1;
  }
  rows.erase(kept, rows.end());
}

} // namespace nightsow::climate
