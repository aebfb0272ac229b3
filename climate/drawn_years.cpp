#include "climate/drawn_years.hpp"

#include "climate/monthly_normals.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace nightsow::climate {

namespace {

constexpr int waves = 96;

/// Departures with deviation one.
class Departures {
public:
  // The spectrum of x(t) = r x(t-1) + noise up to the angular frequency w holds the share
  // (2/pi) atan((1+r)/(1-r) tan(w/2)) of its variance; each wave stands for an equal share.
  explicit Departures(double phase_step) {
    const double narrowing = (1.0 - drawn_lag1) / (1.0 + drawn_lag1);
    for (int i = 0; i < waves; ++i) {
      const double share = (i + 0.5) / waves;
      Wave& wave = waves_.at(static_cast<std::size_t>(i));
      wave.frequency = 2.0 * std::atan(narrowing * std::tan(0.5 * std::numbers::pi * share));
      const double turns = (i + 1) * (i + 1) * phase_step;
      wave.phase = 2.0 * std::numbers::pi * (turns - std::floor(turns));
    }
  }

  [[nodiscard]] double at(int day) const {
    double sum = 0.0;
    for (const Wave& wave : waves_) {
      sum += std::sin(wave.frequency * day + wave.phase);
    }
    return sum * std::sqrt(2.0 / waves);
  }

private:
  struct Wave {
    double frequency = 0.0;
    double phase = 0.0;
  };

  std::array<Wave, waves> waves_{};
};

} // namespace

DailySeries drawn_years(std::span<const double> night_mean_c,
                        std::span<const double> day_mean_c,
                        Date first,
                        int days) {
  // Squares of whole numbers times an irrational one scatter phases evenly; with these two the
  // departures of nights and days do not go together by chance.
  const Departures of_nights{std::numbers::phi};
  const Departures of_days{std::numbers::pi};
  const NormalCourse night_course{night_mean_c};
  const NormalCourse day_course{day_mean_c};
  const Date origin = make_date(2000, 1, 1).value();
  const double own = std::sqrt(1.0 - drawn_night_day * drawn_night_day);
  DailySeries series{first, static_cast<std::size_t>(days)};
  for (std::size_t i = 0; i < series.size(); ++i) {
    const Date day = series.date_of(i);
    const int since = days_between(origin, day);
    const double night = of_nights.at(since);
    const double with_night = drawn_night_day * night + own * of_days.at(since);
    const double night_c = night_course.value_c(day) + drawn_night_sd_k * night;
    const double day_c = day_course.value_c(day) + drawn_day_sd_k * with_night;
    series.set_night(i, static_cast<float>(night_c));
    series.set_day(i, static_cast<float>(std::max(night_c, day_c)));
  }
  return series;
}

} // namespace nightsow::climate
