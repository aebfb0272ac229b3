#include "climate/frost.hpp"

#include "climate/base/celsius.hpp"
#include "climate/past_seasons.hpp"

#include <algorithm>
#include <cmath>

namespace nightsow::climate {

namespace {

constexpr Celsius freezing{0.0};

struct FrostyNights {
  int missing = 0;
  int nights = 0;
  int first = 0; ///< days after the hottest night; meaningful when there are nights
  int last = 0;
};

FrostyNights frosty_nights(const std::vector<float>& night_c) {
  FrostyNights frost;
  for (int day = 0; day < static_cast<int>(night_c.size()); ++day) {
    const float night = night_c[static_cast<std::size_t>(day)];
    frost.missing += std::isnan(night) ? 1 : 0;
    if (at_or_under(static_cast<double>(night), freezing.degrees())) {
      frost.first = frost.nights == 0 ? day : frost.first;
      frost.last = day;
      ++frost.nights;
    }
  }
  return frost;
}

std::optional<DaySpread> spread_of(std::vector<int> days) {
  if (days.empty()) {
    return std::nullopt;
  }
  std::sort(days.begin(), days.end());
  const auto at = [&](double p) {
    const double rank = std::ceil(p * static_cast<double>(days.size()) - 1e-9);
    return days[static_cast<std::size_t>(std::max(1.0, rank)) - 1];
  };
  return DaySpread{at(0.1), at(0.5), at(0.9)};
}

} // namespace

FrostSeasons frost_seasons(const DailySeries& series, date::month_day hottest) {
  FrostSeasons result;
  if (series.empty()) {
    return result;
  }
  std::vector<int> first;
  std::vector<int> last;
  int nights = 0;
  for (int year = year_of(series.first()); year <= year_of(series.last()); ++year) {
    const Date begins = in_year(hottest, year);
    const int days = days_between(begins, in_year(hottest, year + 1));
    if (begins < series.first() || begins + Days{days - 1} > series.last()) {
      continue;
    }
    const FrostyNights frost = frosty_nights(series.nights_from(begins, days));
    if (frost.missing > most_missing * days) {
      continue;
    }
    ++result.seasons;
    result.without += frost.nights == 0 ? 1 : 0;
    nights += frost.nights;
    if (frost.nights > 0) {
      first.push_back(frost.first);
      last.push_back(frost.last);
    }
  }
  result.first = spread_of(std::move(first));
  result.last = spread_of(std::move(last));
  result.nights_a_season = result.seasons > 0 ? static_cast<double>(nights) / result.seasons : 0.0;
  return result;
}

} // namespace nightsow::climate
