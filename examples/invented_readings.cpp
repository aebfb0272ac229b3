// Invents the readings of the example gardens:
//
//   invented_readings south > garden-south/readings/station.csv
//
// Nothing here was measured. Weather is made as a year's curve, a slow warming, and spells that
// last some days. All arithmetic is in integers (thousandths of a kelvin, hundredths of a degree of
// angle), so that every machine writes the same bytes.

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace {

using MilliKelvin = std::int64_t; // as a temperature: thousandths of a degree Celsius

/// A year's curve: one wave around a mean, highest on its peak day.
struct Wave {
  MilliKelvin mean;
  MilliKelvin half_swing;
  date::sys_days peak; // in any year
};

enum class Element { night, day };

/// Faults that a reader has to find. Described in examples/README.md.
struct PlantedFaults {
  date::sys_days impossible_on;
  Element impossible_element; // reads 99.9
  date::sys_days twice_on;    // the row stands there twice, with equal values
};

struct Profile {
  std::string_view name;
  Wave night;
  Wave day;
  date::sys_days first;
  date::sys_days last;
  std::uint64_t seed;
  PlantedFaults faults;
};

constexpr date::sys_days on(int year, unsigned month, unsigned day) {
  return date::year{year} / date::month{month} / date::day{day};
}

constexpr Profile south{
    .name = "south",
    .night = {.mean = 11'250, .half_swing = 5'250, .peak = on(2000, 2, 10)},
    .day = {.mean = 22'750, .half_swing = 6'250, .peak = on(2000, 2, 3)},
    .first = on(1981, 3, 1),
    .last = on(2026, 2, 19),
    .seed = 331'192,
    .faults = {.impossible_on = on(1997, 7, 14),
               .impossible_element = Element::day,
               .twice_on = on(2011, 5, 3)},
};

constexpr Profile north{
    .name = "north",
    .night = {.mean = 11'250, .half_swing = 6'250, .peak = on(2000, 8, 1)},
    .day = {.mean = 22'500, .half_swing = 8'500, .peak = on(2000, 7, 26)},
    .first = on(1981, 9, 19),
    .last = on(2026, 9, 9),
    .seed = 372'081,
    .faults = {.impossible_on = on(2004, 12, 2),
               .impossible_element = Element::night,
               .twice_on = on(1990, 2, 11)},
};

constexpr std::int64_t turn = 36'000; // hundredths of a degree

constexpr std::int64_t rounded_quotient(std::int64_t value, std::int64_t divisor) {
  const std::int64_t half = value < 0 ? -divisor / 2 : divisor / 2;
  return (value + half) / divisor;
}

/// A thousand times the sine, by Bhaskara's parabolas; off by 2 in a thousand at most.
constexpr std::int64_t sine(std::int64_t angle) {
  const std::int64_t in_turn = ((angle % turn) + turn) % turn;
  const bool below = in_turn >= turn / 2;
  const std::int64_t x = below ? in_turn - turn / 2 : in_turn;
  const std::int64_t product = x * (turn / 2 - x);
  const std::int64_t height = 4'000 * product / (405'000'000 - product);
  return below ? -height : height;
}

constexpr std::int64_t days_between(date::sys_days from, date::sys_days to) {
  return (to - from).count();
}

/// The curve's value on a day, for a year of 365.2425 days (146097 days in 400 years).
constexpr MilliKelvin value_of(const Wave& wave, date::sys_days day) {
  const std::int64_t angle = days_between(wave.peak, day) * 400 * turn / 146'097;
  return wave.mean + wave.half_swing * sine(angle + turn / 4) / 1'000;
}

/// 0.02 K a year, nought in the middle of the series.
constexpr MilliKelvin warming(const Profile& profile, date::sys_days day) {
  const std::int64_t from_middle =
      days_between(profile.first, day) - days_between(profile.first, profile.last) / 2;
  return from_middle * 20 * 400 / 146'097;
}

/// Numbers that look random and are the same everywhere: a shift-register generator of 64 bits.
class Chance {
public:
  explicit Chance(std::uint64_t seed) : state_(seed) {}

  std::int64_t below(std::int64_t limit) {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    return static_cast<std::int64_t>((state_ >> 11U) % static_cast<std::uint64_t>(limit));
  }

  /// About normal, mean 0, standard deviation 1000: the sum of twelve even draws.
  std::int64_t spread() {
    std::int64_t sum = 0;
    for (int draw = 0; draw < 12; ++draw) {
      sum += below(1'000);
    }
    return sum - 12 * 999 / 2;
  }

private:
  std::uint64_t state_;
};

/// How far a night and its day lie from their curves.
struct Departure {
  MilliKelvin night;
  MilliKelvin day;
};

/// Weather in spells: one disturbance that keeps 0.8 of itself from day to day and moves nights and
/// days alike, and a part of each that is gone tomorrow. Standard deviations: nights 2.6 K, days 4
/// K.
class Weather {
public:
  explicit Weather(std::uint64_t seed) : chance_(seed) {}

  Departure next() {
    spell_ = (800 * spell_ + 600 * chance_.spread()) / 1'000; // 0.8² + 0.6² = 1 keeps its spread
    const MilliKelvin night = (2'000 * spell_ + 1'650 * chance_.spread()) / 1'000;
    const MilliKelvin day = (2'900 * spell_ + 2'750 * chance_.spread()) / 1'000;
    return {.night = night, .day = day};
  }

private:
  Chance chance_;
  std::int64_t spell_ = 0; // thousandths of its standard deviation
};

/// One row; a missing value is one that nobody read.
struct Row {
  date::sys_days date;
  std::optional<std::int64_t> night_tenths;
  std::optional<std::int64_t> day_tenths;
};

Row make_row(const Profile& profile, date::sys_days date, const Departure& departure) {
  constexpr MilliKelvin least_range = 1'000; // a day is never cooler than its night
  const MilliKelvin warmer = warming(profile, date);
  const MilliKelvin night = value_of(profile.night, date) + warmer + departure.night;
  const MilliKelvin day = value_of(profile.day, date) + warmer + departure.day;
  return {.date = date,
          .night_tenths = rounded_quotient(night, 100),
          .day_tenths = rounded_quotient(std::max(day, night + least_range), 100)};
}

/// Loses about one reading in 400 of each element, but none in the last 30 days, so that the
/// examples have an answer for today.
void lose_some(Row& row, Chance& chance, date::sys_days last) {
  const bool lose_night = chance.below(400) == 0;
  const bool lose_day = chance.below(400) == 0;
  if (days_between(row.date, last) < 30) {
    return;
  }
  if (lose_night) {
    row.night_tenths.reset();
  }
  if (lose_day) {
    row.day_tenths.reset();
  }
}

void plant_fault(Row& row, const PlantedFaults& faults) {
  if (row.date != faults.impossible_on) {
    return;
  }
  auto& value = faults.impossible_element == Element::night ? row.night_tenths : row.day_tenths;
  value = 999;
}

std::string text_of(std::optional<std::int64_t> tenths) {
  if (!tenths) {
    return "";
  }
  const std::int64_t size = std::abs(*tenths);
  return fmt::format("{}{}.{}", *tenths < 0 ? "-" : "", size / 10, size % 10);
}

std::string text_of(const Row& row) {
  const date::year_month_day day{row.date};
  return fmt::format("{:04}-{:02}-{:02},{},{}\n",
                     static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()),
                     text_of(row.night_tenths),
                     text_of(row.day_tenths));
}

std::string readings_csv(const Profile& profile) {
  Weather weather(profile.seed);
  Chance loss(profile.seed + 1);
  std::string csv = "date,tmin_c,tmax_c\n";
  for (date::sys_days date = profile.first; date <= profile.last; date += date::days{1}) {
    Row row = make_row(profile, date, weather.next());
    lose_some(row, loss, profile.last);
    plant_fault(row, profile.faults);
    csv += text_of(row);
    if (date == profile.faults.twice_on) {
      csv += text_of(row);
    }
  }
  return csv;
}

} // namespace

int main(int argc, char* argv[]) {
  const std::span arguments(argv, static_cast<std::size_t>(argc));
  for (const Profile& profile : {south, north}) {
    if (arguments.size() == 2 && profile.name == arguments[1]) {
      const std::string csv = readings_csv(profile);
      const bool written = std::fwrite(csv.data(), 1, csv.size(), stdout) == csv.size();
      return written && std::fflush(stdout) == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
    }
  }
  std::fputs("usage: invented_readings south|north\n", stderr);
  return 2;
}
