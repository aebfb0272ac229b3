#include "climate/screen_checks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace nightsow::climate {

namespace {

constexpr std::size_t months_a_year = 12;
constexpr std::size_t days_of_leap_year = 366;
constexpr float half_a_tenth = 0.05F;

bool is_naught(float value_c) {
  constexpr float zero_fahrenheit_c = -17.78F;
  return std::abs(value_c) < half_a_tenth || std::abs(value_c - zero_fahrenheit_c) < half_a_tenth;
}

// A month's values in bins of one kelvin. A gap of ten lies between bins, so that the ends of each
// bin show it without sorting.
struct MonthBins {
  static constexpr int lowest_c = -100;
  static constexpr std::size_t count = 200;

  struct Bin {
    float low = std::numeric_limits<float>::infinity();
    float high = -std::numeric_limits<float>::infinity();
    std::size_t values = 0;
  };

  std::array<Bin, count> bins{};
  std::size_t values = 0;

  void add(float value_c) {
    const auto at = static_cast<int>(std::floor(value_c)) - lowest_c;
    Bin& bin = bins[static_cast<std::size_t>(std::clamp(at, 0, static_cast<int>(count) - 1))];
    bin.low = std::min(bin.low, value_c);
    bin.high = std::max(bin.high, value_c);
    ++bin.values;
    ++values;
  }

  [[nodiscard]] std::size_t median_bin() const {
    std::size_t below = 0;
    std::size_t at = 0;
    while (2 * (below + bins[at].values) < values) {
      below += bins[at].values;
      ++at;
    }
    return at;
  }
};

struct Limits {
  float low_c = -std::numeric_limits<float>::infinity();
  float high_c = std::numeric_limits<float>::infinity();
};

Limits limits_without_gap(const MonthBins& month) {
  Limits limits;
  if (month.values < least_values_to_judge) {
    return limits;
  }
  const std::size_t median = month.median_bin();
  float inner = month.bins[median].high;
  for (std::size_t i = median + 1; i < MonthBins::count; ++i) {
    const MonthBins::Bin& bin = month.bins[i];
    if (bin.values > 0 && bin.low - inner >= gap_k) {
      limits.high_c = inner;
      break;
    }
    inner = std::max(inner, bin.high);
  }
  inner = month.bins[median].low;
  for (std::size_t i = median; i-- > 0;) {
    const MonthBins::Bin& bin = month.bins[i];
    if (bin.values > 0 && inner - bin.high >= gap_k) {
      limits.low_c = inner;
      break;
    }
    inner = std::min(inner, bin.low);
  }
  return limits;
}

struct Sums {
  double count = 0.0;
  double sum = 0.0;
  double squares = 0.0;

  void add(const Sums& other, double sign = 1.0) {
    count += sign * other.count;
    sum += sign * other.sum;
    squares += sign * other.squares;
  }
};

// Mean and deviation of the window about each calendar day; the deviation is infinite where too few
// values stand, so that nothing there can fail.
struct TimeOfYear {
  double mean_c = 0.0;
  double sd_k = std::numeric_limits<double>::infinity();

  [[nodiscard]] bool is_far(float value_c) const {
    return std::abs(static_cast<double>(value_c) - mean_c) >= outlier_sd * sd_k;
  }
};

using Climatology = std::array<TimeOfYear, days_of_leap_year>;

TimeOfYear time_of_year(const Sums& window) {
  TimeOfYear time;
  if (window.count < static_cast<double>(least_values_to_judge)) {
    return time;
  }
  time.mean_c = window.sum / window.count;
  const double variance = (window.squares - window.sum * time.mean_c) / (window.count - 1.0);
  // Where a place has no spread at all nothing can be told.
  time.sd_k = variance > 1e-6 ? std::sqrt(variance) : std::numeric_limits<double>::infinity();
  return time;
}

Climatology climatology(std::span<const float> values_c,
                        const CalendarDays& calendar,
                        const Climatology& without) {
  std::array<Sums, days_of_leap_year> days{};
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    const std::size_t day = calendar.day_of_leap_year[i] - 1U;
    if (!std::isnan(values_c[i]) && !without[day].is_far(values_c[i])) {
      const auto value = static_cast<double>(values_c[i]);
      days[day].add({1.0, value, value * value});
    }
  }
  constexpr std::size_t half = outlier_window_days / 2;
  Climatology result;
  Sums window;
  for (std::size_t day = 0; day < static_cast<std::size_t>(outlier_window_days); ++day) {
    window.add(days[(day + days_of_leap_year - half) % days_of_leap_year]);
  }
  for (std::size_t day = 0; day < days_of_leap_year; ++day) {
    result[day] = time_of_year(window);
    window.add(days[(day + days_of_leap_year - half) % days_of_leap_year], -1.0);
    window.add(days[(day + half + 1) % days_of_leap_year]);
  }
  return result;
}

// The highest or lowest of the values on the day and on both its neighbours; NaN when none is
// there. `pick` is fmax or fmin, which pass over NaN.
template <class Pick> float of_three(std::span<const float> values, std::size_t i, Pick pick) {
  float result = values[i];
  if (i > 0) {
    result = pick(result, values[i - 1]);
  }
  return i + 1 < values.size() ? pick(result, values[i + 1]) : result;
}

} // namespace

CalendarDays calendar_days(Date first, std::size_t size) {
  constexpr std::array<std::uint16_t, months_a_year> days_before{
      0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335};
  CalendarDays calendar;
  calendar.month.reserve(size);
  calendar.day_of_leap_year.reserve(size);
  for (std::size_t i = 0; i < size; ++i) {
    const date::year_month_day day{first + Days{static_cast<int>(i)}};
    const auto month = static_cast<unsigned>(day.month());
    calendar.month.push_back(static_cast<std::uint8_t>(month));
    calendar.day_of_leap_year.push_back(
        static_cast<std::uint16_t>(days_before[month - 1] + static_cast<unsigned>(day.day())));
  }
  return calendar;
}

std::vector<std::size_t> both_naught(std::span<const float> night_c, std::span<const float> day_c) {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < night_c.size(); ++i) {
    if (is_naught(night_c[i]) && std::abs(night_c[i] - day_c[i]) < half_a_tenth) {
      found.push_back(i);
    }
  }
  return found;
}

std::vector<Streak> streaks(std::span<const float> values_c) {
  constexpr std::size_t longest_hole = 7;
  std::vector<Streak> found;
  Streak streak;
  const auto keep = [&] {
    if (streak.values >= least_streak) {
      found.push_back(streak);
    }
  };
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    if (std::isnan(values_c[i])) {
      continue;
    }
    const bool goes_on = streak.values > 0 && values_c[i] == values_c[streak.last] &&
                         i - streak.last <= longest_hole + 1;
    if (!goes_on) {
      keep();
      streak = {i, i, 0};
    }
    streak.last = i;
    ++streak.values;
  }
  keep();
  return found;
}

std::vector<Doubt> beyond_gap(std::span<const float> values_c, const CalendarDays& calendar) {
  std::array<MonthBins, months_a_year> months{};
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    if (!std::isnan(values_c[i])) {
      months[calendar.month[i] - 1U].add(values_c[i]);
    }
  }
  std::array<Limits, months_a_year> limits{};
  std::transform(months.begin(), months.end(), limits.begin(), limits_without_gap);
  std::vector<Doubt> found;
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    const Limits& month = limits[calendar.month[i] - 1U];
    if (values_c[i] > month.high_c) {
      found.push_back({i, month.high_c});
    } else if (values_c[i] < month.low_c) {
      found.push_back({i, month.low_c});
    }
  }
  return found;
}

std::vector<Doubt> outliers(std::span<const float> values_c, const CalendarDays& calendar) {
  const Climatology first = climatology(values_c, calendar, {});
  const Climatology second = climatology(values_c, calendar, first);
  std::vector<Doubt> found;
  for (std::size_t i = 0; i < values_c.size(); ++i) {
    const TimeOfYear& time = second[calendar.day_of_leap_year[i] - 1U];
    if (time.is_far(values_c[i])) {
      found.push_back({i, static_cast<float>(time.mean_c)});
    }
  }
  return found;
}

std::vector<Doubt> spikes(std::span<const float> values_c) {
  std::vector<Doubt> found;
  for (std::size_t i = 1; i + 1 < values_c.size(); ++i) {
    if (std::abs(values_c[i] - values_c[i - 1]) >= spike_k &&
        std::abs(values_c[i] - values_c[i + 1]) >= spike_k) {
      found.push_back({i, values_c[i - 1]});
    }
  }
  return found;
}

std::vector<Doubt> days_too_far(std::span<const float> night_c, std::span<const float> day_c) {
  std::vector<Doubt> found;
  for (std::size_t i = 0; i < day_c.size(); ++i) {
    const float warmest = of_three(night_c, i, [](float a, float b) { return std::fmax(a, b); });
    if (day_c[i] - warmest >= lagged_range_k) {
      found.push_back({i, warmest});
    }
  }
  return found;
}

std::vector<Doubt> nights_too_far(std::span<const float> night_c, std::span<const float> day_c) {
  std::vector<Doubt> found;
  for (std::size_t i = 0; i < night_c.size(); ++i) {
    const float coldest = of_three(day_c, i, [](float a, float b) { return std::fmin(a, b); });
    if (coldest - night_c[i] >= lagged_range_k) {
      found.push_back({i, coldest});
    }
  }
  return found;
}

} // namespace nightsow::climate
