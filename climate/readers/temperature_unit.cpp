#include "climate/readers/temperature_unit.hpp"

#include "climate/base/celsius.hpp"
#include "climate/base/date.hpp"
#include "climate/daily_series.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

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

// Counts how often something holds among the values it was asked of.
struct Share {
  std::size_t yes = 0;
  std::size_t all = 0;

  void count(bool holds) {
    yes += holds ? 1U : 0U;
    ++all;
  }

  [[nodiscard]] bool notable() const {
    return yes >= least_witnesses &&
           static_cast<double>(yes) >= least_share * static_cast<double>(all);
  }

  [[nodiscard]] bool most() const { return yes >= least_witnesses && 2 * yes > all; }
};

struct Tally {
  Share day_hot_for_celsius;
  Share night_hot_for_celsius;
  Share hot_for_fahrenheit;
  Share cold_for_degrees;
  Share wide_swing;
  std::array<Share, 12> month_day;
  std::array<Share, 12> month_night;
};

bool is_value(float value) {
  return !std::isnan(value) && !is_missing_code(value, TemperatureUnit::celsius);
}

std::size_t month_of(Date date) {
  return static_cast<unsigned>(date::year_month_day{date}.month()) - 1U;
}

void tally_value(ValueSpread& spread, Tally& tally, float value) {
  spread.lowest = spread.values == 0 ? value : std::min(spread.lowest, value);
  spread.highest = spread.values == 0 ? value : std::max(spread.highest, value);
  spread.whole_numbers = spread.whole_numbers && value == std::trunc(value);
  ++spread.values;
  tally.hot_for_fahrenheit.count(value > hottest_day_f);
  tally.cold_for_degrees.count(value < coldest_degrees);
}

void tally_row(ValueSpread& spread, Tally& tally, const Reading& row) {
  const bool has_night = is_value(row.night_c);
  const bool has_day = is_value(row.day_c);
  if (has_night) {
    tally_value(spread, tally, row.night_c);
    tally.night_hot_for_celsius.count(row.night_c > hottest_night_c);
  }
  if (has_day) {
    tally_value(spread, tally, row.day_c);
    tally.day_hot_for_celsius.count(row.day_c > hottest_day_c);
  }
  if (has_night && has_day) {
    tally.wide_swing.count(row.day_c - row.night_c > widest_usual_swing);
  }
}

// Where no value is so hot, so cold or so far from its other one that a unit could be in doubt, as
// in most files, there is nothing to tally.
std::optional<ValueSpread> harmless_spread(std::span<const Reading> rows) {
  ValueSpread spread;
  bool harmless = true;
  const auto take = [&](float value, float hottest) {
    if (!std::isnan(value)) {
      spread.lowest = spread.values == 0 ? value : std::min(spread.lowest, value);
      spread.highest = spread.values == 0 ? value : std::max(spread.highest, value);
      spread.whole_numbers = spread.whole_numbers && value == std::trunc(value);
      ++spread.values;
      harmless = harmless && value > coldest_degrees && value <= hottest;
    }
  };
  for (const Reading& row : rows) {
    take(row.night_c, hottest_month_night_c);
    take(row.day_c, hottest_month_day_c);
    // Missing on either side makes the comparison false.
    harmless = harmless && !(row.day_c - row.night_c > widest_usual_swing);
    if (!harmless) {
      return std::nullopt;
    }
  }
  return spread;
}

void tally_month(Tally& tally, const Reading& row) {
  const std::size_t month = month_of(row.date);
  if (is_value(row.night_c)) {
    tally.month_night[month].count(row.night_c > hottest_month_night_c);
  }
  if (is_value(row.day_c)) {
    tally.month_day[month].count(row.day_c > hottest_month_day_c);
  }
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
  if (value > -99.0F && value < 9999.0F) {
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
  if (const auto harmless = harmless_spread(rows)) {
    return *harmless;
  }
  ValueSpread spread;
  Tally tally;
  for (const Reading& row : rows) {
    tally_row(spread, tally, row);
  }
  // To tell the months of all dates takes longer than the rest, and without a value as hot as that
  // they say nothing.
  if (spread.highest > std::min(hottest_month_day_c, hottest_month_night_c)) {
    for (const Reading& row : rows) {
      tally_month(tally, row);
    }
  }
  const auto most = [](const Share& month) { return month.most(); };
  spread.too_hot_for_celsius =
      tally.day_hot_for_celsius.notable() || tally.night_hot_for_celsius.notable() ||
      std::any_of(tally.month_day.begin(), tally.month_day.end(), most) ||
      std::any_of(tally.month_night.begin(), tally.month_night.end(), most);
  spread.too_hot_for_fahrenheit = tally.hot_for_fahrenheit.notable();
  spread.as_wide_as_tenths = tally.wide_swing.most() || tally.cold_for_degrees.notable();
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
  for (Reading& row : rows) {
    row.night_c = to_celsius(row.night_c, night);
    row.day_c = to_celsius(row.day_c, day);
  }
  std::erase_if(
      rows, [](const Reading& row) { return std::isnan(row.night_c) && std::isnan(row.day_c); });
}

} // namespace nightsow::climate
