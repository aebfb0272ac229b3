#include "climate/hourly.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr double pi = std::numbers::pi;
constexpr double hours_a_day = 24.0;
constexpr double least_hours = 2.0;
constexpr double lag_hours = 4.0; // Linvill: the sine's half-wave is the day length plus four

// Of the day's maximum; the rest is of its minimum.
double share_by_day(const SunTimes& sun, double hour) {
  const double half_wave = sun.day_length_h() + lag_hours;
  return std::sin(pi * (hour - sun.rises_h) / half_wave);
}

// Of the minimum that ends the night; the rest is of what sunset left.
double share_by_night(double night_hours, double since_sunset) {
  return std::log(std::max(0.0, since_sunset) + 1.0) / std::log(night_hours + 1.0);
}

HourShares by_cosine(double hour) {
  constexpr double coldest_h = 3.0;
  HourShares shares;
  shares.day = 0.5 - 0.5 * std::cos(2.0 * pi * (hour - coldest_h) / hours_a_day);
  shares.night = 1.0 - shares.day;
  return shares;
}

HourShares before_sunrise(const SunsAround& around, double hour) {
  const double before_midnight = hours_a_day - around.previous.sets_h;
  const double at_sunset = share_by_day(around.previous, around.previous.sets_h);
  HourShares shares;
  shares.night = share_by_night(before_midnight + around.today.rises_h, before_midnight + hour);
  shares.previous_day = (1.0 - shares.night) * at_sunset;
  shares.previous_night = (1.0 - shares.night) * (1.0 - at_sunset);
  return shares;
}

HourShares after_sunset(const SunsAround& around, double hour) {
  const double night_hours = hours_a_day - around.today.sets_h + around.next.rises_h;
  const double at_sunset = share_by_day(around.today, around.today.sets_h);
  HourShares shares;
  shares.next_night = share_by_night(night_hours, hour - around.today.sets_h);
  shares.day = (1.0 - shares.next_night) * at_sunset;
  shares.night = (1.0 - shares.next_night) * (1.0 - at_sunset);
  return shares;
}

} // namespace

bool rises_and_sets(const SunTimes& sun) {
  const double length = sun.day_length_h();
  return length >= least_hours && length <= hours_a_day - least_hours;
}

HourShares hour_shares(const SunsAround& around, double hour) {
  if (!rises_and_sets(around.today) || !rises_and_sets(around.next) ||
      !rises_and_sets(around.previous)) {
    return by_cosine(hour);
  }
  if (hour < around.today.rises_h) {
    return before_sunrise(around, hour);
  }
  if (hour > around.today.sets_h) {
    return after_sunset(around, hour);
  }
  HourShares shares;
  shares.day = share_by_day(around.today, hour);
  shares.night = 1.0 - shares.day;
  return shares;
}

} // namespace nightsow::climate
