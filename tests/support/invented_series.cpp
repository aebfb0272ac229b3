#include "tests/support/invented_series.hpp"

#include "climate/smooth_year.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <sstream>
#include <string>

namespace nightsow::support {

namespace {

/// Near enough a standard normal deviate: twelve whole numbers from a linear congruential generator
/// (Knuth's constants for 64 bits), the same on every machine.
class Deviates {
public:
  explicit Deviates(std::uint64_t seed) : state_(seed) {}

  double next() {
    constexpr int parts = 12;
    constexpr std::int64_t part_size = 65536;
    std::int64_t sum = 0;
    for (int i = 0; i < parts; ++i) {
      state_ = state_ * 6364136223846793005U + 1442695040888963407U;
      sum += static_cast<std::int64_t>(state_ >> 48U);
    }
    return static_cast<double>(sum - parts * part_size / 2) / static_cast<double>(part_size);
  }

private:
  std::uint64_t state_;
};

/// Standard deviation one; 0.6 of a night's departure lasts to the next, and of that of the month
/// (a sixth of the variance) nearly all.
class Weather {
public:
  double next() {
    days_ = 0.55 * days_ + std::sqrt(1.0 - 0.55 * 0.55) * deviates_.next();
    weeks_ = 0.97 * weeks_ + std::sqrt(1.0 - 0.97 * 0.97) * deviates_.next();
    return std::sqrt(5.0 / 6.0) * days_ + std::sqrt(1.0 / 6.0) * weeks_;
  }

private:
  Deviates deviates_{20260210};
  double days_ = 0.0;
  double weeks_ = 0.0;
};

double in_tenths(double value_c) {
  return std::round(value_c * 10.0) / 10.0;
}

/// Lays weather over the smooth course. Days depart with their night and by half as much again of
/// their own, and stay a kelvin above it.
void add_weather(double night_sd_k, climate::DailySeries& series) {
  Weather nights;
  Deviates days{7};
  for (std::size_t i = 0; i < series.size(); ++i) {
    const double departure_k = night_sd_k * nights.next();
    const auto smooth_night_c = static_cast<double>(series.night_c()[i]);
    const auto smooth_day_c = static_cast<double>(series.day_c()[i]);
    const double night_c = in_tenths(smooth_night_c + departure_k);
    const double day_c = smooth_day_c + departure_k + 0.5 * night_sd_k * days.next();
    series.set_night(i, static_cast<float>(night_c));
    series.set_day(i, static_cast<float>(std::max(night_c + 1.0, in_tenths(day_c))));
  }
}

} // namespace

climate::DailySeries invented_series(const InventedClimate& climate) {
  const auto size = static_cast<std::size_t>(climate.years * 365.2425);
  climate::DailySeries series{climate.first, size};
  const double hottest_share = (climate.hottest_day_of_year - 1) / 365.2425;
  for (std::size_t i = 0; i < size; ++i) {
    const double year = climate::years_since_2000(series.date_of(i));
    const double season = std::cos(2.0 * std::numbers::pi * (year - hottest_share));
    const double night_c = climate.night_mean_c + climate.night_half_swing_k * season +
                           climate.trend_k_per_year * year +
                           (i % 2 == 0 ? climate.flicker_k : -climate.flicker_k);
    series.set_night(i, static_cast<float>(night_c));
    series.set_day(i, static_cast<float>(night_c + climate.day_above_night_k));
  }
  if (climate.night_sd_k > 0.0) {
    add_weather(climate.night_sd_k, series);
  }
  return series;
}

std::vector<float> nights(std::string_view text) {
  std::vector<float> values;
  std::istringstream words{std::string(text)};
  for (std::string word; words >> word;) {
    values.push_back(word == "-" ? climate::missing_c : std::stof(word));
  }
  return values;
}

} // namespace nightsow::support
